namespace PlankFit.Planking;

/// <summary>What the job asks of the files that come out: [output] in the job file.</summary>
public sealed record OutputSpec(DxfUnits DxfUnits, PaperSize Paper)
{
    /// <summary>DXF in millimetres, sheets on A4.</summary>
    public static readonly OutputSpec Default = new(DxfUnits.Millimetres, PaperSize.A4);
}

public enum DxfUnits
{
    Millimetres,
    Inches,
}

public enum PaperSize
{
    A4,
    A3,
    Letter,
}
