using PlankFit.Geometry.Primitives;

namespace PlankFit.Geometry.Surfaces;

/// <summary>
/// What a surface is like at one point: position (mm), the two tangents dP/du and dP/dv, the unit normal, and the second
/// fundamental form (L, M, N) = (Puu, Puv, Pvv) · Normal. A normal curvature is positive where the surface bends towards its normal.
/// Formulas: do Carmo, Differential Geometry of Curves and Surfaces, ch. 3 (from memory).
/// </summary>
public readonly record struct SurfacePoint(
    Vec3 P,
    Vec3 Du,
    Vec3 Dv,
    Vec3 Normal,
    double L,
    double M,
    double N
)
{
    public double E => Du.Dot(Du);
    public double F => Du.Dot(Dv);
    public double G => Dv.Dot(Dv);

    /// <summary>Gauss curvature, 1/mm².</summary>
    public double GaussCurvature => ((L * N) - (M * M)) / ((E * G) - (F * F));

    /// <summary>Mean curvature, 1/mm, positive where the surface bends towards its normal.</summary>
    public double MeanCurvature => ((E * N) - (2 * F * M) + (G * L)) / (2 * ((E * G) - (F * F)));

    /// <summary>
    /// The two principal curvatures, 1/mm, the greater first. By the second form in a square frame of the tangent plane: the root of H² − K would
    /// leave only half the digits where the two are nearly alike.
    /// </summary>
    public (double Greater, double Lesser) PrincipalCurvatures
    {
        get
        {
            // Unit vectors Du/|Du| and (Dv − skew Du)/|Dv − skew Du|.
            double e = E,
                skew = F / e;
            Vec3 square = Dv - (skew * Du);
            double g = square.NormSquared,
                along = L / e,
                twist = (M - (skew * L)) / Math.Sqrt(e * g),
                across = (N - (2 * skew * M) + (skew * skew * L)) / g;
            double mean = (along + across) / 2,
                half = (along - across) / 2,
                r = Math.Sqrt((half * half) + (twist * twist));
            return (mean + r, mean - r);
        }
    }

    /// <summary>The rates (du, dv) whose image is the tangential part of a vector in space.</summary>
    public Uv Rates(Vec3 d)
    {
        double e = E,
            f = F,
            g = G,
            a = Du.Dot(d),
            b = Dv.Dot(d),
            det = (e * g) - (f * f);
        return new(((g * a) - (f * b)) / det, ((e * b) - (f * a)) / det);
    }

    /// <summary>The second fundamental form on two tangent vectors; with a unit vector twice, the normal curvature, 1/mm.</summary>
    public double SecondForm(Vec3 a, Vec3 b)
    {
        Uv p = Rates(a),
            q = Rates(b);
        return (L * p.U * q.U) + (M * ((p.U * q.V) + (p.V * q.U))) + (N * p.V * q.V);
    }

    /// <summary>The unit tangent a quarter turn counter-clockwise from a unit tangent, seen from the side of the normal.</summary>
    public Vec3 Left(Vec3 tangent) => Normal.Cross(tangent);

    /// <summary>The tangential part of a vector, made a unit vector.</summary>
    public Vec3 UnitTangent(Vec3 d) => (d - (d.Dot(Normal) * Normal)).Unit();
}
