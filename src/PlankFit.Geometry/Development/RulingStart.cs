using PlankFit.Geometry.Primitives;

namespace PlankFit.Geometry.Development;

/// <summary>
/// A first set of rulings between two sampled curves: the strip of triangles that bends least. Shortest path over the
/// grid of pairs (i, j), after Wang and Tang 2005, "Optimal boundary triangulations of an interpolating ruled surface",
/// JCISE 5(4); the cost of passing a ruling is its length times the square of the turn of the triangles' normals.
/// It always exists, is monotone on both curves, and holds fans as runs on one curve.
/// </summary>
internal static class RulingStart
{
    /// <summary>The pairs (i, j) passed, from (0, 0) to (last, last); one of the two grows by one at each step.</summary>
    public static List<(int I, int J)> Path(ReadOnlySpan<Vec3> a, ReadOnlySpan<Vec3> b)
    {
        int n = a.Length,
            m = b.Length;
        // State: pair (i, j) reached by a triangle with its side on the lower curve (0) or on the upper (1).
        double[] cost = new double[n * m * 2];
        byte[] from = new byte[n * m * 2];
        var normal = new Vec3[n * m * 2];
        Array.Fill(cost, double.PositiveInfinity);
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < m; j++)
            {
                int here = 2 * ((i * m) + j);
                if (i > 0)
                {
                    Vec3 triangle = Normal(a[i] - a[i - 1], b[j] - a[i]);
                    Reach(here, 2 * (((i - 1) * m) + j), triangle, a[i - 1].ChordTo(b[j]));
                }

                if (j > 0)
                {
                    Vec3 triangle = Normal(b[j] - b[j - 1], b[j] - a[i]);
                    Reach(here + 1, 2 * ((i * m) + j - 1), triangle, a[i].ChordTo(b[j - 1]));
                }
            }
        }

        void Reach(int state, int before, Vec3 triangle, double ruling)
        {
            normal[state] = triangle;
            if (before == 0)
            {
                cost[state] = 0;
                return;
            }

            for (int k = 0; k < 2; k++)
            {
                // |n1 - n2|² stands for the square of the turn; past a right angle the strip would fold on itself.
                double turn = (triangle - normal[before + k]).NormSquared;
                double sum =
                    cost[before + k] + (ruling * (turn > 2 ? 1e6 : turn)) + (1e-12 * ruling);
                if (sum < cost[state])
                {
                    cost[state] = sum;
                    from[state] = (byte)k;
                }
            }
        }

        List<(int I, int J)> path = [(n - 1, m - 1)];
        int end = 2 * ((n * m) - 1),
            last = cost[end] <= cost[end + 1] ? 0 : 1;
        for ((int i, int j) = (n - 1, m - 1); i > 0 || j > 0; )
        {
            int before = from[(2 * ((i * m) + j)) + last];
            (i, j) = last == 0 ? (i - 1, j) : (i, j - 1);
            path.Add((i, j));
            last = before;
        }

        path.Reverse();
        return path;
    }

    /// <summary>Unit normal of a triangle, or zero where it has no area (at a point where both curves meet).</summary>
    private static Vec3 Normal(Vec3 along, Vec3 across)
    {
        Vec3 c = along.Cross(across);
        double size = along.Norm * across.Norm;
        return c.Norm > 1e-12 * size && size > 0 ? c.Unit() : Vec3.Zero;
    }
}
