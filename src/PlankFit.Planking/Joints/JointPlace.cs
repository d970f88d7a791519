using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Joints;

/// <summary>A place where a plank may be jointed, in its own flat coordinates, mm.</summary>
/// <param name="AtMm">s where the joint's middle crosses the plank's own line.</param>
/// <param name="CutDegrees">90 is square to that line; see <see cref="PlankJoint"/>.</param>
/// <param name="FarMm">The greatest s that the piece inboard of it reaches.</param>
/// <param name="NearMm">The least s that the piece outboard of it reaches.</param>
/// <param name="Backing">What is behind it; null for a scarf.</param>
/// <param name="Named">The backing is timber with a name of its own, the same behind other planks.</param>
public sealed record JointPlace(
    double AtMm,
    double CutDegrees,
    double FarMm,
    double NearMm,
    string? Backing,
    bool Named
)
{
    /// <summary>
    /// The place along the planks in a measure common to the layer, mm: from one plank's own line square to the next's. Differences of it are the
    /// stagger that a tape shows along the planks.
    /// </summary>
    public double AlongMm { get; init; } = AtMm;

    /// <summary>The hull's x there, mm.</summary>
    public double XMm { get; init; }

    /// <summary>The joint's middle from one edge of the plank to the other, lesser n first.</summary>
    public ImmutableArray<Vec2> Line { get; init; } = [];
}

/// <summary>One way to divide a plank: its joints from inboard, none for a plank of one piece.</summary>
/// <param name="WasteMm">What the way costs beyond its pieces: offcuts of the stock, or how uneven the pieces are.</param>
public sealed record JointScheme(ImmutableArray<JointPlace> Joints, double WasteMm)
{
    public static readonly JointScheme Whole = new([], 0);

    public int Pieces => Joints.Length + 1;
}
