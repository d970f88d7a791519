using PlankFit.Geometry.Splines;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Geometry;

/// <summary>Splines against exact cases and against SciPy.</summary>
public sealed class SplineTests
{
    [Theory]
    [InlineData(8, 5.7108)]
    [InlineData(11, 2.7983)]
    [InlineData(14, 1.6558)]
    public void NotAKnotIsExactForACubicWhereNaturalEndsAreNot(int n, double naturalErrorMm)
    {
        static double Hull(double x) => 950 * (1 - Math.Pow(x / 6000, 3));
        double[] x = [.. Enumerable.Range(0, n).Select(i => 6000.0 * i / (n - 1))];
        double[] y = [.. x.Select(Hull)];
        var ours = CubicSpline.Through(x, y);
        double worst = Enumerable
            .Range(0, 2001)
            .Max(i => Math.Abs(ours.At(3.0 * i) - Hull(3.0 * i)));
        Assert.True(worst < 1e-9, $"not-a-knot is off by {worst} mm");

        // The same curve with natural ends, from SciPy, shows what is avoided.
        double[] natural = Scipy.Numbers(
            $"import numpy as np\nfrom scipy.interpolate import CubicSpline\nx=np.linspace(0,6000,{n})\nf=lambda x:950*(1-(x/6000)**3)\ns=CubicSpline(x,f(x),bc_type='natural')\nt=np.linspace(0,6000,20001)\nprint(abs(s(t)-f(t)).max())"
        );
        Assert.Equal(naturalErrorMm, natural[0], 3);
    }

    [Fact]
    public void OneWrongOrdinateBendsItsKnotBySixTimesOneLessRootThree()
    {
        double[] x = [.. Enumerable.Range(0, 41).Select(i => (double)i)];
        double[] y = new double[41];
        y[20] = 1;
        Assert.Equal(6 * (1 - Math.Sqrt(3)), CubicSpline.Through(x, y).Bend(20), 9);
    }

    [Fact]
    public void AgreesWithSciPyOnUnevenKnots()
    {
        double[] x = [0, 300, 650, 1050, 1550, 2200, 3000, 3900, 4900, 5900, 6950, 8000];
        double[] y = [655, 498, 360, 244, 145, 68, 23, 9, 12, 19, 25, 30];
        var ours = CubicSpline.Through(x, y);
        double[] at = [-50, 10, 333, 1600, 2500.5, 7777, 8040];
        double[] theirs = Scipy.Numbers(
            $"from scipy.interpolate import CubicSpline\ns=CubicSpline({Scipy.List(x)},{Scipy.List(y)})\nfor t in {Scipy.List(at)}:\n print(repr(float(s(t))),repr(float(s(t,1))),repr(float(s(t,2))))"
        );
        for (int i = 0; i < at.Length; i++)
        {
            Assert.Equal(theirs[3 * i], ours.At(at[i]), 8);
            Assert.Equal(theirs[(3 * i) + 1], ours.Slope(at[i]), 10);
            Assert.Equal(theirs[(3 * i) + 2], ours.Bend(at[i]), 12);
        }
    }

    [Fact]
    public void FewPointsTakeAParabolasSlopeAtTheEnds()
    {
        // Through three points, and through five points of one parabola, the spline is that parabola.
        static double P(double x) => 3 - (2 * x) + (0.5 * x * x);
        foreach (double[] x in new[] { new[] { 0, 1, 3.0 }, [0, 1, 2.5, 3, 5] })
        {
            var s = CubicSpline.Through(x, [.. x.Select(P)]);
            Assert.Equal(P(0.4), s.At(0.4), 12);
            Assert.Equal(P(2.7), s.At(2.7), 12);
        }
    }

    [Fact]
    public void FromSixPointsOnACubicIsMet()
    {
        static double P(double x) => 3 - (2 * x) + (0.5 * x * x) - (0.1 * x * x * x);
        double[] x = [0, 1, 2.5, 3, 5, 6.5];
        var s = CubicSpline.Through(x, [.. x.Select(P)]);
        foreach (double at in new[] { 0.3, 1.7, 4.1, 6.2 })
        {
            Assert.Equal(P(at), s.At(at), 12);
        }
    }

    [Fact]
    public void AFlatEndIsFlat()
    {
        var s = CubicSpline.Through(
            [0, 1, 2, 3, 4, 5],
            [0, 1, 3, 2, 2, 1],
            SplineEnd.Flat,
            SplineEnd.NotAKnot
        );
        Assert.Equal(0, s.Slope(0), 12);
        Assert.Equal(3, s.At(2), 12);
    }

    [Fact]
    public void KnotsThatDoNotRiseAreRefused() =>
        Assert.Throws<ArgumentException>(() => CubicSpline.Through([0, 2, 2, 3], [0, 1, 2, 3]));
}
