using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using Shape = NetTopologySuite.Geometries.Geometry;

namespace PlankFit.Tests.Nesting;

/// <summary>
/// The shortest row of a few pieces of one width: every order, every way to lie, and at every place where two meet either end as it is, or one sawn at the other's
/// angle. By polygons that are moved until they are a kerf apart; nothing of the planner is asked.
/// </summary>
internal static class EveryRow
{
    public static double Shortest(IReadOnlyList<SawPiece> pieces, double kerfMm)
    {
        Lying[][] ways =
        [
            .. pieces.Select(p =>
                p.MayTurnEnd ? new[] { new Lying(p, false), new Lying(p, true) } : [new(p, false)]
            ),
        ];
        Lying[] all = [.. ways.SelectMany(w => w)];
        var pitch = all.SelectMany(a => all.Where(b => b.Piece != a.Piece), (a, b) => (a, b))
            .ToDictionary(p => p, p => Nearest(p.a, p.b, kerfMm));
        double Rest(Lying last, IReadOnlyList<SawPiece> left) =>
            left.Count == 0
                ? last.LengthMm
                : all.Where(n => left.Contains(n.Piece))
                    .Min(n => pitch[(last, n)] + Rest(n, [.. left.Where(p => p != n.Piece)]));
        return all.Min(first => Rest(first, [.. pieces.Where(p => p != first.Piece)]));
    }

    private static double Nearest(Lying one, Lying next, double kerfMm)
    {
        double least = Apart(one.Plain, next.Plain, kerfMm);
        if (one.Sawn(true, next.Left) is { } first)
        {
            least = Math.Min(least, Apart(first, next.Plain, kerfMm));
        }

        return next.Sawn(false, one.Right) is { } second
            ? Math.Min(least, Apart(one.Plain, second, kerfMm))
            : least;
    }

    /// <summary>How far the second is moved to be a kerf from the first: both have all of one width, so that less is too near.</summary>
    private static double Apart(Shape one, Shape next, double kerfMm)
    {
        double near = 0,
            far = 3000;
        while (far - near > 1e-6)
        {
            double middle = (near + far) / 2;
            Shape moved = new NetTopologySuite.Geometries.Utilities.AffineTransformation()
                .Translate(middle, 0)
                .Transform(next);
            (near, far) = one.Distance(moved) < kerfMm ? (middle, far) : (near, middle);
        }

        return far;
    }

    /// <summary>A piece as it lies, its least x at nought.</summary>
    private sealed class Lying
    {
        private readonly Func<Vec2, Vec2> lie;

        public Lying(SawPiece piece, bool turned)
        {
            Piece = piece;
            double sign = turned ? -1 : 1;
            Vec2 corner = new(
                piece.Outline.Min(p => sign * p.X),
                piece.Outline.Min(p => sign * p.Y)
            );
            lie = p => (sign * p) - corner;
            Vec2[] at = [.. piece.Outline.Select(lie)];
            Plain = BoardLaws.Shape(at);
            LengthMm = at.Max(p => p.X);
            Vec2[] low = [.. at.Where(p => p.Y < 1).OrderBy(p => p.X)],
                high = [.. at.Where(p => p.Y > 1).OrderBy(p => p.X)];
            (Left, Right) = (high[0] - low[0], high[1] - low[1]);
            (leftAt, rightAt) = (low[0], low[1]);
        }

        private readonly Vec2 leftAt;
        private readonly Vec2 rightAt;

        public SawPiece Piece { get; }

        public Shape Plain { get; }

        public double LengthMm { get; }

        /// <summary>Along its ends, upwards.</summary>
        public Vec2 Left { get; }

        public Vec2 Right { get; }

        /// <summary>With an end along a direction: the shortest of which all of the end stands as far out as must be, and a corner by what it is left long by.</summary>
        public Shape? Sawn(bool far, Vec2 along)
        {
            LongEnd end = Piece.LongEnds[0];
            Vec2 net = lie(end.Net[0]),
                outward = lie(end.Outward) - lie(default);
            if ((outward.X > 0) != far)
            {
                return null;
            }

            double Beyond(double x, double y) =>
                (new Vec2(x + (along.X / along.Y * y), y) - net).Dot(outward);
            double from = far ? 0 : LengthMm,
                to = far ? 2 * LengthMm : -LengthMm;
            while (Math.Abs(to - from) > 1e-9)
            {
                double x = (from + to) / 2,
                    low = Beyond(x, 0),
                    high = Beyond(x, 150);
                (from, to) =
                    Math.Min(low, high) >= end.LeastMm && Math.Max(low, high) >= end.ByMm
                        ? (from, x)
                        : (x, to);
            }

            if (Math.Max(Beyond(to, 0), Beyond(to, 150)) > end.ByMm + 75)
            {
                return null;
            }

            Vec2 top = new(to + (along.X / along.Y * 150), 150),
                foot = new(to, 0);
            Vec2[] sawn = far
                ? [leftAt, foot, top, leftAt + Left]
                : [foot, rightAt, rightAt + Right, top];
            return BoardLaws.Shape(sawn);
        }
    }
}
