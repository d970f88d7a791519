using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Adjusting;
using static System.Math;

namespace PlankFit.Tests.Planking.Adjusting;

/// <summary>Least squares with what was known before, by hand and by published figures.</summary>
public sealed class AdjustmentTests
{
    /// <summary>So wide that nothing was known before.</summary>
    private const double Flat = 1e7;

    private static readonly MatrixBuilder<double> M = Matrix<double>.Build;
    private static readonly VectorBuilder<double> V = Vector<double>.Build;

    /// <summary>JCGM 100:2008, H.2: resistance, reactance and impedance from voltage, current and phase measured together.</summary>
    [Fact]
    public void ResistanceAndReactanceOfTheGuide()
    {
        double v = 4.999,
            i = 0.019661,
            phi = 1.04446;
        double[] u = [0.0032, 9.5e-6, 7.5e-4];
        double[,] r =
        {
            { 1, -0.36, 0.86 },
            { -0.36, 1, -0.65 },
            { 0.86, -0.65, 1 },
        };
        Matrix<double> s = M.Dense(3, 3, (a, b) => r[a, b] * u[a] * u[b]);
        Matrix<double> j = M.DenseOfArray(
            new double[,]
            {
                { Cos(phi) / i, -v * Cos(phi) / i / i, -v * Sin(phi) / i },
                { Sin(phi) / i, -v * Sin(phi) / i / i, v * Cos(phi) / i },
                { 1 / i, -v / i / i, 0 },
            }
        );
        Matrix<double> c = Estimate.Carried(j, s);
        Near([0.069979, 0.295717, 0.236603], c.Diagonal().Map(Sqrt), 6e-7);
        Assert.Equal(-0.591485, Estimate.Correlation(c, 0, 1), 6e-7);
        Assert.Equal(-0.490624, Estimate.Correlation(c, 0, 2), 6e-7);
        Assert.Equal(0.992797, Estimate.Correlation(c, 1, 2), 6e-7);
    }

    /// <summary>1104 (1) and 1107 (2) of one thing; where they hang together closely the likeliest lies outside both. By hand: weights 11/7 and -4/7 at 0.9.</summary>
    [Theory]
    [InlineData(0, 1104.6, 0.894427)]
    [InlineData(0.5, 1104, 1)]
    [InlineData(0.9, 1102.285714, 0.736788)]
    public void TwoReadingsThatHangTogether(double r, double value, double sigma)
    {
        Matrix<double> errors = M.DenseOfArray(
            new double[,]
            {
                { 1, 2 * r },
                { 2 * r, 4 },
            }
        );
        var made = Adjustment.Of(
            new(V.Dense(1, 1105), M.Dense(1, 1, Flat)),
            Observations.Linear(V.DenseOfArray([1104, 1107]), errors, M.Dense(2, 1, 1))
        );
        Assert.Equal(value, made.After.Values[0], 1e-6);
        Assert.Equal(sigma, made.After.Sigmas[0], 1e-6);
    }

    [Theory]
    [InlineData(0, 2.121320)]
    [InlineData(0.8, 0.948683)]
    [InlineData(1, 0)]
    public void TheDifferenceOfTwoCells(double r, double sigma)
    {
        Matrix<double> s = M.Dense(2, 2, (i, j) => 2.25 * (i == j ? 1 : r));
        Assert.Equal(
            sigma,
            Sqrt(
                Estimate.Carried(
                    M.DenseOfArray(
                        new double[,]
                        {
                            { 1, -1 },
                        }
                    ),
                    s
                )[0, 0]
            ),
            5e-7
        );
    }

    /// <summary>A net of five rises over one known height, by the normal equations by hand.</summary>
    [Fact]
    public void ANetOfRises()
    {
        // A, B, C over D = 0.
        Matrix<double> h = M.DenseOfArray(
            new double[,]
            {
                { 1, 0, 0 },
                { -1, 1, 0 },
                { 0, -1, 0 },
                { 0, -1, 1 },
                { 0, 0, -1 },
            }
        );
        Vector<double> read = V.DenseOfArray([100.5, 50.2, -150.4, 80, -230.9]);
        Matrix<double> errors = M.DenseIdentity(5);
        var made = Adjustment.Of(
            new(V.DenseOfArray([100, 150, 230]), Flat * M.DenseIdentity(3)),
            Observations.Linear(read, errors, h)
        );
        Near([100.45, 150.6, 230.75], made.After.Values, 1e-6);
        Near([-0.05, -0.05, -0.2, 0.15, 0.15], (h * made.After.Values) - read, 1e-6);
        Near([0.625, 0.5, 0.625], made.After.Covariance.Diagonal(), 1e-6);
        Near(
            [0.375, 0.375, 0.5, 0.375, 0.375],
            V.DenseOfEnumerable(SlipTest.Rows(made, errors).Select(r => r.Redundancy)),
            1e-6
        );
        // v'v, and 0.045 a degree of the two that are over.
        Assert.Equal(0.09, made.Misfit, 1e-6);
    }

    [Fact]
    public void OneReadingOfTwoUnknowns()
    {
        Matrix<double> s = M.DenseOfArray(
            new double[,]
            {
                { 4, 2 },
                { 2, 9 },
            }
        );
        var made = Adjustment.Of(
            Estimate.Around(s),
            Observations.Linear(V.Dense(1, 6), M.Dense(1, 1, 1), M.Dense(1, 2, 1))
        );
        Near([2, 11 / 3.0], made.After.Values, 1e-12);
        Assert.Equal(1 / 18.0, made.Weights[0, 0], 1e-15);
        Assert.Equal(2, made.Misfit, 1e-12);
        Near([2, 41 / 18.0], made.After.Covariance.Diagonal(), 1e-12);
        Assert.Equal(-5 / 3.0, made.After.Covariance[0, 1], 1e-12);
    }

    [Fact]
    public void PerfectReadingsAreTakenAsTheyAre()
    {
        var made = Adjustment.Of(
            Estimate.Around(4 * M.DenseIdentity(2)),
            Observations.Linear(
                V.DenseOfArray([1, 3]),
                1e-12 * M.DenseIdentity(2),
                M.DenseOfArray(
                    new double[,]
                    {
                        { 1, 0 },
                        { 1, 1 },
                    }
                )
            )
        );
        Near([1, 2], made.After.Values, 1e-9);
        Assert.True(made.After.Covariance.Enumerate().All(c => Abs(c) < 1e-9));
    }

    /// <summary>A chord between two points, which is no straight function of their places: perfect readings of three sides put the corner where it is.</summary>
    [Fact]
    public void ChordsFindTheCorner()
    {
        Vector<double> Chords(Vector<double> p) =>
            V.DenseOfArray([Hypot(100 + p[0], 40 + p[1]), Hypot(p[0] - 60, 40 + p[1])]);
        Matrix<double> Slopes(Vector<double> p)
        {
            Vector<double> c = Chords(p);
            return M.DenseOfArray(
                new double[,]
                {
                    { (100 + p[0]) / c[0], (40 + p[1]) / c[0] },
                    { (p[0] - 60) / c[1], (40 + p[1]) / c[1] },
                }
            );
        }

        Vector<double> truth = V.DenseOfArray([14, -9]);
        var made = Adjustment.Of(
            Estimate.Around(100 * M.DenseIdentity(2)),
            new(Chords(truth), 1e-10 * M.DenseIdentity(2), Chords, Slopes)
        );
        Near([14, -9], made.After.Values, 1e-6);
        Assert.InRange(made.Rounds, 2, 8);
    }

    /// <summary>The order in which readings stand changes nothing, and no reading makes anything less sure.</summary>
    [Fact]
    public void OrderChangesNothingAndNothingGetsLessSure() =>
        Gen.Select(Gen.Double[-3, 3].Array[36], Gen.Double[-9, 9].Array[6], Gen.Int[1, 5])
            .Sample(
                (a, y, turn) =>
                {
                    Matrix<double> root = M.Dense(6, 6, a),
                        s = root * root.Transpose(),
                        h = M.Dense(6, 6, (i, j) => a[((7 * i) + (11 * j) + 5) % 36]);
                    var before = Estimate.Around(s);
                    int[] order = [.. Enumerable.Range(0, 6).Select(i => (i + turn) % 6)];
                    var straight = Adjustment.Of(
                        before,
                        Observations.Linear(V.DenseOfArray(y), M.DenseIdentity(6), h)
                    );
                    var turned = Adjustment.Of(
                        before,
                        Observations.Linear(V.DenseOfArray(y), M.DenseIdentity(6), h).Only(order)
                    );
                    Assert.True(
                        (straight.After.Values - turned.After.Values).AbsoluteMaximum() < 1e-9
                    );
                    Assert.True(
                        (straight.After.Covariance - turned.After.Covariance)
                            .Enumerate()
                            .All(d => Abs(d) < 1e-9)
                    );
                    for (int i = 0; i < 6; i++)
                    {
                        Assert.True(
                            straight.After.Covariance[i, i] <= s[i, i] + 1e-9,
                            $"{straight.After.Covariance[i, i]} of {s[i, i]}"
                        );
                    }
                },
                iter: 60
            );

    private static double Hypot(double x, double y) => Sqrt((x * x) + (y * y));

    private static void Near(double[] wanted, Vector<double> got, double within)
    {
        Assert.Equal(wanted.Length, got.Count);
        for (int i = 0; i < wanted.Length; i++)
        {
            Assert.Equal(wanted[i], got[i], within);
        }
    }
}
