namespace PlankFit.Draughting.Dxf;

/// <summary>Names and colours of layers, one layer a shop operation.</summary>
public static class DxfLayers
{
    private static readonly int[] Others = [2, 4, 6, 30, 94, 140];

    /// <summary>A name that R12 takes too: capitals, digits, hyphens and underscores, at most 31 of them.</summary>
    public static string Name(string layer)
    {
        string name = string.Concat(
            DxfText
                .Ascii(layer)
                .ToUpperInvariant()
                .Select(c =>
                    char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c) || c == '-' ? c : '_'
                )
        );
        return name.Length switch
        {
            0 => throw new ArgumentException("A layer without a name cannot be written to a DXF."),
            > 31 => name[..31],
            _ => name,
        };
    }

    /// <summary>An AutoCAD colour index, the same for the same name in every file.</summary>
    public static int Colour(string name) =>
        name switch
        {
            "CUT" => 7,
            "NET" => 3,
            "MARKS" => 5,
            "TEXT" => 8,
            _ => Others[name.Sum(c => c) % Others.Length],
        };
}
