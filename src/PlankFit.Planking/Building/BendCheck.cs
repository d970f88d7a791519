using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Wood;

namespace PlankFit.Planking.Building;

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
        BendJudge judge,
        IEnumerable<(Geodesic Line, double From, double To)> lines,
        Func<double, double> widthAt,
        double widestMm,
        double zeroS
    )
    {
        double most = 0,
            at = 0,
            twist = 0,
            edge = 0,
            gauss = 0,
            sum = 0;
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
                double curved = Math.Abs(p.GaussCurvature),
                    w = own ? widthAt(g.S) : widestMm,
                    flat = FlatStrain.AtEdges(curved, w);
                gauss = Math.Max(gauss, curved);
                sum = Math.Max(sum, (spec.ThicknessMm * k / 2) + flat);
                if (own)
                {
                    edge = Math.Max(edge, flat);
                }
            }

            own = false;
        }

        double strain = spec.ThicknessMm * most / 2,
            shear = spec.ThicknessMm * twist;
        (string verdict, BendWay way) = Verdict(
            judge,
            spec.ThicknessMm,
            most,
            FlatStrain.AtEdges(gauss, widestMm),
            sum
        );
        return new(
            most * StraightMm > 1 ? 1 / most : null,
            strain * 100,
            twist * 1000 * 180 / Math.PI,
            edge * 100,
            at,
            verdict
                + (shear * 100 > judge.TwistShearPercent ? ", hard twist" : "")
                + (edge * 100 > judge.EdgeStrainPercent ? ", too wide for its curvature" : "")
        )
        {
            GrainStrainPercent = sum * 100,
            MostGaussPerMm2 = gauss,
            Way = way,
        };
    }

    private static (string Verdict, BendWay Way) Verdict(
        BendJudge judge,
        double thicknessMm,
        double most,
        double edge,
        double sum
    )
    {
        BendLimit row = judge.Row(
            most > 0 ? 1 / (most * thicknessMm) : double.PositiveInfinity,
            sum
        );
        return
            row.Way == BendWay.LaminateThinner
            && judge.ColdStrain is not null
            && judge.Laminations(1 / most, edge, thicknessMm) is null
            ? ("refuse", BendWay.Refuse)
            : (row.Verdict, row.Way);
    }
}
