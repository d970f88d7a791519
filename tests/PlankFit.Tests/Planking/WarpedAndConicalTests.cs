using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>Whole plans on two bottoms with closed forms: H2 (hyperbolic paraboloid, warped) and a cone (develops exactly).</summary>
public sealed class WarpedAndConicalTests
{
    /// <summary>
    /// H2: z = y (0.2 + 0.1 x), x 0 to 6 m, y 0 to 1 m. Its loft is exact (straight lines, straight sections). Each seam that goes from keel to chine is held to
    /// the geodesic equation x'' = -2 k² y x'y'/W², y'' = -2 k (0.2 + k x) x'y'/W², integrated here from the seam's own start and aimed at its end.
    /// </summary>
    [Theory]
    [InlineData(Heads.Aft)]
    [InlineData(Heads.Forward)]
    public void SeamsOfTheWarpedBottomObeyItsOwnEquation(Heads heads)
    {
        PlankLayerPlan layer = Warped(heads).PlankLayers.Single();

        // 6.7814751681071 m²,.
        Assert.Equal(6781475.168, layer.AreaMm2, 1);
        int held = 0;
        foreach (Plank plank in layer.Starboard.Where(p => p.AfterEdge.Exists))
        {
            ImmutableArray<Vec3> seam = plank.AfterEdge.Seam;
            if (seam[0].Y > 1e-6 || Math.Abs(seam[^1].Y - 1000) > 1e-6)
            {
                continue;
            }

            (double length, double x, double[] xAtY) = Traced(seam[0].X, seam[^1].X);
            Assert.Equal(x, seam[^1].X, 1e-6);
            Assert.Equal(length, plank.AfterEdge.SeamLengthMm, 0.01);
            foreach (Vec3 p in seam)
            {
                double at = p.Y / 1000 * (xAtY.Length - 1);
                int i = Math.Min((int)at, xAtY.Length - 2);
                double should = xAtY[i] + ((at - i) * (xAtY[i + 1] - xAtY[i]));
                Assert.Equal(should, p.X, 0.01);
                Assert.Equal(p.Y * (0.2 + (0.1 * p.X / 1000)), p.Z, 0.01);
            }

            held++;
        }

        Assert.True(held > 20, $"{held} seams from keel to chine");
    }

    /// <summary>The trace used above gives, by itself: x0 = 2 m at 45° forward meets the chine at x = 3118.637 mm after 1586.443 mm.</summary>
    [Fact]
    public void TheTraceGivesTheCheckValues()
    {
        (double length, double x, _) = Traced(2000, 3118.6376);
        Assert.Equal(3118.6376, x, 1e-3);
        Assert.Equal(1586.4430, length, 1e-3);
    }

    /// <summary>
    /// The keel on a cone and the chine 1.1 times as far from its apex: the bottom is a piece of the cone, and lies flat as polar coordinates about the apex,
    /// radius the distance from it, angle the one that the rulings sweep.
    /// </summary>
    [Fact]
    public void AConicalBottomLiesFlatAsItsSector()
    {
        Vec3 apex = new(2500, -8000, -2500);
        int n = 13;
        Vec3 Keel(int i)
        {
            double t = (double)i / (n - 1);
            return new(5000 * t, 25 + (60 * t), 140 - (260 * t) + (200 * t * t));
        }

        OffsetLine Line(string name, Func<int, Vec3> at) =>
            new(
                name,
                [.. Enumerable.Range(0, n).Select(i => (double?)at(i).X)],
                [.. Enumerable.Range(0, n).Select(i => (double?)at(i).Z)],
                [.. Enumerable.Range(0, n).Select(i => (double?)at(i).Y)]
            );
        Job job = new(
            new PlankingJob(
                LengthUnit.Millimetre,
                new(
                    [.. Enumerable.Range(0, n).Select(i => new Station($"{i}", Keel(i).X))],
                    [Line("keel", Keel), Line("chine", i => Keel(i) + (0.1 * (Keel(i) - apex)))]
                ),
                new("keel", "chine", [], OffsetsAreTo.Inside, KeelSide.SquareToPlank),
                [Thin(150, 60, Heads.Aft)],
                EndRules.Default,
                BendLimits.Default
            )
        );
        BottomPlan plan = WholeBottomTests.Planned(job);
        PlankLayerPlan layer = plan.PlankLayers.Single();
        (double[] us, double[] swept) = Sweep(plan.Hull.Surface, apex);
        foreach (Plank plank in layer.Starboard)
        {
            Assert.True(plank.StrainMm < 1e-3, $"{plank.Id}: {plank.StrainMm}");
            Vec2[] developed = [.. plank.Outline.Select(p => Developed(plan, us, swept, apex, p))];
            for (int i = 0; i < developed.Length; i += 7)
            {
                for (int k = i + 3; k < developed.Length; k += 11)
                {
                    Assert.Equal(
                        developed[i].ChordTo(developed[k]),
                        plank.FlatNet[i].ChordTo(plank.FlatNet[k]),
                        0.02
                    );
                }
            }
        }
    }

    private static (double[] U, double[] Swept) Sweep(LoftedSurface surface, Vec3 apex)
    {
        const int m = 40000;
        double[] us = new double[m + 1],
            swept = new double[m + 1];
        Vec3 before = default;
        for (int i = 0; i <= m; i++)
        {
            us[i] = surface.UFrom + ((surface.UTo - surface.UFrom) * i / m);
            Vec3 ruling = (surface.At(us[i], 0).P - apex).Unit();
            swept[i] = i == 0 ? 0 : swept[i - 1] + Math.Asin(before.Cross(ruling).Norm);
            before = ruling;
        }

        return (us, swept);
    }

    private static Vec2 Developed(BottomPlan plan, double[] us, double[] swept, Vec3 apex, Vec3 p)
    {
        StationOnHull near = plan.Hull.Stations.MinBy(s =>
            (plan.Hull.Surface.At(s.U, 0.5).P - p).Norm
        )!;
        Assert.True(
            ClosestPoint.TryFind(
                plan.Hull.Surface,
                p,
                new(near.U, 0.5),
                1e-9,
                out ClosestPoint.Result foot
            )
        );
        double at = Math.Clamp((foot.Uv.U - us[0]) / (us[^1] - us[0]), 0, 1) * (us.Length - 1);
        int i = Math.Min((int)at, us.Length - 2);
        double angle = swept[i] + ((at - i) * (swept[i + 1] - swept[i])),
            r = (p - apex).Norm;
        return new(r * Math.Cos(angle), r * Math.Sin(angle));
    }

    private static BottomPlan Warped(Heads heads)
    {
        double[] x = [.. Enumerable.Range(0, 7).Select(i => 1000.0 * i)];
        OffsetLine Line(string name, double y) =>
            new(
                name,
                [],
                [.. x.Select(a => (double?)(y * (0.2 + (a / 10000))))],
                [.. x.Select(_ => (double?)y)]
            );
        return WholeBottomTests.Planned(
            new(
                new PlankingJob(
                    LengthUnit.Millimetre,
                    new(
                        [.. x.Select((a, i) => new Station($"{i}", a))],
                        [Line("keel", 0), Line("chine", 1000)]
                    ),
                    new("keel", "chine", [], OffsetsAreTo.Inside, KeelSide.SquareToPlank),
                    [Thin(150, 45, heads)],
                    EndRules.Default,
                    BendLimits.Default
                )
            )
        );
    }

    private static PlankLayerSpec Thin(double width, double angle, Heads heads) =>
        PlankLayer.Of("one", 1e-6, width, heads, angle, null, Hold.Width, 30, 0.5, null);

    /// <summary>Length, x at the chine and x at equal steps of y, mm, of the geodesic of H2 from the keel at x0 that meets the chine at x1 (secant on the angle; RK4).</summary>
    private static (double Length, double X, double[] XAtY) Traced(double x0, double x1)
    {
        double a = Math.Atan2(1000, x1 - x0),
            b = a + 0.01;
        (double la, double xa, double[] pa) = Shoot(x0, a);
        for (int i = 0; i < 30 && Math.Abs(xa - x1) > 1e-8; i++)
        {
            (_, double xb, _) = Shoot(x0, b);
            double next = b - ((xb - x1) * (b - a) / (xb - xa));
            (a, xa, b) = (b, xb, next);
            if (Math.Abs(b - a) < 1e-14)
            {
                break;
            }
        }

        (la, xa, pa) = Shoot(x0, a);
        return (la, xa, pa);
    }

    /// <summary>y as the independent variable: x'' by the two equations, length alongside; metres inside.</summary>
    private static (double Length, double X, double[] XAtY) Shoot(double x0, double planAngle)
    {
        const int n = 1000;
        const double k = 0.1,
            h = 1.0 / n;
        double x = x0 / 1000,
            slope = 1 / Math.Tan(planAngle),
            length = 0;
        double[] at = new double[n + 1];
        at[0] = x0;

        // dx/dy = m; dm/dy = (x'' y' - x' y'') / y'³ = m (-2 k² y + 2 k (0.2 + k x) m) / W².
        (double M, double Rate, double Ds) F(double y, double px, double m)
        {
            double g = 0.2 + (k * px),
                w = 1 + (k * k * y * y) + (g * g);
            double dz = g + (k * y * m);
            return (
                m,
                m * ((-2 * k * k * y) + (2 * k * g * m)) / w,
                Math.Sqrt(1 + (m * m) + (dz * dz))
            );
        }

        for (int i = 0; i < n; i++)
        {
            double y = i * h;
            (double M, double Rate, double Ds) f1 = F(y, x, slope);
            (double M, double Rate, double Ds) f2 = F(
                y + (h / 2),
                x + (h / 2 * f1.M),
                slope + (h / 2 * f1.Rate)
            );
            (double M, double Rate, double Ds) f3 = F(
                y + (h / 2),
                x + (h / 2 * f2.M),
                slope + (h / 2 * f2.Rate)
            );
            (double M, double Rate, double Ds) f4 = F(y + h, x + (h * f3.M), slope + (h * f3.Rate));
            x += h / 6 * (f1.M + (2 * f2.M) + (2 * f3.M) + f4.M);
            slope += h / 6 * (f1.Rate + (2 * f2.Rate) + (2 * f3.Rate) + f4.Rate);
            length += h / 6 * (f1.Ds + (2 * f2.Ds) + (2 * f3.Ds) + f4.Ds);
            at[i + 1] = x * 1000;
        }

        return (length * 1000, x * 1000, at);
    }
}
