using PlankFit.Export.Sheets;

namespace PlankFit.Tests.Support;

/// <summary>Whether what a sheet is about keeps out of its title block.</summary>
internal static class BlockCheck
{
    private const double BlockMm = 24;

    /// <summary>Letterings and lines of a framed sheet's matter that come into its title block, in words.</summary>
    /// <remarks>The frame is drawn first: whatever stands in the strip after something has been drawn above it is not the block's own.</remarks>
    public static IEnumerable<string> Intruders(Drawing sheet)
    {
        double top = Frame.MarginMm + BlockMm;
        int block = sheet.Shapes.IndexOf(
            sheet.Shapes.OfType<Lettering>().FirstOrDefault(l => l.Text == "revision of inputs")!
        );
        if (block < 0)
        {
            yield break;
        }

        bool matter = false;
        for (int i = block + 1; i < sheet.Shapes.Length; i++)
        {
            double low = Lowest(sheet.Shapes[i]);
            matter |= low > top + 1e-6;
            if (matter && low < top - 1e-6)
            {
                yield return $"{sheet.Title}: {(sheet.Shapes[i] is Lettering l ? $"\"{l.Text}\"" : $"a line on layer {sheet.Shapes[i].Layer}")} comes into the title block";
            }
        }
    }

    /// <summary>All that makes sheets hard to read, letters through which a line runs and what comes into a title block among it, each with what the sheets are of.</summary>
    public static IEnumerable<string> AllFaults(IEnumerable<Drawing> sheets, string of) =>
        sheets.SelectMany(s =>
            SheetCheck
                .Faults(s)
                .Concat(SheetCheck.Struck(s, _ => true))
                .Concat(Intruders(s))
                .Select(f => $"{of} {s.Title}: {f}")
        );

    private static double Lowest(Shape shape) =>
        shape switch
        {
            Lettering text => SheetCheck.Corners(text).Min(p => p.Y),
            CircleShape circle => circle.Centre.Y - circle.RadiusMm,
            Polyline line => line.Points.Min(p => p.Y),
            _ => double.PositiveInfinity,
        };
}
