namespace PlankFit.Planking;

/// <summary>What lies behind the planks: timber to fasten to, or a place kept solid or open.</summary>
public enum BehindKind
{
    Stringer,
    Frame,
    Floor,
    Solid,
    Open,
}

/// <summary>One thing behind the planks, on both sides of the boat unless said otherwise.</summary>
/// <param name="WidthMm">Across its centre line, on the surface.</param>
/// <param name="FromMm">The stretch of the hull over which it runs, x in mm; null for the whole of the bottom. <paramref name="ToMm"/> likewise.</param>
public sealed record BehindSpec(
    string Name,
    BehindKind Kind,
    BehindLine Line,
    double WidthMm,
    double? FromMm,
    double? ToMm
);

/// <summary>Where its centre runs.</summary>
public abstract record BehindLine
{
    /// <summary>A line of the table of offsets.</summary>
    public sealed record Offsets(string Name) : BehindLine;

    /// <summary>At a distance along the section from the keel's edge of the bottom, on the table's surface.</summary>
    public sealed record FromKeel(double Mm) : BehindLine;

    /// <summary>The same from the chine.</summary>
    public sealed record FromChine(double Mm) : BehindLine;

    /// <summary>In a plane across the hull at x.</summary>
    public sealed record AtPosition(double XMm) : BehindLine;
}
