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

/// <summary>A layer of diagonal planks.</summary>
/// <param name="WidthMm">Width of the stock, edges straight and parallel.</param>
/// <param name="AngleDegrees">In the surface, between the master plank's own line and the keel where they meet.</param>
/// <param name="MasterMm">x at which the master's own line crosses mid-bottom; null for halfway along.</param>
/// <param name="DriftDegrees">With <see cref="Hold.Width"/>, the most that the angle at the keel may leave AngleDegrees.</param>
/// <param name="GapMm">The widest opening or clash of straight edges that the glue is trusted with.</param>
/// <param name="Stagger">Part of a width by which seams are moved against the layer below on the same diagonal; null for none.</param>
public sealed record PlankLayerSpec(
    string Name,
    double ThicknessMm,
    double WidthMm,
    Heads Heads,
    double AngleDegrees,
    double? MasterMm,
    Hold Hold,
    double DriftDegrees,
    double GapMm,
    double? Stagger
) : LayerSpec(Name, ThicknessMm)
{
    /// <summary>The wood, by its name in the species table; null for the job's own.</summary>
    public string? Species { get; init; }
}

/// <summary>Which way planks run, going outboard from the keel.</summary>
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
