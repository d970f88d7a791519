using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>Where a cut runs on a board.</summary>
/// <param name="From">The end of the cut nearer the marked edge (of a rip or an edge: nearer the beginning). For a crosscut on its lane's edge, or at the piece's own corner where the line carried on would enter a piece that was parted from it before.</param>
/// <param name="To">Its other end.</param>
/// <param name="Points">The sawn line itself, from From to To.</param>
/// <param name="OffMm">How far the sawn line leaves the straight.</param>
/// <param name="IsFollowed">It is not straight within the tolerance: From and To are its chord's, <paramref name="Points"/> are to be drawn and followed.</param>
public readonly record struct SawLine(
    Vec2 From,
    Vec2 To,
    ImmutableArray<Vec2> Points,
    double OffMm,
    bool IsFollowed
)
{
    public static SawLine Straight(Vec2 from, Vec2 to) => new(from, to, [from, to], 0, false);
}
