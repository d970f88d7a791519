using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Sheathing;

/// <summary>A piece in one of the ways that it may lie on the roll, its lower left corner at nought.</summary>
internal sealed class RollShape
{
    private readonly double[] ys;
    private readonly double[] left;
    private readonly double[] right;

    /// <param name="turned">Turned end for end.</param>
    /// <param name="over">The other face up: its mirror image.</param>
    public RollShape(IReadOnlyList<Vec2> outline, bool turned, bool over)
    {
        (Turned, Over) = (turned, over);
        double sx = turned ? -1 : 1,
            sy = turned != over ? -1 : 1;
        Vec2[] moved = [.. outline.Select(p => new Vec2(sx * p.X, sy * p.Y))];
        var low = new Vec2(moved.Min(p => p.X), moved.Min(p => p.Y));
        Outline = [.. moved.Select(p => p - low)];
        if (over)
        {
            Array.Reverse(Outline);
        }

        LengthMm = Outline.Max(p => p.X);
        WidthMm = Outline.Max(p => p.Y);
        AreaMm2 = FlatPolygon.Area(Outline);
        ys = [.. Outline.Select(p => p.Y).Distinct().Order()];
        left = new double[ys.Length];
        right = new double[ys.Length];
        for (int i = 0; i < ys.Length; i++)
        {
            (left[i], right[i]) = Ends(ys[i]);
        }
    }

    public bool Turned { get; }
    public bool Over { get; }
    public Vec2[] Outline { get; }
    public double LengthMm { get; }
    public double WidthMm { get; }
    public double AreaMm2 { get; }

    /// <summary>The least x of it between two heights, mm.</summary>
    public double LeftBetween(double low, double high) => Between(left, low, high, Math.Min);

    public double RightBetween(double low, double high) => Between(right, low, high, Math.Max);

    /// <summary>How far another's corner must lie from this one's, along the roll, for it to lie wholly behind: exact for what both reach at every height.</summary>
    /// <returns>Null where they share no height.</returns>
    public double? Pitch(double ownY, RollShape other, double otherY)
    {
        double low = Math.Max(ownY, otherY),
            high = Math.Min(ownY + WidthMm, otherY + other.WidthMm);
        if (high - low <= 1e-9)
        {
            return null;
        }

        double most = Math.Max(Apart(low), Apart(high));
        foreach (double at in ys)
        {
            double y = at + ownY;
            if (y >= low && y <= high)
            {
                most = Math.Max(most, Apart(y));
            }
        }

        foreach (double at in other.ys)
        {
            double y = at + otherY;
            if (y >= low && y <= high)
            {
                most = Math.Max(most, Apart(y));
            }
        }

        return most;

        double Apart(double y) => At(right, y - ownY) - other.At(other.left, y - otherY);
    }

    private double At(double[] ends, double y)
    {
        int i = FirstFrom(y);
        if (i < ys.Length && ys[i] == y)
        {
            return ends[i];
        }

        i = Math.Clamp(i, 1, ys.Length - 1);
        double part = Math.Clamp((y - ys[i - 1]) / (ys[i] - ys[i - 1]), 0, 1);
        return ends[i - 1] + (part * (ends[i] - ends[i - 1]));
    }

    /// <summary>The first of the heights that is not below this one. Written out, since the framework's own is not compiled ahead for numbers.</summary>
    private int FirstFrom(double y)
    {
        int from = 0,
            to = ys.Length;
        while (from < to)
        {
            int middle = (from + to) / 2;
            (from, to) = ys[middle] < y ? (middle + 1, to) : (from, middle);
        }

        return from;
    }

    private double Between(
        double[] ends,
        double low,
        double high,
        Func<double, double, double> worse
    )
    {
        double found = worse(At(ends, low), At(ends, high));
        for (int i = FirstFrom(low); i < ys.Length && ys[i] <= high; i++)
        {
            found = worse(found, ends[i]);
        }

        return found;
    }

    /// <summary>The furthest that the outline reaches either way at one height.</summary>
    private (double Left, double Right) Ends(double y)
    {
        double least = double.PositiveInfinity,
            most = double.NegativeInfinity;
        for (int i = 0; i < Outline.Length; i++)
        {
            Vec2 a = Outline[i],
                b = Outline[(i + 1) % Outline.Length];
            if (Math.Min(a.Y, b.Y) > y || Math.Max(a.Y, b.Y) < y)
            {
                continue;
            }

            double one = a.Y == b.Y ? a.X : a.X + ((b.X - a.X) * (y - a.Y) / (b.Y - a.Y)),
                other = a.Y == b.Y ? b.X : one;
            least = Math.Min(least, Math.Min(one, other));
            most = Math.Max(most, Math.Max(one, other));
        }

        return (least, most);
    }
}
