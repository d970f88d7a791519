using CsCheck;
using PlankFit.Geometry.Splines;

namespace PlankFit.Tests.Geometry;

/// <summary>What every cubic spline does, with any ends and few points or many: it goes through its points and bends without a jump.</summary>
public sealed class SplineLawTests
{
    private static readonly Gen<SplineEnd> End = Gen.Int[0, 2].Select(i => (SplineEnd)i);

    /// <summary>Two points to nine, from 0 on.</summary>
    private static readonly Gen<(double[] X, double[] Y)> Points = Gen.Select(
            Gen.Double[1, 10],
            Gen.Double[-10, 10]
        )
        .Array[2, 9]
        .Select(steps =>
        {
            double[] x = new double[steps.Length];
            for (int i = 1; i < x.Length; i++)
            {
                x[i] = x[i - 1] + steps[i].Item1;
            }

            return (x, steps.Select(s => s.Item2).ToArray());
        });

    [Fact]
    public void ItGoesThroughEveryPointWithoutAJumpOfSlopeOrBend() =>
        Gen.Select(Points, End, End)
            .Sample(
                (points, first, last) =>
                {
                    (double[] x, double[] y) = points;
                    var spline = CubicSpline.Through(x, y, first, last);
                    Assert.Equal((x[0], x[^1]), (spline.From, spline.To));
                    for (int i = 0; i < x.Length; i++)
                    {
                        Assert.Equal(y[i], spline.At(x[i]), 1e-8);
                        if (i > 0 && i < x.Length - 1)
                        {
                            Assert.Equal(
                                spline.Slope(x[i] - 1e-9),
                                spline.Slope(x[i] + 1e-9),
                                1e-5
                            );
                            Assert.Equal(spline.Bend(x[i] - 1e-9), spline.Bend(x[i] + 1e-9), 1e-5);
                        }
                    }

                    if (first == SplineEnd.Flat)
                    {
                        Assert.Equal(0, spline.Slope(x[0]), 1e-9);
                    }

                    if (last == SplineEnd.Flat)
                    {
                        Assert.Equal(0, spline.Slope(x[^1]), 1e-8);
                    }
                },
                iter: 200
            );

    /// <summary>Two points and no end that is told to be flat make a straight line.</summary>
    [Fact]
    public void TwoPointsMakeALine()
    {
        var line = CubicSpline.Through([2, 6], [1, 9]);
        foreach (double x in new[] { -3, 2, 3.5, 6, 11 })
        {
            Assert.Equal(1 + (2 * (x - 2)), line.At(x), 1e-12);
            Assert.Equal(2, line.Slope(x), 1e-12);
            Assert.Equal(0, line.Bend(x), 1e-12);
        }
    }

    /// <summary>With its slopes as told a cubic is met by every span alone, up to the last.</summary>
    [Fact]
    public void WithSlopesToldACubicIsMet()
    {
        static double P(double x) => 3 - (2 * x) + (0.5 * x * x) - (0.1 * x * x * x);
        static double Slope(double x) => -2 + x - (0.3 * x * x);
        double[] x = [0, 1, 2.5, 7];
        var spline = CubicSpline.Through(x, [.. x.Select(P)], [.. x.Select(Slope)]);
        foreach (double at in new[] { -1, 0.4, 2, 4, 6.9, 8 })
        {
            Assert.Equal(P(at), spline.At(at), 1e-11);
            Assert.Equal(Slope(at), spline.Slope(at), 1e-11);
            Assert.Equal(1 - (0.6 * at), spline.Bend(at), 1e-11);
        }

        Assert.Throws<ArgumentException>(() => CubicSpline.Through([0, 1], [0, 1], [0]));
    }
}
