using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Framing;

/// <summary>What lies behind the planks: timber to fasten to, or a place kept solid or open.</summary>
public enum FramingKind
{
    Stringer,
    Frame,
    Floor,
    Solid,
    Open,
}

/// <summary>
/// One thing behind the planks, on both sides of the boat unless said otherwise. It lies against the inner face of the whole stack, where it is fitted:
/// distances are measured there, in the section (a plane across the hull), from the keel's side and from the chine as they are on that face. A place behind
/// appears on every skin where the surface's normal carries it, which is the way that a fastening is driven.
/// </summary>
/// <param name="WidthMm">Across its centre line, square to it along the inner face, half on each side.</param>
/// <param name="FromMm">The stretch of the hull over which it runs, x in mm; null for the whole of the bottom. <paramref name="ToMm"/> likewise.</param>
public sealed record FramingSpec(
    string Name,
    FramingKind Kind,
    FramingLine Line,
    double WidthMm,
    double? FromMm,
    double? ToMm
)
{
    /// <summary>The one side of the boat that has it; null for both.</summary>
    public Side? Only { get; init; }

    /// <summary>Of a thing across the hull, the stretch over which it runs: distances from the keel along the section, mm; null for all of it.</summary>
    public double? OutFromMm { get; init; }

    /// <summary>Where that stretch ends.</summary>
    public double? OutToMm { get; init; }

    /// <summary>Of a place with four sides, its length along its centre line, half ahead of its position and half abaft; null for a thing that runs on.</summary>
    public double? LengthMm { get; init; }

    /// <summary>It lies across the hull: a frame or a floor.</summary>
    public bool IsAcross => Line is FramingLine.AtPosition or FramingLine.AtStation;
}

/// <summary>Where its centre runs.</summary>
public abstract record FramingLine
{
    /// <summary>A line of the table of offsets, brought square to the table's surface.</summary>
    public sealed record Offsets(string Name) : FramingLine;

    /// <summary>At a distance along the section from the keel's side, on the inner face.</summary>
    public sealed record FromKeel(double Mm) : FramingLine;

    /// <summary>The same from the chine.</summary>
    public sealed record FromChine(double Mm) : FramingLine;

    /// <summary>In a plane across the hull at x.</summary>
    public sealed record AtPosition(double XMm) : FramingLine;

    /// <summary>In the plane of a station of the table.</summary>
    public sealed record AtStation(string Name) : FramingLine;

    /// <summary>A place in the bottom: where the line <paramref name="Along"/> (from keel or chine) meets the plane at x or at a station.</summary>
    public sealed record Spot(FramingLine Along, FramingLine Across) : FramingLine;
}
