using System.Collections.Immutable;

namespace PlankFit.Planking.Jobs;

/// <summary>The keel as the job names it: its layers from the inside out, and what is judged of them.</summary>
/// <param name="HalfWidthToleranceMm">Default 0.8 mm, 1/32 in from any point of a fair line: common practice, no source.</param>
/// <param name="ProudToleranceMm">Default 0.5 mm: a proposal, no source.</param>
public sealed record KeelSpec(
    ImmutableArray<KeelLayerSpec> Layers,
    double HalfWidthToleranceMm,
    double ProudToleranceMm
)
{
    public static readonly KeelSpec None = new([], 0.8, 0.5);

    /// <summary>Where the half-width that the planks want falls below this going forward, the keel layer is taken to have faded; null for never.</summary>
    public double? LeastHalfWidthMm { get; init; }

    /// <summary>Where the deadrise at the keel grows beyond this going forward, likewise; null for never.</summary>
    public double? MostDeadriseDegrees { get; init; }

    /// <summary>How far planks are left long at the keel where it has faded. A proposal, no source.</summary>
    public double LeftLongMm { get; init; } = 30;

    /// <summary>Full width of the timber that the keel's layers are sawn from; null where the job does not say.</summary>
    public double? StockWidthMm { get; init; }
}

/// <summary>One layer of the keel; the first one's inner face lies where the inner face of the planking meets the keel's side.</summary>
/// <param name="Meets">The plank layer whose ends meet its side.</param>
/// <param name="HalfWidth">At its outer face.</param>
public sealed record KeelLayerSpec(
    string Name,
    string Meets,
    double ThicknessMm,
    KeelHalfWidth HalfWidth,
    KeelLayerSide Side
)
{
    /// <summary>x at which the layer begins, mm; forward of it there is none and planks are left long. Null where it runs the whole bottom.</summary>
    public double? FromMm { get; init; }
}

/// <summary>The half-width of a keel layer at its outer face.</summary>
public abstract record KeelHalfWidth
{
    /// <summary>As the planking wants it: where the planks' outer face meets the layer's.</summary>
    public sealed record Mitre : KeelHalfWidth;

    /// <summary>A half-breadth row of the table of offsets.</summary>
    public sealed record Line(string Name) : KeelHalfWidth;

    /// <summary>Straight from the forward end of the bottom to its after end.</summary>
    public sealed record Tapered(double ForwardMm, double AftMm) : KeelHalfWidth;
}

/// <summary>How the side of a keel layer stands.</summary>
public abstract record KeelLayerSide
{
    public sealed record Plumb : KeelLayerSide;

    public sealed record SquareToPlank : KeelLayerSide;

    /// <summary>Off plumb by so much, positive where the outer face is the wider.</summary>
    public sealed record Leaning(double Degrees) : KeelLayerSide;
}
