using PlankFit.Geometry.Primitives;

namespace PlankFit.Geometry.Development;

/// <summary>
/// The condition for a ruling A(p)B(q) to lie on a developable: det(A', B', B - A) = 0, the two tangents and the ruling
/// in one plane (Pottmann and Wallner, Computational Line Geometry; from memory). The three are made unit vectors.
/// </summary>
internal sealed class RulingCondition(SurfacePatch patch)
{
    /// <summary>Below this the determinant is rounding: parallel tangents or a plane, where any ruling serves.</summary>
    public const double Nought = 1e-11;

    public double At(double p, double q)
    {
        EdgePoint a = patch.OnLower(p),
            b = patch.OnUpper(q);
        Vec3 r = b.P - a.P;
        double size = a.Rate.Norm * b.Rate.Norm * r.Norm;
        return size > 0 ? a.Rate.Cross(b.Rate).Dot(r) / size : 0;
    }

    /// <summary>Angle between the ruled surface's normals at the ruling's two ends, rad.</summary>
    public double Warp(double p, double q)
    {
        EdgePoint a = patch.OnLower(p),
            b = patch.OnUpper(q);
        Vec3 r = b.P - a.P;
        Vec3 na = a.Rate.Cross(r),
            nb = b.Rate.Cross(r);
        return na.Norm > 0 && nb.Norm > 0 ? Math.Atan2(na.Cross(nb).Norm, na.Dot(nb)) : 0;
    }

    public double Length(double p, double q) => patch.OnLower(p).P.ChordTo(patch.OnUpper(q).P);

    /// <summary>dq/dp along the rulings, from the condition's own partial derivatives; null where they vanish.</summary>
    public double? Advance(double p, double q)
    {
        double h = 1e-6 * patch.URange;
        double p0 = Math.Max(patch.UFrom, p - h),
            p1 = Math.Min(patch.UTo, p + h),
            q0 = Math.Max(patch.UFrom, q - h),
            q1 = Math.Min(patch.UTo, q + h);
        double fp = (At(p1, q) - At(p0, q)) / (p1 - p0),
            fq = (At(p, q1) - At(p, q0)) / (q1 - q0);
        return Math.Abs(fq) * patch.URange > 1e-7 ? -fp / fq : null;
    }
}
