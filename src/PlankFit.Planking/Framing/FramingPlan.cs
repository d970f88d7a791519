using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;

namespace PlankFit.Planking.Framing;

/// <summary>Where what lies behind crosses every plank of every layer, both sides.</summary>
public sealed record FramingPlan(
    ImmutableDictionary<PlankId, ImmutableArray<FramingCrossing>> ByPlank,
    ImmutableArray<Finding> Findings
)
{
    /// <summary>Nothing lies behind.</summary>
    public static readonly FramingPlan None = new(
        ImmutableDictionary<PlankId, ImmutableArray<FramingCrossing>>.Empty,
        []
    );

    /// <summary>What it was worked out on.</summary>
    internal Planked? Planked { get; init; }

    /// <summary>What the job names.</summary>
    public ImmutableArray<FramingSpec> Things { get; init; } = [];

    /// <summary>Names of what carries: everything but places that are kept open.</summary>
    public IEnumerable<string> Carrying =>
        Things.Where(b => b.Kind != FramingKind.Open).Select(b => b.Name).Distinct();

    /// <summary>The same as lines to snap on the face under every plank layer after the first; one for both sides where they are mirror images.</summary>
    public ImmutableArray<SnapFace> Snaps { get; init; } = [];

    /// <summary>The face under the outermost layer with what lies behind: of a bottom of one layer the face that it is laid on, for which no line need be snapped. Null where nothing lies behind.</summary>
    public SnapFace? UnderOutermost { get; init; }

    /// <summary>What crosses one plank; nothing where its id is not known.</summary>
    public ImmutableArray<FramingCrossing> On(PlankId plankId) =>
        ByPlank.GetValueOrDefault(plankId, []);
}

/// <summary>
/// One thing behind, as it crosses one plank: its centre and its two edges on the flat plank (in the plank's own s and n, mm), each in one run from the
/// side of lesser to that of greater n or, where it runs nearly along the plank, inboard to outboard; clipped to the plank's net shape. A centre or an edge
/// that does not cross the plank is empty. <paramref name="OneEdge"/> lies to the left of the centre as it runs. <paramref name="Cover"/> is the strip
/// between the edges, clipped to the net shape, counter-clockwise. All within 0.02 mm.
/// </summary>
public sealed record FramingCrossing(
    FramingSpec Of,
    ImmutableArray<Vec2> Centre,
    ImmutableArray<Vec2> OneEdge,
    ImmutableArray<Vec2> OtherEdge,
    ImmutableArray<Vec2> Cover
);
