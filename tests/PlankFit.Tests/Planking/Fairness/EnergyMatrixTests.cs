using MathNet.Numerics.Integration;
using MathNet.Numerics.Interpolation;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Fairness;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fairness;

public class EnergyMatrixTests
{
    private static readonly double[] Uneven = [0, 310, 700, 1500, 2600, 3100, 4700, 6000];

    private static double Energy(double[] x, double[] y, int m)
    {
        Vector<double> v = Vector<double>.Build.Dense(y);
        return v * (EnergyMatrix.Of(x, m) * v);
    }

    /// <summary>Through three points h apart the natural cubic's energy is 1.5 (y0 - 2 y1 + y2)² / h³: its moment is 1.5 d / h² at the middle, nothing at the ends.</summary>
    [Theory]
    [InlineData(1, 0, 1, 0)]
    [InlineData(250, 12, -3, 40)]
    public void WoodenBattenThroughThreePoints(double h, double y0, double y1, double y2)
    {
        double d = y0 - (2 * y1) + y2;
        Assert.Equal(
            1.5 * d * d / (h * h * h),
            Energy([0, h, 2 * h], [y0, y1, y2], 2),
            1e-9 * d * d / (h * h * h)
        );
    }

    /// <summary>Against MathNet's natural cubic spline and its quadrature.</summary>
    [Fact]
    public void SecondOrderIsTheNaturalCubicsEnergyAtAnySpacing()
    {
        double[] y = [120, 190, 260, 420, 600, 640, 810, 845];
        var spline = CubicSpline.InterpolateNatural(Uneven, y);
        double energy = 0;
        for (int i = 1; i < Uneven.Length; i++)
        {
            energy += GaussLegendreRule.Integrate(
                x => Math.Pow(spline.Differentiate2(x), 2),
                Uneven[i - 1] + 1e-9,
                Uneven[i] - 1e-9,
                5
            );
        }

        Assert.Equal(1, Energy(Uneven, y, 2) / energy, 1e-9);
    }

    /// <summary>Against SciPy's natural quintic spline (third and fourth derivatives nothing at the ends), integrated by Gauss's rule span by span.</summary>
    [Fact]
    public void ThirdOrderIsSciPysNaturalQuinticsEnergyAtAnySpacing()
    {
        double[] y = [120, 190, 260, 420, 600, 640, 810, 845];
        double[] answer = Scipy.Numbers(
            $"""
            import numpy as np
            from scipy.interpolate import make_interp_spline
            x=np.array({Scipy.List(Uneven)})/1000; y=np.array({Scipy.List(y)})
            s=make_interp_spline(x,y,k=5,bc_type=([(3,0.0),(4,0.0)],[(3,0.0),(4,0.0)]))
            g,w=np.polynomial.legendre.leggauss(6)
            print(repr(float(sum(w@(s((a+b)/2+(b-a)/2*g,3)**2)*(b-a)/2 for a,b in zip(x,x[1:])))))
            """
        );
        double ours = Energy([.. Uneven.Select(v => v / 1000)], y, 3);
        Assert.Equal(1, ours / Assert.Single(answer), 1e-8);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void PolynomialsBelowTheOrderCostNothingAndTheNextPowerCostsItsDerivative(int m)
    {
        double[] x = [0, 0.1, 0.25, 0.4, 0.7, 0.8, 1];
        double below = Energy([.. x], [.. x.Select(v => 3 - (2 * Math.Pow(v, m - 1)))], m);
        Assert.Equal(0, below, 1e-6);

        // Not more than the curve x^m itself costs, (m!)², which is one of the curves through the points.
        double factorial = Enumerable.Range(1, m).Aggregate(1.0, (a, b) => a * b);
        double next = Energy(x, [.. x.Select(v => Math.Pow(v, m))], m);
        Assert.InRange(next, 1e-3, (factorial * factorial) + 1e-6);
    }

    /// <summary>Leaving out one of four points, the wooden batten through the other three foretells 3/8 y0 + 7/8 y2 - 1/4 y3.</summary>
    [Fact]
    public void LeaveOneOutOfAParabolaIsKnownExactly()
    {
        var judged = LeaveOneOut.Of([0, 1, 2, 3], [0, 1, 4, 9], 2);
        Assert.Equal(-0.25, judged.Residuals[1], 1e-12);
    }

    /// <summary>The same foretold value from SciPy's own natural spline through the three that are left.</summary>
    [Fact]
    public void LeavingOneOutIsFittingTheOthers()
    {
        double[] y = [120, 190, 260, 420, 600, 640, 810, 845];
        double[] foretold = Scipy.Numbers(
            $"""
            import numpy as np
            from scipy.interpolate import make_interp_spline
            x=np.array({Scipy.List(Uneven)})/1000; y=np.array({Scipy.List(y)})
            for k in range(1,len(x)-1):
                s=make_interp_spline(np.delete(x,k),np.delete(y,k),k=5,bc_type=([(3,0.0),(4,0.0)],[(3,0.0),(4,0.0)]))
                print(repr(float(s(x[k]))))
            """
        );
        var judged = LeaveOneOut.Of(Uneven, y, 3);
        for (int k = 1; k < y.Length - 1; k++)
        {
            Assert.Equal(foretold[k - 1], y[k] - judged.Residuals[k], 1e-6);
        }
    }

    /// <summary>Eleven equal stations, one unit out at the middle: how far its neighbours then seem out (computed once with NumPy for this project).</summary>
    [Theory]
    [InlineData(2, -0.746)]
    [InlineData(3, -0.848)]
    public void OneErrorMakesItsNeighboursLookWrong(int m, double neighbour)
    {
        double[] y = new double[11];
        y[5] = 1;
        var judged = LeaveOneOut.Of([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10], y, m);
        Assert.Equal(1, judged.Residuals[5], 1e-9);
        Assert.Equal(neighbour, judged.Residuals[4], 5e-4);
        Assert.Equal(neighbour, judged.Residuals[6], 5e-4);
    }

    [Fact]
    public void OneErrorOnAParabolaIsFoundWholeAndExplainsEverything()
    {
        double[] x = Uneven;
        for (int k = 0; k < x.Length; k++)
        {
            double[] y = [.. x.Select(v => 40 + (0.2 * v) - (1e-5 * v * v))];
            y[k] += 7.5;
            var judged = LeaveOneOut.Of(x, y, 3);
            Assert.Equal(7.5, judged.Residuals[k], 1e-6);
            Assert.Equal(1, judged.Gains[k] / judged.Energy, 1e-6);
        }
    }

    [Fact]
    public void PointsThatDoNotIncreaseOrAreTooFewAreRefused()
    {
        Assert.Throws<ArgumentException>(() => EnergyMatrix.Of([0, 1, 1, 2, 3], 3));
        Assert.Throws<ArgumentException>(() => EnergyMatrix.Of([0, double.NaN, 1, 2, 3], 3));
        Assert.Throws<ArgumentException>(() => EnergyMatrix.Of([0, 1, 2], 3));
    }
}
