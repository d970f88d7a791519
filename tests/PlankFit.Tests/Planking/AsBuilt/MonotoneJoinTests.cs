using System.Reflection;
using CsCheck;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>
/// The join of readings by its own promises, on readings by chance: through every one, past none, its slope that of its values, slope and curvature without
/// jumps, and level into what is held beyond. The class is Planking's own, so it is called by reflection.
/// </summary>
public sealed class MonotoneJoinTests
{
    private static readonly Type Join = typeof(Job).Assembly.GetType(
        "PlankFit.Planking.Hulls.MonotoneJoin",
        throwOnError: true
    )!;

    private static readonly Gen<(double Step, double Y)[]> Readings = Gen.Select(
        Gen.Double[40, 900],
        Gen.Double[-8, 8]
    ).Array[2, 9];

    [Fact]
    public void ItKeepsItsPromises() =>
        Gen.Select(Gen.Double[-6000, 3000], Readings)
            .Sample(
                (from, readings) =>
                {
                    double at = from;
                    double[] x = [.. readings.Select(r => at += r.Step)],
                        y = [.. readings.Select(r => r.Y)];
                    (Func<double, double> value, Func<double, double> slope) = Through(x, y);
                    for (int i = 0; i < x.Length; i++)
                    {
                        Assert.Equal(y[i], value(x[i]), 1e-9);
                    }

                    for (int i = 0; i + 1 < x.Length; i++)
                    {
                        double h = x[i + 1] - x[i],
                            least = Math.Min(y[i], y[i + 1]),
                            most = Math.Max(y[i], y[i + 1]);
                        for (double t = 0.05; t < 1; t += 0.1)
                        {
                            double p = x[i] + (t * h),
                                d = 1e-4 * h;
                            Assert.InRange(value(p), least - 1e-9, most + 1e-9);
                            Assert.Equal((value(p + d) - value(p - d)) / (2 * d), slope(p), 1e-6);
                        }

                        // No second derivative at either end: the slope leaves its value there with the square of the way.
                        double bend = (slope(x[i] + (1e-4 * h)) - slope(x[i] + (1e-7 * h))) / 1e-4;
                        Assert.Equal(0, bend, 0.1 * (1 + (most - least)) / h * 10);
                    }

                    Assert.Equal(0, slope(x[0] + 1e-6), 1e-6);
                    Assert.Equal(0, slope(x[^1] - 1e-6), 1e-6);
                    Assert.Equal((y[0], y[^1]), (value(x[0] - 500), value(x[^1] + 500)));
                    Assert.Equal((0, 0), (slope(x[0] - 500), slope(x[^1] + 500)));
                },
                iter: 200
            );

    private static (Func<double, double> Value, Func<double, double> Slope) Through(
        double[] x,
        double[] y
    )
    {
        object join = Join.GetMethod("Through", BindingFlags.Public | BindingFlags.Static)!
            .Invoke(null, [x, y])!;
        return (
            Join.GetMethod("At")!.CreateDelegate<Func<double, double>>(join),
            Join.GetMethod("SlopeAt")!.CreateDelegate<Func<double, double>>(join)
        );
    }
}
