using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>What was measured on the hull as it stands, and what is cut and fitted already.</summary>
public sealed record StandingSpec
{
    public static readonly StandingSpec None = new();

    public ImmutableArray<MeasuredKeelHalfWidth> KeelHalfWidths { get; init; } = [];
}

/// <summary>The half-width of a keel layer at its outer face, as measured at one station on one side.</summary>
public sealed record MeasuredKeelHalfWidth(string Layer, string Station, Side Side, double Mm);
