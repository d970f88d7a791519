using PlankFit.Geometry.Primitives;

namespace PlankFit.Geometry.Surfaces;

/// <summary>The polynomial through a section's points, by chord-length fraction v from 0 at the first to 1 at the last.</summary>
public static class SectionPolynomial
{
    /// <summary>Power coefficients a_0 .. a_(n−1) with sum a_k v_j^k = point j.</summary>
    public static Vec3[] Through(IReadOnlyList<Vec3> points)
    {
        int n = points.Count;
        double[] v = ChordFractions(points);

        // Newton's divided differences, then expanded to powers: stable for the few points that a section has.
        Vec3[] newton = [.. points];
        for (int order = 1; order < n; order++)
        {
            for (int j = n - 1; j >= order; j--)
            {
                newton[j] = (newton[j] - newton[j - 1]) / (v[j] - v[j - order]);
            }
        }

        var power = new Vec3[n];
        power[0] = newton[n - 1];
        for (int j = n - 2; j >= 0; j--)
        {
            for (int k = n - 1 - j; k >= 1; k--)
            {
                power[k] = power[k - 1] - (v[j] * power[k]);
            }

            power[0] = newton[j] - (v[j] * power[0]);
        }

        return power;
    }

    private static double[] ChordFractions(IReadOnlyList<Vec3> points)
    {
        double[] v = new double[points.Count];
        for (int j = 1; j < v.Length; j++)
        {
            double chord = points[j - 1].ChordTo(points[j]);
            if (!(chord > 0))
            {
                throw new ArgumentException($"two points of a section coincide: {points[j]}");
            }

            v[j] = v[j - 1] + chord;
        }

        double whole = v[^1];
        for (int j = 0; j < v.Length; j++)
        {
            v[j] /= whole;
        }

        return v;
    }
}
