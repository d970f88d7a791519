using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Keel;

/// <summary>The mitre of keel and planking on plane bottoms, against planes intersected here in Hesse's normal form, and the formula's formula.</summary>
public sealed class KeelMitreTests
{
    [Theory]
    [InlineData(20, 0, 9, 9)]
    [InlineData(20, 6, 9, 9)]
    [InlineData(12, -4, 9, 12)]
    [InlineData(35, 10, 6, 9)]
    [InlineData(55, 15, 12, 12)]
    public void HalfWidthsAreWherePlanesMeet(
        double deadrise,
        double slope,
        double plank,
        double keel
    )
    {
        const double cloth = 1;
        foreach (OffsetsAreTo to in new[] { OffsetsAreTo.Outside, OffsetsAreTo.Inside })
        {
            Job job = PlaneBottom.Job(deadrise, slope, plank, cloth, to) with
            {
                Keel = KeelSpec.None with
                {
                    Layers =
                    [
                        PlaneBottom.KeelLayer("first layer", "inner", keel),
                        PlaneBottom.KeelLayer("second layer", "outer", keel),
                    ],
                },
            };
            BottomPlan plan = WholeBottomTests.Planned(job);
            double tb = Math.Tan(deadrise * Math.PI / 180),
                tp = Math.Tan(slope * Math.PI / 180);

            // The planes, starboard: planking through the keel's edge, outward down and out; the keel's faces level athwart.
            var table = Plane.Through(new(0, PlaneBottom.KeelHalf, 0), new Vec3(tp, tb, -1));
            double whole = (2 * plank) + cloth;
            Plane inner = table.Moved(to == OffsetsAreTo.Outside ? -whole : 0);

            // The keel's side is plumb: its inner face passes where that plumb plane meets the planking's inner face.
            double z0 = inner.HeightAt(0, PlaneBottom.KeelHalf);
            var keelInner = Plane.Through(new(0, PlaneBottom.KeelHalf, z0), new Vec3(tp, 0, -1));
            double[] t = [plank, (2 * plank) + cloth],
                up = [keel, (2 * keel) + cloth];
            for (int i = 0; i < 2; i++)
            {
                Plane planks = inner.Moved(t[i]),
                    face = keelInner.Moved(up[i]);
                double formula =
                    PlaneBottom.KeelHalf
                    + (
                        (
                            (t[i] * Math.Sqrt(1 + (tb * tb) + (tp * tp)))
                            - (up[i] * Math.Sqrt(1 + (tp * tp)))
                        ) / tb
                    );
                foreach (KeelStation row in plan.Keel!.Layers[i].Stations)
                {
                    double should = planks.HalfBreadthWith(face, row.PositionMm);
                    Assert.Equal(formula, should, 1e-9);
                    Assert.Equal(should, row.WantedHalfWidthMm, 1e-6);
                    Assert.Equal(row.WantedHalfWidthMm, row.HalfWidthMm);
                    Assert.Equal(deadrise, row.Angles.DeadriseDegrees, 1e-6);
                    Assert.Equal(slope, row.Angles.SlopeDegrees, 1e-6);
                    Assert.Equal(
                        Math.Asin(tb / Math.Sqrt(1 + (tb * tb) + (tp * tp))) * 180 / Math.PI,
                        row.Angles.PlankEndBevelDegrees,
                        1e-6
                    );
                }
            }

            Assert.Equal(plan.Keel!.Layers[0].Stations.Length, 2 * plan.Hull.Stations.Length);
        }
    }

    /// <summary>On a level keel with equal thicknesses the outer faces meet t tan(b/2) wider than the inner ones: the formula's special case.</summary>
    [Fact]
    public void OnALevelKeelOfEqualThicknessTheMitreHalvesTheAngle()
    {
        Job job = PlaneBottom.Job(21.3, 0, 9, 1, OffsetsAreTo.Inside) with
        {
            Keel = KeelSpec.None with { Layers = [PlaneBottom.KeelLayer("first", "inner", 9)] },
        };
        Assert.All(
            WholeBottomTests.Planned(job).Keel!.Layers[0].Stations,
            r =>
                Assert.Equal(
                    PlaneBottom.KeelHalf + (9 * Math.Tan(21.3 / 2 * Math.PI / 180)),
                    r.WantedHalfWidthMm,
                    1e-6
                )
        );
    }

    /// <summary>Where the cloth laps, the keel's second layer stands its thickness higher and the mitre is that much over tan b narrower; clear of the ramps.</summary>
    [Fact]
    public void ALapCountsTwiceInItsZone()
    {
        const double from = 2000,
            to = 4000;
        Job job = PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Outside);
        job = job with
        {
            Layers =
            [
                .. job.Layers.Select(l =>
                    l is ClothLayerSpec c ? c with { Lap = new(100, from, to) } : l
                ),
            ],
            Keel = KeelSpec.None with
            {
                Layers =
                [
                    PlaneBottom.KeelLayer("first layer", "inner", 9),
                    PlaneBottom.KeelLayer("second layer", "outer", 9),
                ],
            },
        };
        KeelPlan keel = WholeBottomTests.Planned(job).Keel!;
        double plain = keel.Layers[1].Stations[0].WantedHalfWidthMm;
        double less = 1 / Math.Tan(20 * Math.PI / 180);
        int inside = 0;
        foreach (KeelStation row in keel.Layers[1].Between)
        {
            if (row.PositionMm < from - 200 || row.PositionMm > to + 200)
            {
                Assert.Equal(plain, row.WantedHalfWidthMm, 0.01);
            }

            if (row.PositionMm > from + 200 && row.PositionMm < to - 200)
            {
                Assert.Equal(plain - less, row.WantedHalfWidthMm, 0.01);
                inside++;
            }
        }

        Assert.True(inside > 20);
        Assert.All(
            keel.Layers[0].Between,
            r =>
                Assert.Equal(
                    keel.Layers[0].Stations[0].WantedHalfWidthMm,
                    r.WantedHalfWidthMm,
                    1e-6
                )
        );
    }

    /// <summary>A side that leans meets each face of the planks where its plane does; square to plank ends both faces on one line.</summary>
    [Fact]
    public void PlankEndsLieOnTheSideThatIsThere()
    {
        const double deadrise = 20,
            lean = 12;
        Job job = PlaneBottom.Job(deadrise, 0, 9, 1, OffsetsAreTo.Outside) with
        {
            Keel = KeelSpec.None with
            {
                Layers =
                [
                    PlaneBottom.KeelLayer("first", "inner", 9) with
                    {
                        Side = new KeelLayerSide.Leaning(lean),
                    },
                    PlaneBottom.KeelLayer("second", "outer", 9) with
                    {
                        Side = new KeelLayerSide.SquareToPlank(),
                    },
                ],
            },
        };
        BottomPlan plan = WholeBottomTests.Planned(job);
        Assert.Empty(BottomLaws.Broken(plan));
        PlankLayerPlan[] layers = [.. plan.PlankLayers];
        Plank first = layers[0].Starboard[layers[0].Starboard.Length / 2],
            second = layers[1].Starboard[layers[1].Starboard.Length / 2];

        // f · n: side normal (0, cos lean, sin lean) against the planking's (0, sin b, -cos b).
        double bevel =
            Math.Asin(
                (Math.Cos(lean * Math.PI / 180) * Math.Sin(deadrise * Math.PI / 180))
                    - (Math.Sin(lean * Math.PI / 180) * Math.Cos(deadrise * Math.PI / 180))
            )
            * 180
            / Math.PI;
        Assert.Equal(deadrise - lean, bevel, 1e-9);
        Assert.Equal(bevel, first.Ends.Single(e => e.At == PanelEdge.Lower).BevelDegrees, 1e-4);
        Assert.Equal(0, second.Ends.Single(e => e.At == PanelEdge.Lower).BevelDegrees);
        Assert.Equal(-20 + 20, plan.Keel!.Layers[1].Stations[3].Angles.PlankEndBevelDegrees);
        Assert.Equal(deadrise, plan.Keel.Layers[1].Stations[3].Angles.BevelDegrees, 1e-6);
    }
}

/// <summary>A plane in Hesse's normal form: n · p = d.</summary>
internal readonly record struct Plane(Vec3 Normal, double Distance)
{
    public static Plane Through(Vec3 point, Vec3 along)
    {
        Vec3 n = along.Unit();
        return new(n, n.Dot(point));
    }

    public Plane Moved(double mm) => this with { Distance = Distance + mm };

    public double HeightAt(double x, double y) =>
        (Distance - (Normal.X * x) - (Normal.Y * y)) / Normal.Z;

    /// <summary>The y of the two planes' common line at x, by Cramer's rule.</summary>
    public double HalfBreadthWith(Plane other, double x)
    {
        double a = Distance - (Normal.X * x),
            b = other.Distance - (other.Normal.X * x);
        return ((a * other.Normal.Z) - (b * Normal.Z))
            / ((Normal.Y * other.Normal.Z) - (other.Normal.Y * Normal.Z));
    }
}
