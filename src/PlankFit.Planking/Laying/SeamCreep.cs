using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Laying;

/// <summary>How the seams of one layer and side crept away from where they were drawn, at one edge, going one way from the master.</summary>
/// <param name="At">Keel or chine.</param>
/// <param name="Rows">From the master outward.</param>
/// <param name="MmAPlank">By least squares over the rows: aft positive.</param>
/// <param name="SincePlank">The first plank whose seam is beyond what a tape can tell; null where none is.</param>
public sealed record SeamCreep(
    int Layer,
    Side Side,
    PanelEdge At,
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
