using PlankFit.Planking.Units;

namespace PlankFit.Planking.Whole;

/// <summary>What the job asks of the files that come out: [output] in the job file.</summary>
public sealed record OutputSpec(DxfUnits DxfUnits, PaperSize Paper)
{
    /// <summary>Full-size patterns on one long page a plank, or cut up into pages of the paper.</summary>
    public PatternPages Patterns { get; init; } = PatternPages.Long;

    /// <summary>Each plank's card as an SVG and a PNG of its own as well, for a page on a phone; some two hundred files for a bottom.</summary>
    public bool CardPictures { get; init; }

    public DxfAsked Dxf { get; init; } = DxfAsked.R2000;

    /// <summary>The sections of the bench book as PDFs of their own as well.</summary>
    public bool SingleSheets { get; init; }

    /// <summary>The drawings as PNG beside SVG.</summary>
    public bool DrawingsAsPng { get; init; }

    /// <summary>Planks and keel as bodies in one file besides.</summary>
    public bool ShapeAsGlb { get; init; }

    /// <summary>Inches alone where a job in feet or inches has its lengths told: 59 5/16" for 4'-11 5/16".</summary>
    public bool InchesAlone { get; init; }

    /// <summary>A drawing for each plank of both sides; of a pair that is alike one otherwise, with the port plank mirrored beside it.</summary>
    public bool BothSides { get; init; }

    /// <summary>The units in which a job written in these shows its lengths.</summary>
    public LengthUnit Shown(LengthUnit written) =>
        LengthUnits.IsMetric(written) ? written
        : InchesAlone ? LengthUnit.Inch
        : LengthUnit.Foot;

    /// <summary>DXF in millimetres, sheets on A4.</summary>
    public static readonly OutputSpec Default = new(DxfUnits.Millimetres, PaperSize.A4);
}

public enum DxfUnits
{
    Millimetres,
    Inches,
}

/// <summary>Which versions of DXF are written.</summary>
public enum DxfAsked
{
    R2000,

    /// <summary>For old controls.</summary>
    R12,

    Both,
}

public enum PaperSize
{
    A4,
    A3,
    Letter,
}

/// <summary>How full-size patterns come on paper.</summary>
public enum PatternPages
{
    /// <summary>One long page a plank, for a roll.</summary>
    Long,

    /// <summary>Pages of the job's paper, to be joined at their registration marks.</summary>
    Tiled,
}
