namespace PlankFit.Geometry.Primitives;

/// <summary>
/// An outline (first point not repeated) none of whose sides comes near another than its neighbours. What such outlines have together or in common, where they do
/// not come near each other either, is one of them: the library of <see cref="PlanarShapes"/> is not asked, which takes longer to be made ready for use than all else
/// that a cloth asks of it. Where there is doubt there is none.
/// </summary>
public sealed class PlainOutline
{
    /// <summary>Nearer than this sides may touch once they are on the grid, mm.</summary>
    private const double NearMm = 1e-5;

    /// <summary>So many sides in succession are looked at by the box about them first.</summary>
    private const int Run = 16;

    private readonly Vec2[] points;
    private readonly (Vec2 Low, Vec2 High)[] boxes;

    private PlainOutline(Vec2[] points)
    {
        this.points = points;
        boxes = new (Vec2, Vec2)[(points.Length + Run - 1) / Run];
        for (int i = 0; i < boxes.Length; i++)
        {
            double left = double.PositiveInfinity,
                foot = left,
                right = double.NegativeInfinity,
                head = right;
            for (int k = i * Run; k <= Math.Min((i + 1) * Run, points.Length); k++)
            {
                Vec2 p = points[k % points.Length];
                (left, right) = (Math.Min(left, p.X), Math.Max(right, p.X));
                (foot, head) = (Math.Min(foot, p.Y), Math.Max(head, p.Y));
            }

            boxes[i] = (new(left, foot), new(right, head));
        }
    }

    /// <summary>Null where a side may touch another or turn back on its neighbour.</summary>
    public static PlainOutline? Of(Vec2[] points)
    {
        if (points.Length < 3)
        {
            return null;
        }

        int n = points.Length;
        for (int i = 0; i < n; i++)
        {
            Vec2 a = points[i],
                b = points[(i + 1) % n],
                c = points[(i + 2) % n];
            if (
                !((b - a).Norm > NearMm)
                || ((b - a).Dot(c - b) < 0 && !IsOff(a, b, c) && !IsOff(b, c, a))
            )
            {
                return null;
            }
        }

        var outline = new PlainOutline(points);
        return outline.IsNear(outline) ? null : outline;
    }

    /// <summary>Whether it lies in the other, nowhere near its sides.</summary>
    public bool LiesWithin(PlainOutline other) =>
        FlatPolygon.Holds(other.points, points[0]) && !IsNear(other);

    private bool IsNear(PlainOutline other)
    {
        for (int i = 0; i < boxes.Length; i++)
        {
            for (int j = other == this ? i : 0; j < other.boxes.Length; j++)
            {
                if (Meet(boxes[i], other.boxes[j]) && AreNear(i * Run, other, j * Run))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private bool AreNear(int from, PlainOutline other, int otherFrom)
    {
        int n = points.Length,
            m = other.points.Length;
        for (int i = from; i < Math.Min(from + Run, n); i++)
        {
            for (int j = otherFrom; j < Math.Min(otherFrom + Run, m); j++)
            {
                bool neighbours = other == this && (i == j || (i + 1) % n == j || (j + 1) % n == i);
                if (
                    !neighbours
                    && !AreApart(
                        points[i],
                        points[(i + 1) % n],
                        other.points[j],
                        other.points[(j + 1) % m]
                    )
                )
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static bool Meet((Vec2 Low, Vec2 High) a, (Vec2 Low, Vec2 High) b) =>
        a.Low.X <= b.High.X + NearMm
        && b.Low.X <= a.High.X + NearMm
        && a.Low.Y <= b.High.Y + NearMm
        && b.Low.Y <= a.High.Y + NearMm;

    /// <summary>By their boxes, or since one of them lies wholly to one side of the other.</summary>
    private static bool AreApart(Vec2 a, Vec2 b, Vec2 c, Vec2 d) =>
        Math.Max(a.X, b.X) < Math.Min(c.X, d.X) - NearMm
        || Math.Max(c.X, d.X) < Math.Min(a.X, b.X) - NearMm
        || Math.Max(a.Y, b.Y) < Math.Min(c.Y, d.Y) - NearMm
        || Math.Max(c.Y, d.Y) < Math.Min(a.Y, b.Y) - NearMm
        || SameSide(a, b, c, d)
        || SameSide(c, d, a, b);

    private static bool SameSide(Vec2 from, Vec2 to, Vec2 c, Vec2 d)
    {
        Vec2 along = to - from;
        double near = NearMm * along.Norm,
            one = along.Cross(c - from),
            other = along.Cross(d - from);
        return (one > near && other > near) || (one < -near && other < -near);
    }

    /// <summary>Whether a point is off the line through two others.</summary>
    private static bool IsOff(Vec2 from, Vec2 to, Vec2 p) =>
        Math.Abs((to - from).Cross(p - from)) > NearMm * (to - from).Norm;
}
