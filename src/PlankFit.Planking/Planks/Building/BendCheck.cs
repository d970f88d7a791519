using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>
/// How hard a plank is bent: along its own line and both seams, every 40 mm or closer. Fibre strain t k/2, twist τ, edge strain K w²/12
/// (Horikawa and Tarumi 2022, E11 = K B² (r² − 1/3)/2, as quoted in the project's notes).
/// </summary>
internal static class BendCheck
{
    private const double EveryMm = 40;

    /// <summary>A radius above this is no bend, mm.</summary>
    private const double StraightMm = 1e6;

    public static Bend Of(
        LayerRegion region,
        PlankLayerSpec spec,
        BendLimits limits,
        IEnumerable<(Geodesic Line, double From, double To)> lines,
        Func<double, double> widthAt,
        double zeroS
    )
    {
        double most = 0,
            at = 0,
            twist = 0,
            edge = 0;
        bool own = true;
        foreach ((Geodesic line, double from, double to) in lines)
        {
            int n = Math.Max(2, (int)Math.Ceiling((to - from) / EveryMm));
            for (int i = 0; i <= n; i++)
            {
                GeodesicPoint g = line.At(from + ((to - from) * i / n));
                SurfacePoint p = region.Surface.At(g.Uv.U, g.Uv.V);
                double k = Math.Abs(p.SecondForm(g.Tangent, g.Tangent));
                if (k > most)
                {
                    (most, at) = (k, g.S - (own ? zeroS : from));
                }

                twist = Math.Max(twist, Math.Abs(p.SecondForm(g.Tangent, p.Left(g.Tangent))));
                if (own)
                {
                    double w = widthAt(g.S);
                    edge = Math.Max(edge, Math.Abs(p.GaussCurvature) * w * w / 12);
                }
            }

            own = false;
        }

        double strain = spec.ThicknessMm * most / 2,
            shear = spec.ThicknessMm * twist;
        return new(
            most * StraightMm > 1 ? 1 / most : null,
            strain * 100,
            twist * 1000 * 180 / Math.PI,
            edge * 100,
            at,
            Verdict(
                limits,
                most > 0 ? 1 / (most * spec.ThicknessMm) : double.PositiveInfinity,
                edge * 100,
                shear * 100
            )
        );
    }

    private static string Verdict(
        BendLimits limits,
        double radiusOverThickness,
        double edgePercent,
        double shearPercent
    )
    {
        string bend = limits
            .Bend.First(l =>
                radiusOverThickness >= l.LeastRadiusOverThickness || l == limits.Bend[^1]
            )
            .Verdict;
        string twist = shearPercent > limits.TwistShearPercent ? ", hard twist" : "";
        string flat = edgePercent > limits.EdgeStrainPercent ? ", too wide for its curvature" : "";
        return bend + twist + flat;
    }
}
