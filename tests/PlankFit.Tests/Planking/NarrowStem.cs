using CsCheck;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>
/// Hulls by chance whose bottom is narrow at the stem and whose keel line is straight in plan, on few stations: there the keel's plumb side is a plane, y = a + b x,
/// whatever the loft does between stations.
/// </summary>
internal static class NarrowStem
{
    /// <summary>A job and the plane of its keel's side.</summary>
    public sealed record Hull(Job Job, double HalfMm, double Slope)
    {
        /// <summary>Distance in plan from the keel line, mm.</summary>
        public double OffMm(double x, double y) =>
            Math.Abs(y - HalfMm - (Slope * x)) / Math.Sqrt(1 + (Slope * Slope));

        public override string ToString() => Job.Name;
    }

    public static readonly Gen<Hull> Any = CsCheck
        .Gen.Select(Plan, Rise, Skins)
        .Select((plan, rise, skins) => Build(plan, rise, skins));

    private static Gen<(
        int Stations,
        double Length,
        double Stem,
        double Keel,
        double Widens,
        double Full
    )> Plan =>
        Gen.Select(
            Gen.Int[5, 6],
            Gen.Double[2500, 9000],
            Gen.Double[40, 100],
            Gen.Double[8, 50],
            Gen.Double[-0.002, 0.01],
            Gen.Double[1.2, 2.4]
        );

    private static Gen<(double Aft, double Warp, double Rocker, bool Camber, bool Outside)> Rise =>
        Gen.Select(Gen.Double[6, 24], Gen.Double[0, 28], Gen.Double[0, 0.05], Gen.Bool, Gen.Bool);

    private static Gen<(int Count, double Thickness, double Width, double Angle, bool Aft)> Skins =>
        Gen.Select(
            Gen.Int[1, 3],
            Gen.Double[3, 20],
            Gen.Double[70, 200],
            Gen.Double[35, 70],
            Gen.Bool
        );

    public static Hull Build(
        (int Stations, double Length, double Stem, double Keel, double Widens, double Full) plan,
        (double Aft, double Warp, double Rocker, bool Camber, bool Outside) rise,
        (int Count, double Thickness, double Width, double Angle, bool Aft) skins
    )
    {
        double[] x =
        [
            .. Enumerable
                .Range(0, plan.Stations)
                .Select(i => plan.Length * Math.Pow((double)i / (plan.Stations - 1), 1.15)),
        ];
        double Part(double at) => 1 - (at / plan.Length);
        double KeelY(double at) => plan.Keel + (plan.Widens * at);
        double Wide(double at) =>
            plan.Stem + (((0.12 * plan.Length) - plan.Stem) * (1 - Math.Pow(Part(at), plan.Full)));
        double KeelZ(double at) => plan.Length * rise.Rocker * Math.Pow(Part(at), 2.5);
        double ChineZ(double at) =>
            KeelZ(at)
            + (
                Wide(at)
                * Math.Tan((rise.Aft + (rise.Warp * Math.Pow(Part(at), 1.6))) * Math.PI / 180)
            );
        OffsetLine Line(string name, Func<double, double> y, Func<double, double> z) =>
            new(name, [], [.. x.Select(a => (double?)z(a))], [.. x.Select(a => (double?)y(a))]);
        OffsetLine[] lines =
        [
            Line("keel", KeelY, KeelZ),
            Line(
                "bilge",
                a => KeelY(a) + (0.512 * Wide(a)),
                a => ((KeelZ(a) + ChineZ(a)) / 2) - (0.02 * Wide(a))
            ),
            Line("chine", a => KeelY(a) + Wide(a), ChineZ),
        ];
        IEnumerable<LayerSpec> stack = Enumerable
            .Range(0, skins.Count)
            .Select(i =>
                (LayerSpec)
                    PlankLayer.Of(
                        $"skin {i + 1}",
                        skins.Thickness,
                        Math.Min(skins.Width, 0.03 * plan.Length),
                        (i % 2 == 0) == skins.Aft ? Heads.Aft : Heads.Forward,
                        skins.Angle,
                        null,
                        Hold.Width,
                        7.5,
                        0.5,
                        null
                    )
            );
        var planking = new PlankingJob(
            LengthUnit.Millimetre,
            new(
                [.. x.Select((a, i) => new Station($"{i}", a))],
                [.. lines.Where(l => rise.Camber || l.Name != "bilge")]
            ),
            new(
                "keel",
                "chine",
                rise.Camber ? ["bilge"] : [],
                rise.Outside ? OffsetsAreTo.Outside : OffsetsAreTo.Inside,
                KeelSide.Plumb
            ),
            [.. stack],
            EndRules.Default,
            BendLimits.Default
        );
        var job = new Job(planking);
        return new(job, plan.Keel, plan.Widens);
    }
}
