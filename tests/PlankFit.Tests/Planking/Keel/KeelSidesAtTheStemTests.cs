using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Keel;

/// <summary>Ends of planks at every kind of keel side on a bottom that is narrow at the stem, in closed form.</summary>
public sealed class KeelSidesAtTheStemTests
{
    private const double MetMm = 0.005;
    private const double KeelThick = 10;

    /// <summary>Widths at the stem, deadrises there, thicknesses of the skin.</summary>
    public static TheoryData<double, double, double> Stems =>
        new()
        {
            { 40, 20, 3 },
            { 40, 45, 12 },
            { 60, 45, 3 },
            { 60, 30, 20 },
            { 80, 50, 20 },
            { 100, 35, 9 },
        };

    /// <summary>The plumb side of the table's keel line is the plane y = 30; what lies on it lies there where the real parallel surface meets it.</summary>
    [Theory]
    [MemberData(nameof(Stems))]
    public void ThePlumbSideOfTheKeelLineIsMet(double stem, double deadrise, double skin)
    {
        var hull = new StraightRuled(stem, deadrise);
        foreach (OffsetsAreTo to in new[] { OffsetsAreTo.Inside, OffsetsAreTo.Outside })
        {
            BottomPlan plan = WholeBottomTests.Planned(hull.Job(skin, null, to));
            Met(
                plan,
                (p, offset) =>
                {
                    (double x, double v) = hull.Foot(p, offset);
                    return Math.Max(
                        Math.Abs(p.Y - StraightRuled.KeelHalf),
                        Math.Abs(p.Z - hull.Parallel(x, v, offset).Z)
                    );
                }
            );
        }
    }

    /// <summary>A layer whose half-width goes straight from stem to transom: its plumb side is a plane, and its leaning one too, since the keel is level.</summary>
    [Theory]
    [MemberData(nameof(Stems))]
    public void PlumbAndLeaningSidesOfALayerAreMet(double stem, double deadrise, double skin)
    {
        var hull = new StraightRuled(stem, deadrise);
        foreach (double lean in new[] { 0, -6.0, 12 })
        {
            BottomPlan plan = WholeBottomTests.Planned(
                hull.Job(
                    skin,
                    Layer(
                        new KeelHalfWidth.Tapered(32, 41),
                        lean == 0 ? new KeelLayerSide.Plumb() : new KeelLayerSide.Leaning(lean)
                    )
                )
            );
            double tangent = Math.Tan(lean * Math.PI / 180);
            Met(plan, (p, _) => Math.Abs(p.Y - Half(p.X) + (tangent * (p.Z + KeelThick))));
        }
    }

    /// <summary>
    /// A side square to the planks goes through the layer's outer edge along the planks' own normals, however far the half-width is from its mitre: carried along
    /// its normal to the height of the keel's outer face every end comes to the edge.
    /// </summary>
    [Theory]
    [MemberData(nameof(Stems))]
    public void ASideSquareToThePlanksGoesThroughTheKeelsEdge(
        double stem,
        double deadrise,
        double skin
    )
    {
        var hull = new StraightRuled(stem, deadrise);
        BottomPlan plan = WholeBottomTests.Planned(
            hull.Job(
                skin,
                Layer(new KeelHalfWidth.Tapered(32, 41), new KeelLayerSide.SquareToPlank())
            )
        );
        Met(
            plan,
            (p, offset) =>
            {
                (double x, double v) = hull.Foot(p, offset);
                Vec3 n = hull.Normal(x, v),
                    edge = p + ((-KeelThick - p.Z) / n.Z * n);
                return Math.Abs(edge.Y - Half(edge.X));
            }
        );
    }

    /// <summary>The half-width that the planks want is where their real outer face comes to the height of the keel's, at every place that is told.</summary>
    [Theory]
    [MemberData(nameof(Stems))]
    public void TheMitreIsWhereTheRealFacesMeet(double stem, double deadrise, double skin)
    {
        var hull = new StraightRuled(stem, deadrise);
        BottomPlan plan = WholeBottomTests.Planned(
            hull.Job(
                skin,
                Layer(new KeelHalfWidth.Mitre(), new KeelLayerSide.Plumb()) with
                {
                    ThicknessMm = skin,
                }
            )
        );
        KeelLayerPlan layer = plan.Keel!.Layers.Single();
        Assert.True(layer.Between.Length > 300);
        Assert.All(
            layer.Between.Concat(layer.Stations),
            r =>
                Assert.Equal(
                    hull.HalfBreadth(r.PositionMm, -skin, skin),
                    r.WantedHalfWidthMm,
                    MetMm
                )
        );
        Met(plan, (p, _) => Math.Abs(p.Y - hull.HalfBreadth(p.X, -skin, skin)));
    }

    private static void Met(BottomPlan plan, KeelSideLaws.Side side)
    {
        (double off, string where) = KeelSideLaws.Worst(plan, plan.PlankLayers.Single(), side);
        Assert.True(off < MetMm, $"{where}: {off} mm off the keel's side");
    }

    private static KeelLayerSpec Layer(KeelHalfWidth width, KeelLayerSide side) =>
        new("keel", "skin", KeelThick, width, side);

    private static double Half(double x) => 32 + (9 * x / StraightRuled.Length);
}
