using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Joints;

/// <summary>The pieces of all planks longer than the stock.</summary>
/// <param name="ByPlank">By the plank's id; a plank of one piece is not among them.</param>
public sealed record JointPlan(
    ImmutableArray<JointedLayer> Layers,
    ImmutableDictionary<PlankId, JointedPlank> ByPlank,
    ImmutableArray<Finding> Findings
)
{
    /// <summary>Every plank is of one piece.</summary>
    public static readonly JointPlan None = new(
        [],
        ImmutableDictionary<PlankId, JointedPlank>.Empty,
        []
    );

    /// <summary>The pieces of a plank; null where it is of one piece.</summary>
    public JointedPlank? On(PlankId plankId) => ByPlank.GetValueOrDefault(plankId);

    /// <summary>Everything about a layer and side; null where its planks are not pieced.</summary>
    public JointedLayer? Of(int layer, Side side) =>
        Layers.FirstOrDefault(l => l.Layer == layer && l.Side == side);
}

/// <summary>A layer of one side, its stock and rules, and its planks of more than one piece from forward.</summary>
/// <param name="LeastPieces">Proved: on the places tried these planks cannot be made of fewer pieces, whatever joints the layer below had.</param>
/// <param name="IsLeastWaste">With as many pieces none of the ways tried wastes less, and none was left out.</param>
public sealed record JointedLayer(
    int Layer,
    Side Side,
    JointStock Stock,
    ImmutableArray<JointRule> Rules,
    ImmutableArray<JointedPlank> Planks,
    double WasteMm,
    int LeastPieces,
    bool IsLeastWaste
)
{
    public int Pieces => Planks.Sum(p => p.Pieces.Length);
}

/// <summary>A plank in pieces: one more than its joints, both from inboard.</summary>
public sealed record JointedPlank(
    PlankId PlankId,
    ImmutableArray<PlankJoint> Joints,
    ImmutableArray<PlankPiece> Pieces
);

/// <summary>One piece of a plank, in the plank's own flat coordinates.</summary>
/// <param name="Id">S1-07a: the plank's, and a letter from inboard.</param>
/// <param name="Net">What of the plank's net shape it makes, the whole overlap of its scarfs with it.</param>
/// <param name="Cut">The shape to saw; at a scarf before it is tapered.</param>
/// <param name="LengthMm">Overall, corner to corner along the plank's own line: what it asks of a board, scarfs included.</param>
public sealed record PlankPiece(
    PieceId Id,
    ImmutableArray<Vec2> Net,
    ImmutableArray<Vec2> Cut,
    double LengthMm,
    PlankJoint? Inboard,
    PlankJoint? Outboard
);

/// <summary>A joint between two pieces of a plank, in the plank's own flat coordinates, mm.</summary>
/// <param name="Id">S1-07a/b: the two pieces that meet in it.</param>
/// <param name="AtMm">s where the joint's middle crosses the plank's own line.</param>
/// <param name="CutDegrees">Turning counter-clockwise from +s to the joint, 0 to 180; 90 is square.</param>
/// <param name="Backing">What is behind it, by name; null for a scarf.</param>
/// <param name="Scarf">Null for a butt.</param>
/// <param name="Distances">How near the joints and seams are that the rules speak of, one for each rule that has any within sight.</param>
public sealed record PlankJoint(
    JointId Id,
    JointKind Kind,
    double AtMm,
    double CutDegrees,
    string? Backing,
    ScarfTaper? Scarf,
    JointLines Lines,
    ImmutableArray<JointDistance> Distances
)
{
    /// <summary>Length of a scarf over the thickness; null for a butt.</summary>
    public double? Ratio => Scarf?.Ratio;

    /// <summary>Of a scarf's overlap along the plank; 0 for a butt.</summary>
    public double LengthMm => Scarf?.LengthMm ?? 0;

    public ImmutableArray<Vec2> OuterLine => Lines.Outer;

    public ImmutableArray<Vec2> InnerLine => Lines.Inner;

    /// <summary>The face on which a piece is planed to its taper, "inner" or "outer"; null for a butt.</summary>
    /// <param name="inboardPiece">The piece inboard of the joint, or the one outboard.</param>
    public string? TaperedFace(bool inboardPiece) =>
        Kind == JointKind.Butt ? null
        : inboardPiece == Scarf?.InboardOnOuter ? "inner"
        : "outer";
}

/// <summary>The long tapers of a scarf.</summary>
/// <param name="Ratio">Length over the thickness.</param>
/// <param name="LengthMm">Of the overlap along the plank.</param>
/// <param name="InboardOnOuter">The piece inboard of it reaches furthest on the outer face: it is tapered on its inner face, the other piece on its outer.</param>
public sealed record ScarfTaper(double Ratio, double LengthMm, bool InboardOnOuter);

/// <summary>Where a joint shows, lesser n first; the same on either face for a butt.</summary>
public sealed record JointLines(ImmutableArray<Vec2> Outer, ImmutableArray<Vec2> Inner);

/// <summary>The nearest of what a rule speaks of.</summary>
/// <param name="To">The joint, or the two planks whose seam it is.</param>
/// <param name="DistanceMm">Null for a rule that counts planks.</param>
/// <param name="Between">Whole planks between, for a rule that counts them.</param>
public sealed record JointDistance(JointRule Rule, string To, double? DistanceMm, int? Between);
