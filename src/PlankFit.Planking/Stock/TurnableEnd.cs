using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>
/// An end left long of a piece as it lies, its grain along x: where it is sawn at another angle. It keeps to what is asked everywhere, and to all that it is left
/// long by at one corner at least.
/// </summary>
public sealed class TurnableEnd
{
    /// <summary>An edge is carried on straight, in its direction over so much of its length, mm.</summary>
    private const double StraightMm = 30;

    /// <summary>Edges run out at an end, not along it.</summary>
    private const double LeastAlong = 0.1;
    private const double NearMm = HalfPlane.NearMm;

    private readonly LaidPiece laid;
    private readonly LongEnd end;
    private readonly bool far;
    private readonly PieceSide side;
    private readonly Carried low;
    private readonly Carried high;
    private readonly ImmutableArray<Vec2> other;
    private readonly double lowY;
    private readonly double highY;

    private TurnableEnd(
        LaidPiece laid,
        LongEnd end,
        PieceSide side,
        Carried low,
        Carried high,
        ImmutableArray<Vec2> other
    )
    {
        (this.laid, this.end, this.side, this.low, this.high, this.other) = (
            laid,
            end,
            side,
            low,
            high,
            other
        );
        far = side.Kind == SideKind.Far;
        Outline = laid.Outline;
        lowY = Outline.Min(p => p.Y);
        highY = Outline.Max(p => p.Y);
    }

    /// <summary>The piece as it lies with the end as it is.</summary>
    public ImmutableArray<Vec2> Outline { get; }

    /// <summary>No less need stand beyond the net end than does: it is of no use to turn it.</summary>
    public bool HasSlack => end.LeastMm < end.ByMm;

    /// <param name="far">The end that looks along x; else the one that looks back.</param>
    /// <returns>Null where that is not one end left long between two edges.</returns>
    public static TurnableEnd? Of(LaidPiece laid, bool far, SawTolerances tolerances)
    {
        ImmutableArray<PieceSide> sides = PieceSides.Of(laid.Outline, tolerances);
        if (
            Only(sides, far ? SideKind.Far : SideKind.Near) is not { } side
            || Only(sides, far ? SideKind.Near : SideKind.Far) is not { } other
            || Only(sides, SideKind.Low) is not { } low
            || Only(sides, SideKind.High) is not { } high
            || (far ? low.To : low.From) != side.From
            || (far ? high.To : high.From) != side.To
            || laid.Piece.LongEnds.FirstOrDefault(e =>
                laid.TurnedBy(e.Outward).Dot(side.Outward) > 0.9
            )
                is not { } end
        )
        {
            return null;
        }

        Vec2 outward = laid.TurnedBy(end.Outward);
        Carried Edge(PieceSide edge)
        {
            Carried carried = Of(edge, far, outward);
            return carried with { BeyondMm = end.Beyond(laid.FromBoard(carried.Corner)) };
        }

        Carried lower = Edge(low),
            upper = Edge(high);
        return lower.Rises > LeastAlong && upper.Rises > LeastAlong
            ? new(laid, end, side, lower, upper, other.Points)
            : null;
    }

    /// <summary>Along an end that is straight, from the marked edge on; null where it is not one straight end.</summary>
    public static Vec2? Direction(LaidPiece laid, bool far, SawTolerances tolerances) =>
        Only(PieceSides.Of(laid.Outline, tolerances), far ? SideKind.Far : SideKind.Near)
            is { } side
        && side.OffMm <= tolerances.StraightMm
            ? side.Direction
            : null;

    /// <summary>
    /// Where the end comes to lie along a direction: points p of the line have p · way equal to it, way square to the line and away from the wood. Null where
    /// there is no room for it in the piece's own height, or it would be left too long or nothing be left of the piece.
    /// </summary>
    public double? Reach(Vec2 along)
    {
        Vec2 way = Way(along);
        if (low.Way.Dot(way) <= LeastAlong || high.Way.Dot(way) <= LeastAlong)
        {
            return null;
        }

        double reach = Math.Max(
            Math.Max(
                low.Reach(way, end.LeastMm + low.OffMm),
                high.Reach(way, end.LeastMm + high.OffMm)
            ),
            Math.Min(low.Reach(way, end.ByMm), high.Reach(way, end.ByMm))
        );
        Vec2 p = low.At(way, reach),
            q = high.At(way, reach);
        double most = Math.Max(low.Beyond(way, reach), high.Beyond(way, reach));
        return
            most <= end.ByMm + TurnedEnds.MostMoreMm
            && p.Y >= lowY - NearMm
            && q.Y <= highY + NearMm
            && other.All(v => v.Dot(way) < reach - 1)
            ? reach
            : null;
    }

    /// <summary>An outline that has both its corners, the end taken off and made anew; null where it has not.</summary>
    public ImmutableArray<Vec2>? Cut(ImmutableArray<Vec2> outline, Vec2 along, double reach)
    {
        if (!outline.Contains(low.Corner) || !outline.Contains(high.Corner))
        {
            return null;
        }

        Vec2 way = Way(along);
        Vec2[] grown =
        [
            .. outline
                .Where(v => v == low.Corner || v == high.Corner || !side.Points.Contains(v))
                .Select(v =>
                    v.Dot(way) >= reach ? v
                    : v == low.Corner ? low.At(way, reach)
                    : v == high.Corner ? high.At(way, reach)
                    : v
                ),
        ];
        return HalfPlane.Of(grown, way, reach);
    }

    /// <summary>The piece with its end along a direction; as it was where that cannot be.</summary>
    public LaidPiece Turned(Vec2 along)
    {
        if (Reach(along) is not { } reach || Cut(Outline, along, reach) is not { } outline)
        {
            return laid;
        }

        Vec2 way = Way(along);
        double[] beyond =
        [
            .. outline
                .Where(v => v.Dot(way) >= reach - (10 * NearMm))
                .Select(v => end.Beyond(laid.FromBoard(v))),
        ];
        IEnumerable<Vec2> own = outline.Select(laid.FromBoard);
        return laid with
        {
            Sawn = laid.FaceDown ? [.. own.Reverse()] : [.. own],
            Long = [.. laid.Long.Where(l => l.Far != far), new(far, beyond.Min(), beyond.Max())],
        };
    }

    private Vec2 Way(Vec2 along) => far ? -1 * along.Left() : along.Left();

    private static PieceSide? Only(ImmutableArray<PieceSide> sides, SideKind kind)
    {
        PieceSide[] found = [.. sides.Where(s => s.Kind == kind)];
        return found.Length == 1 ? found[0] : null;
    }

    private static Carried Of(PieceSide edge, bool far, Vec2 outward)
    {
        Vec2[] points = far ? [.. edge.Points.Reverse()] : [.. edge.Points];
        int back = Array.FindIndex(points, v => v.ChordTo(points[0]) >= StraightMm);
        back = back < 0 ? points.Length - 1 : back;
        Vec2 way = (points[0] - points[back]).Unit();
        return new(
            points[0],
            way,
            way.Dot(outward),
            points[..(back + 1)].Max(v => Math.Abs((v - points[0]).Cross(way))),
            0
        );
    }

    /// <summary>An edge carried on straight beyond its corner, or followed back from it.</summary>
    /// <param name="Rises">Away from the net end, by so much a millimetre.</param>
    /// <param name="OffMm">The most that the edge leaves the straight beside the corner.</param>
    /// <param name="BeyondMm">How far the corner stands beyond the net end.</param>
    private readonly record struct Carried(
        Vec2 Corner,
        Vec2 Way,
        double Rises,
        double OffMm,
        double BeyondMm
    )
    {
        /// <summary>Where a line square to a way lies whose meeting with the edge stands so far beyond the net end.</summary>
        public double Reach(Vec2 way, double beyondMm) =>
            Corner.Dot(way) + ((beyondMm - BeyondMm) * Way.Dot(way) / Rises);

        public double Beyond(Vec2 way, double reach) =>
            BeyondMm + ((reach - Corner.Dot(way)) / Way.Dot(way) * Rises);

        public Vec2 At(Vec2 way, double reach) =>
            Corner + ((reach - Corner.Dot(way)) / Way.Dot(way) * Way);
    }
}
