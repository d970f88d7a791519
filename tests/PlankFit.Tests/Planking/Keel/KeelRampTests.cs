using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Keel;

/// <summary>
/// The end of a lap and the cap, on plane bottoms that rise aft. With d(x) the stack of keel and cloth at x the layer's outer face is
/// z = z0 + x tan p − d √(1 + tan² p), and the planks' outer face meets it at k + (t √(1 + tan² b + tan² p) − d √(1 + tan² p)) / tan b: planes met by hand.
/// </summary>
public sealed class KeelRampTests
{
    private const double Deadrise = 20,
        Slope = 6,
        Cloth = 1.2,
        From = 2000,
        To = 4000;

    private static readonly double Tb = Math.Tan(Deadrise * Math.PI / 180),
        Tp = Math.Tan(Slope * Math.PI / 180),
        Level = Math.Sqrt(1 + (Tp * Tp));

    /// <summary>Half of the ramp inside the lap, half outside: at the lap's end the second thickness is half there, and what it does to the slope is d' √(1 + tan² p).</summary>
    [Fact]
    public void TheRampLiesEvenlyAboutTheEndOfTheLap()
    {
        KeelStation[] rows =
        [
            .. WholeBottomTests
                .Planned(Job(0))
                .Keel!.Layers[1]
                .Between.Where(r => r.Side == Side.Starboard),
        ];
        double along = 0;
        for (int i = 0; i < rows.Length; i++)
        {
            KeelStation row = rows[i];
            (double second, double rate) = Second(row.PositionMm);
            double stack = 18 + Cloth + second,
                wanted =
                    PlaneBottom.KeelHalf
                    + (
                        (((18 + Cloth) * Math.Sqrt(1 + (Tb * Tb) + (Tp * Tp))) - (stack * Level))
                        / Tb
                    );
            Assert.Equal(wanted, row.WantedHalfWidthMm, 0.002);
            Assert.Equal(
                Math.Atan(Tp - (rate * Level)) * 180 / Math.PI,
                row.Angles.SlopeDegrees,
                0.00002
            );

            // Simpson between the rows, which lie close on the ramps.
            if (i > 0)
            {
                double a = rows[i - 1].PositionMm,
                    b = row.PositionMm;
                along += (b - a) / 6 * (Stretch(a) + (4 * Stretch((a + b) / 2)) + Stretch(b));
            }

            Assert.Equal(along, row.AlongMm, 0.001);
        }

        Assert.True(rows.Count(r => Math.Abs(r.PositionMm - From) < 150) >= 30);
    }

    /// <summary>Wherever the hull lies along its axis the rows run from its first station to its last, nowhere 25 mm apart, and all figures are the same.</summary>
    [Theory]
    [InlineData(1234.5)]
    [InlineData(-3000)]
    public void AHullThatBeginsElsewhereHasTheSameRows(double shift)
    {
        KeelStation[] here = [.. WholeBottomTests.Planned(Job(0)).Keel!.Layers[1].Between],
            there = [.. WholeBottomTests.Planned(Job(shift)).Keel!.Layers[1].Between];
        Assert.Equal(here.Length, there.Length);
        foreach ((KeelStation a, KeelStation b) in here.Zip(there))
        {
            Assert.Equal(a.PositionMm + shift, b.PositionMm, 1e-9);
            Assert.Equal(a.WantedHalfWidthMm, b.WantedHalfWidthMm, 1e-6);
            Assert.Equal(a.AlongMm, b.AlongMm, 1e-6);
        }

        double[] x =
        [
            .. there.Where(r => r.Side == Side.Starboard).Select(r => r.PositionMm - shift),
        ];
        Assert.Equal((0, 6000), (x[0], x[^1]));
        Assert.All(x.Zip(x.Skip(1)), p => Assert.InRange(p.Second - p.First, 0.01, 25 + 1e-6));
    }

    /// <summary>The cap lies on the whole keel and all cloth, and its edge runs on at the deadrise.</summary>
    [Fact]
    public void TheCapClosesTheWholeStack()
    {
        BottomPlan plan = WholeBottomTests.Planned(Job(0, lapped: false));
        KeelCapStation[] cap = [.. plan.Keel!.Cap];
        Assert.Equal(2 * plan.Hull.Stations.Length, cap.Length);
        double half =
            PlaneBottom.KeelHalf
            + ((18 + Cloth) * (Math.Sqrt(1 + (Tb * Tb) + (Tp * Tp)) - Level) / Tb);
        Assert.All(
            cap,
            c =>
            {
                Assert.Equal(half, c.HalfWidthMm, 1e-6);
                Assert.Equal(Deadrise, c.EdgeBevelDegrees, 1e-6);
            }
        );
    }

    /// <summary>The second thickness of the cloth at x, by the quintic that is level at both ends with no second derivative there, and how fast it changes.</summary>
    private static (double Mm, double Rate) Second(double x)
    {
        const double ramp = 300;
        double inside = Math.Min(x - From, To - x),
            t = Math.Clamp((inside / ramp) + 0.5, 0, 1);
        double rate = 30 * t * t * (1 - t) * (1 - t) / ramp * (x - From < To - x ? 1 : -1);
        return (
            Cloth * ((10 * Math.Pow(t, 3)) - (15 * Math.Pow(t, 4)) + (6 * Math.Pow(t, 5))),
            Cloth * rate
        );
    }

    private static double Stretch(double x)
    {
        double slope = Tp - (Second(x).Rate * Level);
        return Math.Sqrt(1 + (slope * slope));
    }

    private static Job Job(double shift, bool lapped = true)
    {
        Job job = PlaneBottom.Job(Deadrise, Slope, 9, Cloth, OffsetsAreTo.Inside);
        return job with
        {
            Offsets = new(
                [.. job.Offsets.Stations.Select(s => s with { PositionMm = s.PositionMm + shift })],
                job.Offsets.Lines
            ),
            Layers =
            [
                .. job.Layers.Select(l =>
                    l switch
                    {
                        ClothLayerSpec c when lapped => c with
                        {
                            Lap = new(100, From + shift, To + shift),
                        },
                        PlankLayerSpec p => p with { WidthMm = 400 },
                        _ => l,
                    }
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
    }
}
