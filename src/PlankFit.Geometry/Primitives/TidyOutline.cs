namespace PlankFit.Geometry.Primitives;

/// <summary>
/// Outlines that stay simple when their numbers are rounded. Where no corner is nearer than twice the rounding's own move to a side that it is no end of, rounding
/// cannot make two sides cross: a corner would have to pass through a side first.
/// </summary>
public static class TidyOutline
{
    /// <summary>
    /// The closed outline (first point not repeated) without points nearer than <paramref name="apartMm"/> to the one before, and without tips that are thinner
    /// than that: where a side runs back along the one before it, the point between them is left out. No point moves; what is lost is thinner than the distance given.
    /// </summary>
    public static List<Vec2> Of(IReadOnlyList<Vec2> outline, double apartMm)
    {
        List<Vec2> left = [.. outline];
        int quiet = 0,
            i = 0;
        while (left.Count > 3 && quiet < left.Count)
        {
            i %= left.Count;
            Vec2 before = left[(i + left.Count - 1) % left.Count],
                here = left[i],
                after = left[(i + 1) % left.Count];
            if (
                here.ChordTo(before) < apartMm
                || ToSide(before, here, after) < apartMm
                || ToSide(after, before, here) < apartMm
            )
            {
                left.RemoveAt(i);
                quiet = 0;

                // What stood before it has a new neighbour.
                i = i > 0 ? i - 1 : left.Count - 1;
            }
            else
            {
                quiet++;
                i++;
            }
        }

        return left;
    }

    private static double ToSide(Vec2 p, Vec2 a, Vec2 b)
    {
        Vec2 run = b - a;
        double part = run.Dot(run) is > 0 and var size ? (p - a).Dot(run) / size : 0;
        return p.ChordTo(a + (Math.Clamp(part, 0, 1) * run));
    }
}
