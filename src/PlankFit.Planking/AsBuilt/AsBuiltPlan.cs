using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Girths;
using PlankFit.Planking.Laying;

namespace PlankFit.Planking.AsBuilt;

/// <summary>The hull as it stands against the hull as drawn.</summary>
/// <param name="Girths">By side, one row a station where any girth was measured there.</param>
/// <param name="Drifts">By layer and side, where seams were measured.</param>
public sealed record AsBuiltPlan(
    ImmutableDictionary<Side, ImmutableArray<GirthRow>> Girths,
    ImmutableArray<SeamCreep> Drifts,
    ImmutableArray<Finding> Findings
)
{
    public static readonly AsBuiltPlan Nothing = new(
        ImmutableDictionary<Side, ImmutableArray<GirthRow>>.Empty,
        [],
        []
    );

    /// <summary>By side, every cell of the table that was changed for the girths.</summary>
    public ImmutableDictionary<Side, ImmutableArray<FairingMove>> Moves { get; init; } =
        ImmutableDictionary<Side, ImmutableArray<FairingMove>>.Empty;

    /// <summary>The planks that are sawn, against the places that they have now.</summary>
    public ImmutableArray<SawnRow> Sawn { get; init; } = [];
}
