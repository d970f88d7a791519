using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Fairness;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fairness;

public class BattenTests
{
    private static double Energy(double[] x, IEnumerable<double> z, int m)
    {
        Vector<double> v = Vector<double>.Build.DenseOfEnumerable(z);
        return v * (EnergyMatrix.Of(x, m) * v);
    }

    private static ImmutableArray<double> Fair(double[] x, double[] y, double tolerance, int m) =>
        Batten.Fair(x, y, [.. y.Select(v => v - tolerance)], [.. y.Select(v => v + tolerance)], m);

    /// <summary>Three points h apart, the middle one out by d: the ends give all they may one way, the middle the other, 1.5 (2 d - 4 tol)² / h³; nothing is left from tol = d / 2 on.</summary>
    [Theory]
    [InlineData(10, 1)]
    [InlineData(10, 4.9)]
    [InlineData(-6, 2)]
    public void WoodenBattenOverThreePoints(double d, double tolerance)
    {
        const double h = 500;
        double left = 1.5 * Math.Pow((2 * Math.Abs(d)) - (4 * tolerance), 2) / (h * h * h);
        ImmutableArray<double> z = Fair([0, h, 2 * h], [0, d, 0], tolerance, 2);
        Assert.Equal(1, Energy([0, h, 2 * h], z, 2) / left, 1e-6);
        Assert.Equal(Math.Sign(d) * tolerance, z[0], 1e-9);
        Assert.Equal(d - (Math.Sign(d) * tolerance), z[1], 1e-9);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(8)]
    public void EnoughToleranceLeavesAStraightBatten(double tolerance)
    {
        ImmutableArray<double> z = Fair([0, 500, 1000], [0, 10, 0], tolerance, 2);
        Assert.Equal(0, z[0] - (2 * z[1]) + z[2], 1e-6);
    }

    /// <summary>
    /// Against SciPy's bounded least squares on third derivatives of its own natural quintic splines: nothing of ours but the data. The least energy is
    /// one number; the row is compared as well, for where not all bounds are loose it is the only one.
    /// </summary>
    [Theory]
    [InlineData(0.8, 1)]
    [InlineData(0.3, 2)]
    [InlineData(2.0, 3)]
    public void SciPyFindsTheSameRow(double tolerance, int seed)
    {
        Random random = new(seed);
        double[] x = [0, 300, 650, 1050, 1550, 2200, 3000, 3900, 4900, 5900, 6950, 8000];
        double[] y =
        [
            .. x.Select(v => 1000 * (1 - Math.Pow(1 - (v / 8000), 3)))
                .Select(v => v + (1.6 * (random.NextDouble() - 0.5))),
        ];
        double[] answer = Scipy.Numbers(
            $"""
            import numpy as np
            from scipy.interpolate import make_interp_spline
            from scipy.optimize import lsq_linear
            x=np.array({Scipy.List(x)})/8000; y=np.array({Scipy.List(y)}); n=len(x)
            g,w=np.polynomial.legendre.leggauss(6)
            q=np.concatenate([(a+b)/2+(b-a)/2*g for a,b in zip(x,x[1:])]); v=np.concatenate([w*(b-a)/2 for a,b in zip(x,x[1:])])
            A=np.array([make_interp_spline(x,e,k=5,bc_type=([(3,0.0),(4,0.0)],[(3,0.0),(4,0.0)]))(q,3)*np.sqrt(v) for e in np.eye(n)]).T
            t={Scipy.List([tolerance])}[0]
            r=lsq_linear(A,-A@y,bounds=(-t,t),method='bvls',tol=1e-14,max_iter=2000)
            z=y+r.x; print(repr(float(np.sum((A@z)**2)))); print(*[repr(float(c)) for c in z])
            """
        );
        ImmutableArray<double> z = Fair(x, y, tolerance, 3);
        double[] unit = [.. x.Select(v => v / 8000)];
        Assert.Equal(1, Energy(unit, z, 3) / answer[0], 1e-6);
        for (int i = 0; i < x.Length; i++)
        {
            Assert.Equal(answer[1 + i], z[i], 1e-3);
        }
    }

    [Fact]
    public void NoRowWithinTheToleranceTriedAtRandomIsFairer()
    {
        Random random = new(11);
        double[] x = [0, 1, 2.5, 3, 4.2, 6, 7, 7.5, 9];
        double[] y = [.. x.Select(v => Math.Sin(v) + (0.1 * random.NextDouble()))];
        double least = Energy(x, Fair(x, y, 0.05, 3), 3);
        for (int trial = 0; trial < 2000; trial++)
        {
            double[] other = [.. y.Select(v => v + (0.1 * (random.NextDouble() - 0.5)))];
            Assert.True(Energy(x, other, 3) >= least * (1 - 1e-9));
        }
    }

    [Fact]
    public void ValuesThatAreHeldStay()
    {
        double[] x = [0, 1, 2, 3, 4, 5];
        double[] y = [0, 1, 0, 1, 0, 1];
        ImmutableArray<double> z = Batten.Fair(
            x,
            y,
            [0, 0.5, -0.5, 0.5, -0.5, 1],
            [0, 1.5, 0.5, 1.5, 0.5, 1],
            3
        );
        Assert.Equal(0, z[0]);
        Assert.Equal(1, z[5]);
        Assert.True(Energy(x, z, 3) < Energy(x, y, 3));
    }

    [Fact]
    public void AFairRowIsNotMoved()
    {
        double[] x = [0, 1, 2.5, 3, 4.2, 6];
        double[] y = [.. x.Select(v => 5 + v - (0.3 * v * v))];
        ImmutableArray<double> z = Fair(x, y, 2, 3);
        for (int i = 0; i < x.Length; i++)
        {
            Assert.Equal(y[i], z[i], 1e-4);
        }
    }

    [Fact]
    public void AValueOutsideItsBoundsIsTheCallersMistake() =>
        Assert.Throws<ArgumentException>(() =>
            Batten.Fair([0, 1, 2, 3], [0, 0, 0, 0], [1, -1, -1, -1], [2, 1, 1, 1], 3)
        );
}
