namespace PlankFit.Geometry.Primitives;

/// <summary>How near two straight stretches come to each other in space.</summary>
public static class SegmentDistance
{
    /// <summary>
    /// The least distance between a point of a-b and one of c-d, mm. Either the two lines' common perpendicular, where its feet lie on both stretches, or from
    /// an end of one to the other.
    /// </summary>
    public static double Between(Vec3 a, Vec3 b, Vec3 c, Vec3 d)
    {
        Vec3 u = b - a,
            v = d - c,
            w = a - c;
        double uu = u.NormSquared,
            uv = u.Dot(v),
            vv = v.NormSquared,
            det = (uu * vv) - (uv * uv);
        if (det > 1e-12 * uu * vv)
        {
            double s = ((uv * v.Dot(w)) - (vv * u.Dot(w))) / det,
                t = ((uu * v.Dot(w)) - (uv * u.Dot(w))) / det;
            if (s is >= 0 and <= 1 && t is >= 0 and <= 1)
            {
                return (w + (s * u) - (t * v)).Norm;
            }
        }

        return Math.Min(
            Math.Min(ToPoint(a, b, c), ToPoint(a, b, d)),
            Math.Min(ToPoint(c, d, a), ToPoint(c, d, b))
        );
    }

    private static double ToPoint(Vec3 a, Vec3 b, Vec3 p)
    {
        Vec3 u = b - a;
        double t = u.NormSquared > 0 ? Math.Clamp((p - a).Dot(u) / u.NormSquared, 0, 1) : 0;
        return p.ChordTo(a + (t * u));
    }
}
