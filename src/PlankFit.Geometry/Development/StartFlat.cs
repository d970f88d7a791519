using PlankFit.Geometry.Primitives;

namespace PlankFit.Geometry.Development;

/// <summary>
/// A rough flat to start from: the strip of triangles between the two edges laid down side by side, each triangle true.
/// Such a strip always lies flat, whatever the surface, so it says nothing about strain; it only starts the search.
/// </summary>
internal static class StartFlat
{
    public static (Vec2[] Lower, Vec2[] Upper) Lay(SurfacePatch patch, IReadOnlyList<double> u)
    {
        int n = u.Count,
            hand = patch.Handedness;
        Vec2[] a = new Vec2[n],
            b = new Vec2[n];
        Vec3 low = patch.OnLower(u[0]).P,
            high = patch.OnUpper(u[0]).P;
        b[0] = new(0, hand * low.ChordTo(high));
        for (int i = 1; i < n; i++)
        {
            Vec3 nextLow = patch.OnLower(u[i]).P,
                nextHigh = patch.OnUpper(u[i]).P;
            a[i] = Apex(b[i - 1], a[i - 1], high.ChordTo(nextLow), low.ChordTo(nextLow), hand);
            b[i] = Apex(b[i - 1], a[i], high.ChordTo(nextHigh), nextLow.ChordTo(nextHigh), hand);
            (low, high) = (nextLow, nextHigh);
        }

        return (a, b);
    }

    /// <summary>The point at the given distances from p and q, on the left of p to q (hand +1) or on the right (-1).</summary>
    private static Vec2 Apex(Vec2 p, Vec2 q, double fromP, double fromQ, int hand)
    {
        double side = p.ChordTo(q);
        if (side < 1e-9 * (fromP + fromQ))
        {
            return q + new Vec2(fromQ, 0);
        }

        Vec2 along = (q - p) / side;
        double x = ((side * side) + (fromP * fromP) - (fromQ * fromQ)) / (2 * side);
        double y = Math.Sqrt(Math.Max(0, (fromP * fromP) - (x * x)));
        return p + (x * along) + (hand * y * along.Left());
    }
}
