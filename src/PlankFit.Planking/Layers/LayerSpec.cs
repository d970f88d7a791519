namespace PlankFit.Planking.Layers;

/// <summary>One layer of the stack, from the inside out.</summary>
public abstract record LayerSpec(string Name, double ThicknessMm);

/// <summary>Cloth or anything else that only adds thickness.</summary>
public sealed record ClothLayerSpec(string Name, double ThicknessMm) : LayerSpec(Name, ThicknessMm)
{
    /// <summary>Where port and starboard cloth lap under the keel; null where they only meet.</summary>
    public ClothLap? Lap { get; init; }
}

/// <summary>Port and starboard cloth lap on the centre line and count twice there.</summary>
/// <param name="WidthMm">Of the lap, half of it on each side of the centre line.</param>
/// <param name="FromMm">The stretch of the hull, x in mm, over which they lap; null for all of it. <paramref name="ToMm"/> likewise.</param>
public sealed record ClothLap(double WidthMm, double? FromMm, double? ToMm);

/// <summary>A layer of planks: what they are sawn from, and the law by which their seams run.</summary>
public sealed record PlankLayerSpec(
    string Name,
    double ThicknessMm,
    PlankStock Stock,
    DiagonalLaw Law
) : LayerSpec(Name, ThicknessMm)
{
    public double WidthMm
    {
        get => Stock.WidthMm;
        init => Stock = Stock with { WidthMm = value };
    }

    public double GapMm
    {
        get => Stock.GapMm;
        init => Stock = Stock with { GapMm = value };
    }

    public string? Species
    {
        get => Stock.Species;
        init => Stock = Stock with { Species = value };
    }

    public Heads Heads
    {
        get => Law.Heads;
        init => Law = Law with { Heads = value };
    }

    public double AngleDegrees
    {
        get => Law.AngleDegrees;
        init => Law = Law with { AngleDegrees = value };
    }

    public double? MasterMm
    {
        get => Law.MasterMm;
        init => Law = Law with { MasterMm = value };
    }

    public Hold Hold
    {
        get => Law.Hold;
        init => Law = Law with { Hold = value };
    }

    public double DriftDegrees
    {
        get => Law.DriftDegrees;
        init => Law = Law with { DriftDegrees = value };
    }

    public double? Stagger
    {
        get => Law.Stagger;
        init => Law = Law with { Stagger = value };
    }
}

/// <summary>What the planks of a layer are sawn from.</summary>
/// <param name="WidthMm">Width of the stock, edges straight and parallel.</param>
/// <param name="GapMm">The widest opening or overlap of straight edges that the glue is trusted with.</param>
public sealed record PlankStock(double WidthMm, double GapMm)
{
    /// <summary>The wood, by its name in the species table; null for the job's own.</summary>
    public string? Species { get; init; }
}

/// <summary>How the seams of diagonal planks run, from a master plank outward.</summary>
/// <param name="AngleDegrees">In the surface, between the master plank's own line and the panel's lower edge where they meet.</param>
/// <param name="MasterMm">x at which the master's own line crosses the middle of the panel; null for halfway along.</param>
/// <param name="DriftDegrees">With <see cref="Layers.Hold.Width"/>, the most that the angle at the lower edge may leave AngleDegrees.</param>
/// <param name="Stagger">Part of a width by which seams are moved against the layer below on the same diagonal; null for none.</param>
public sealed record DiagonalLaw(
    Heads Heads,
    double AngleDegrees,
    double? MasterMm,
    Hold Hold,
    double DriftDegrees,
    double? Stagger
);

/// <summary>Which way planks run, going from the lower edge to the upper: outboard from the keel.</summary>
public enum Heads
{
    Aft,
    Forward,
}

/// <summary>What is kept going out from the master plank.</summary>
public enum Hold
{
    Width,
    Angle,
}
