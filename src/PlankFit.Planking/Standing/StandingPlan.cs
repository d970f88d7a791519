using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>The hull as it stands against the hull as drawn.</summary>
/// <param name="Girths">By side, one row a station where any girth was measured there.</param>
/// <param name="Drifts">By layer and side, where seams were measured.</param>
public sealed record StandingPlan(
    ImmutableDictionary<Side, ImmutableArray<GirthRow>> Girths,
    ImmutableArray<SeamDrift> Drifts,
    ImmutableArray<Finding> Findings
)
{
    /// <summary>By side, every cell of the table that was changed for the girths.</summary>
    public ImmutableDictionary<Side, ImmutableArray<FairingMove>> Moves { get; init; } =
        ImmutableDictionary<Side, ImmutableArray<FairingMove>>.Empty;

    /// <summary>The planks that are sawn, against the places that they have now.</summary>
    public ImmutableArray<CutRow> Cut { get; init; } = [];
}

/// <summary>A sawn plank by its id, and how it fits.</summary>
public sealed record CutRow(PlankId Id, CutFit Fit);

/// <summary>The girth of one station on the planking's inner face, mm.</summary>
/// <param name="DrawnMm">As the table gives it.</param>
/// <param name="NowMm">As corrected.</param>
/// <param name="MeasuredMm">Null where it was not measured.</param>
public sealed record GirthRow(
    string Station,
    double PositionMm,
    double DrawnMm,
    double NowMm,
    double? MeasuredMm
)
{
    public double MovedMm => NowMm - DrawnMm;
}

/// <summary>How the seams of one layer and side crept away from where they were drawn, at one edge, going one way from the master.</summary>
/// <param name="At">Keel or chine.</param>
/// <param name="Rows">From the master outward.</param>
/// <param name="MmAPlank">By least squares over the rows: aft positive.</param>
/// <param name="SincePlank">The first plank whose seam is beyond what a tape can tell; null where none is.</param>
public sealed record SeamDrift(
    int Layer,
    Side Side,
    HullEdge At,
    bool GoingAft,
    ImmutableArray<DriftRow> Rows,
    double MmAPlank,
    PlankId? SincePlank
)
{
    /// <summary>The planks that are neither fitted nor sawn between the last one measured and the end of the bottom, with an end at this edge; corner pieces not counted.</summary>
    public int PlanksLeft { get; init; }

    /// <summary>The creep of the last seam measured, square across the plank, mm: positive where the planks took more room than their width.</summary>
    public double AcrossMm { get; init; }

    /// <summary>What to take off the end at this edge of each plank that is left, to end where it was drawn, mm; null where planks would have to be wider, or none is left.</summary>
    public double? NarrowerMm =>
        SincePlank is not null && PlanksLeft > 0 && AcrossMm > 0 ? AcrossMm / PlanksLeft : null;
}

/// <param name="PlannedMm">Where the plank's after seam was drawn to cross the edge, from the station named; aft positive.</param>
public sealed record DriftRow(PlankId PlankId, double PlannedMm, double MeasuredMm)
{
    public double OffMm => MeasuredMm - PlannedMm;
}
