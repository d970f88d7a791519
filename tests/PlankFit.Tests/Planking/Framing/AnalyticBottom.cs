using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Framing;

/// <summary>
/// A bottom of straight sections in closed form, x 0 to 6 m: z = keel(x) + y·slope(x), y 0 to 1 m. Its table is to the inside, so that the inner face is the
/// surface itself, and its keel's side is square to the planks.
/// </summary>
internal sealed record AnalyticBottom(
    Func<double, double> Keel,
    Func<double, double> KeelRate,
    Func<double, double> Slope,
    double SlopeRate
)
{
    public static AnalyticBottom Of(string name) =>
        name == "hypar"
            // H2: z = y (0.2 + 0.1 x), metres.
            ? new(_ => 0, _ => 0, x => 0.2 + (x / 10000), 1e-4)
            // H3: keel 0.3 (x/6)², metres, rulings at 20°.
            : new(
                x => 300 * Math.Pow(x / 6000, 2),
                x => x / 60000,
                _ => Math.Tan(20 * Math.PI / 180),
                0
            );

    /// <summary>Keel to chine along the section at x.</summary>
    public double SectionMm(double x) => 1000 * Math.Sqrt(1 + (Slope(x) * Slope(x)));

    /// <summary>The place of the section at x so far from the keel.</summary>
    public Vec3 OnSection(double x, double mm)
    {
        double y = mm / Math.Sqrt(1 + (Slope(x) * Slope(x)));
        return new(x, y, Keel(x) + (y * Slope(x)));
    }

    /// <summary>The outward normal, down and out: the gradient of keel(x) + y slope(x) − z.</summary>
    public Vec3 Normal(Vec3 p) =>
        new Vec3(KeelRate(p.X) + (p.Y * SlopeRate), Slope(p.X), -1).Unit();

    /// <summary>The foot of the normal through a point near the surface, by stepping back and forth.</summary>
    public Vec3 Foot(Vec3 p)
    {
        Vec3 foot = p;
        for (int i = 0; i < 200; i++)
        {
            Vec3 n = Normal(foot);
            double height = (foot.Z - Keel(foot.X) - (foot.Y * Slope(foot.X))) / n.Z;

            // Onto the surface, then under the point again.
            foot -= height * n;
            Vec3 miss = p - foot;
            foot += miss - (miss.Dot(n) * n);
        }

        return foot;
    }

    public Job Job(double thicknessMm, ImmutableArray<FramingSpec> behind)
    {
        double[] x = [.. Enumerable.Range(0, 13).Select(i => 500.0 * i)];
        OffsetLine Line(string name, double y) =>
            new(
                name,
                [],
                [.. x.Select(a => (double?)(Keel(a) + (y * Slope(a))))],
                [.. x.Select(_ => (double?)y)]
            );
        PlankLayerSpec Skin(string name, Heads heads) =>
            PlankLayer.Of(name, thicknessMm, 150, heads, 45, null, Hold.Width, 30, 0.5, null);
        return new(
            new PlankingJob(
                LengthUnit.Millimetre,
                new(
                    [.. x.Select((a, i) => new Station($"{i}", a))],
                    [Line("keel", 0), Line("chine", 1000)]
                ),
                new("keel", "chine", [], OffsetsAreTo.Inside, KeelSide.SquareToPlank),
                [Skin("inner", Heads.Aft), Skin("outer", Heads.Forward)],
                EndRules.Default,
                BendLimits.Default
            )
        )
        {
            Framing = behind,
        };
    }
}
