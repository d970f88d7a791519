using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;

namespace PlankFit.Planking.KeelCheck;

/// <summary>The keel held against the planking, layer by layer, both sides.</summary>
/// <param name="Cap">The cap that closes it after the last cloth, one row a station and side.</param>
public sealed record KeelPlan(
    ImmutableArray<KeelLayerPlan> Layers,
    ImmutableArray<KeelCapStation> Cap,
    ImmutableArray<Finding> Findings
);

/// <param name="Stations">One row a station and side, starboard first.</param>
/// <param name="Between">The same figures continuously along the hull, for charts and patterns; starboard first.</param>
/// <param name="PlankEnds">What the keel that is there does to each plank that meets it.</param>
public sealed record KeelLayerPlan(
    KeelLayerSpec Spec,
    ImmutableArray<KeelStation> Stations,
    ImmutableArray<KeelStation> Between,
    ImmutableArray<KeelPlankEnd> PlankEnds
)
{
    /// <summary>x forward of which the layer has ended or faded, mm, starboard; null where it runs the whole bottom.</summary>
    public double? RunsOutAtMm { get; init; }

    public IEnumerable<KeelStation> On(Side side) => Stations.Where(s => s.Side == side);
}

/// <summary>One keel layer at one place on one side.</summary>
/// <param name="Station">The station's name; empty between stations.</param>
/// <param name="WantedHalfWidthMm">Where the planks' outer face meets the keel layer's outer face.</param>
/// <param name="HalfWidthMm">What is there, at the outer face.</param>
/// <param name="ProudMm">(half − wanted) tan b, plumb: the layer's outer face beyond the planks' at its edge; negative is shy.</param>
/// <param name="Measured">Whether it was measured at this station.</param>
public sealed record KeelStation(
    string Station,
    double PositionMm,
    Side Side,
    KeelAngles Angles,
    double WantedHalfWidthMm,
    double HalfWidthMm,
    double ProudMm,
    bool Measured
)
{
    /// <summary>Along the layer's outer face as it lies on the hull, from the first station, mm: what a batten or a tape shows.</summary>
    public double AlongMm { get; init; }

    /// <summary>Of the layer's outer face, which is level athwart, mm.</summary>
    public double HeightMm { get; init; }

    /// <summary>What to plane off the side (positive) or make up (negative) to bring the edge to the mitre, mm.</summary>
    public double TakeOffSideMm => HalfWidthMm - WantedHalfWidthMm;

    /// <summary>What to plane off the outer face instead, at its edge, mm; none where it is shy.</summary>
    public double TakeOffFaceMm => Math.Max(0, ProudMm);
}

/// <summary>How faces and side of a keel layer lie at one place.</summary>
/// <param name="DeadriseDegrees">Of the planks' outer face where it meets the layer's, in the section.</param>
/// <param name="SlopeDegrees">Of the layer's outer face along the hull, positive where it rises going aft.</param>
/// <param name="BevelDegrees">Of its side, off plumb, in the section: positive where the outer face is the wider.</param>
/// <param name="PlankEndBevelDegrees">The saw's tilt at the planks' ends there.</param>
public sealed record KeelAngles(
    double DeadriseDegrees,
    double SlopeDegrees,
    double BevelDegrees,
    double PlankEndBevelDegrees
);

/// <summary>What the keel that is there does to one plank, against a keel at its mitre.</summary>
/// <param name="LengthChangeMm">Along the plank's own line: positive where the plank is the longer for it.</param>
public sealed record KeelPlankEnd(
    PlankId PlankId,
    double PositionMm,
    double LengthChangeMm,
    double CutDegrees,
    double BevelDegrees
)
{
    /// <summary>By how much the cut is turned from what it would be on a keel at its mitre, positive where <see cref="CutDegrees"/> is the greater.</summary>
    public double CutChangeDegrees { get; init; }
}

/// <summary>The cap over the last keel layer and the last cloth.</summary>
/// <param name="HalfWidthMm">Where the finished bottom meets the finished keel: the half-width of the cap's inner face.</param>
/// <param name="EdgeBevelDegrees">By which its edge must lean from square to run on in the bottom's line: the deadrise there.</param>
public sealed record KeelCapStation(
    string Station,
    double PositionMm,
    Side Side,
    double HalfWidthMm,
    double EdgeBevelDegrees
);
