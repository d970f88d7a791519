using System.Runtime.InteropServices;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Fastenings;

/// <summary>
/// How far a place on a flat plank is from all that it must keep away from, less what the rule asks: not negative where a fastening may go. It changes by no
/// more than the place moves, so that searches may step by it.
/// </summary>
internal sealed class Clearance
{
    /// <summary>The answer where nothing is near, mm.</summary>
    private const double FarMm = 1000;

    /// <summary>What the squares of two lengths may be rounded by.</summary>
    private const double Rounding = 1 + 1e-12;

    private readonly List<Barrier> barriers = [];
    private readonly List<(Vec2 At, double LeastMm, Obstacle What)> spots = [];

    /// <summary>The same in order of x, and the most that any asks.</summary>
    private readonly List<(Vec2 At, double LeastMm)> inOrder = [];
    private double farthestSpot;

    /// <summary>A line to keep away from.</summary>
    public void KeepFromLine(IReadOnlyList<Vec2> line, double leastMm, Obstacle what)
    {
        if (line.Count > 1)
        {
            barriers.Add(new(line, false, false, leastMm, what));
        }
    }

    /// <summary>An area to keep out of, and away from.</summary>
    public void KeepOut(IReadOnlyList<Vec2> area, double leastMm, Obstacle what)
    {
        if (area.Count > 2)
        {
            barriers.Add(new(area, true, false, leastMm, what));
        }
    }

    /// <summary>An area to stay inside of.</summary>
    public void KeepIn(IReadOnlyList<Vec2> area, double leastMm, Obstacle what) =>
        barriers.Add(new(area, true, true, leastMm, what));

    /// <summary>A point to keep away from.</summary>
    public void KeepFrom(Vec2 point, double leastMm, Obstacle what)
    {
        spots.Add((point, leastMm, what));
        inOrder.Insert(FirstFrom(point.X), (point, leastMm));
        farthestSpot = Math.Max(farthestSpot, leastMm);
    }

    /// <summary>A copy to which more may be added.</summary>
    public Clearance Copy()
    {
        var copy = new Clearance();
        copy.barriers.AddRange(barriers);
        copy.spots.AddRange(spots);
        copy.inOrder.AddRange(inOrder);
        copy.farthestSpot = farthestSpot;
        return copy;
    }

    /// <summary>Takes back what was said of a point.</summary>
    public void Forget(Vec2 point, Obstacle what)
    {
        int i = spots.FindIndex(s => s.At == point && s.What == what);
        if (i >= 0)
        {
            inOrder.Remove((point, spots[i].LeastMm));
            spots.RemoveAt(i);
        }
    }

    public double At(Vec2 p) => Tightest(p).SpareMm;

    /// <summary>What is lacking at a place: to spare where that is less than nought (or than what is lacking anyhow), else just that. Asked oftener than all else, and most is too far off to matter.</summary>
    public double Lack(Vec2 p, double anyhow = 0)
    {
        double least = anyhow;
        foreach (Barrier barrier in CollectionsMarshal.AsSpan(barriers))
        {
            if (barrier.MayBeBelow(p, least))
            {
                least = Math.Min(least, barrier.Spare(p, least));
            }
        }

        // Those in order of x that may be near enough.
        for (int i = FirstFrom(p.X - farthestSpot); i < inOrder.Count; i++)
        {
            (Vec2 at, double asks) = inOrder[i];
            double x = p.X - at.X;
            if (x < -farthestSpot)
            {
                break;
            }

            double reach = least + asks,
                y = p.Y - at.Y,
                square = (x * x) + (y * y);
            if (reach > 0 && square < reach * reach * Rounding)
            {
                least = Math.Min(least, Math.Sqrt(square) - asks);
            }
        }

        return least;
    }

    private int FirstFrom(double x)
    {
        int low = 0,
            high = inOrder.Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = inOrder[middle].At.X < x ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>The tightest of all at a place: what to spare, what it is, and what its rule asks.</summary>
    /// <param name="but">What is left out of account.</param>
    public (double SpareMm, Obstacle What, double AsksMm) Tightest(Vec2 p, Obstacle? but = null)
    {
        (double Spare, Obstacle What, double Asks) tightest = (FarMm, "", 0);
        foreach (Barrier barrier in barriers)
        {
            if (barrier.MayBeBelow(p, tightest.Spare))
            {
                double spare = barrier.Spare(p, tightest.Spare);
                tightest =
                    spare < tightest.Spare ? (spare, barrier.What, barrier.LeastMm) : tightest;
            }
        }

        foreach ((Vec2 at, double least, Obstacle what) in spots)
        {
            // Most are far off, which is told without a root.
            double reach = tightest.Spare + least,
                x = p.X - at.X,
                y = p.Y - at.Y,
                square = (x * x) + (y * y);
            if (reach <= 0 || square > reach * reach * Rounding)
            {
                continue;
            }

            double spare = Math.Sqrt(square) - least;
            if (spare < tightest.Spare && what != but)
            {
                tightest = (spare, what, least);
            }
        }

        return tightest;
    }

    private sealed class Barrier
    {
        private readonly Vec2[] points;
        private readonly bool closed,
            inside;
        private readonly double left,
            right,
            bottom,
            top;

        public Barrier(
            IReadOnlyList<Vec2> line,
            bool closed,
            bool inside,
            double leastMm,
            Obstacle what
        )
        {
            points = [.. line];
            (this.closed, this.inside) = (closed, inside);
            (LeastMm, What) = (leastMm, what);
            left = points.Min(p => p.X);
            right = points.Max(p => p.X);
            bottom = points.Min(p => p.Y);
            top = points.Max(p => p.Y);
        }

        public double LeastMm { get; }

        public Obstacle What { get; }

        public bool MayBeBelow(Vec2 p, double spare)
        {
            if (inside)
            {
                return true;
            }

            double dx = Math.Max(0, Math.Max(left - p.X, p.X - right)),
                dy = Math.Max(0, Math.Max(bottom - p.Y, p.Y - top)),
                reach = spare + LeastMm;
            return reach > 0 ? (dx * dx) + (dy * dy) < reach * reach : dx == 0 && dy == 0;
        }

        /// <summary>What there is to spare where that is less than so much; else anything that is not.</summary>
        public double Spare(Vec2 p, double below)
        {
            double reach = below + LeastMm;
            (double least, bool within) = Nearest(p, reach > 0 ? reach * reach * Rounding : 0);
            // On the wrong side of the line it is below however far off the line is.
            bool wrong = closed && within != inside;
            double away = Math.Sqrt(wrong ? Nearest(p, double.PositiveInfinity).Square : least);
            return (wrong ? -away : away) - LeastMm;
        }

        /// <summary>The square of the way to the line, or <paramref name="square"/> where that is no less; and whether the place lies within it.</summary>
        private (double Square, bool Within) Nearest(Vec2 p, double square)
        {
            bool within = false;
            Vec2 a = closed ? points[^1] : points[0];
            for (int i = closed ? 0 : 1; i < points.Length; i++)
            {
                Vec2 b = points[i];
                // Most are further off along or across than what is asked for: told without a division.
                double x = Math.Max(Math.Min(a.X, b.X) - p.X, p.X - Math.Max(a.X, b.X)),
                    y = Math.Max(Math.Min(a.Y, b.Y) - p.Y, p.Y - Math.Max(a.Y, b.Y));
                if (!(x > 0 && x * x > square * Rounding) && !(y > 0 && y * y > square * Rounding))
                {
                    square = Math.Min(square, SquareTo(p, a, b));
                }

                within ^=
                    closed
                    && (a.Y > p.Y) != (b.Y > p.Y)
                    && p.X < a.X + ((b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y));
                a = b;
            }

            return (square, within);
        }

        private static double SquareTo(Vec2 p, Vec2 a, Vec2 b)
        {
            double x = b.X - a.X,
                y = b.Y - a.Y,
                length = (x * x) + (y * y),
                part = length > 0
                    ? Math.Clamp((((p.X - a.X) * x) + ((p.Y - a.Y) * y)) / length, 0, 1)
                    : 0,
                dx = p.X - a.X - (part * x),
                dy = p.Y - a.Y - (part * y);
            return (dx * dx) + (dy * dy);
        }
    }
}
