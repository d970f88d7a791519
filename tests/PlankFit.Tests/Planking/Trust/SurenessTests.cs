using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Trust;

namespace PlankFit.Tests.Planking.Trust;

/// <summary>The covariance of what is told: C = J S J', JCGM 100:2008, 5.2.2.</summary>
public sealed class SurenessTests
{
    private static readonly TrustSpec CellsAlone = new()
    {
        ReadToMm = 1.5 * Math.Sqrt(12),
        FramesMadeWithinMm = 0,
        KeelMadeWithinMm = 0,
        Standing = new(0, 0, 0, 0),
        Bends = new(0, 0, 0, 0.2),
        StockWidthWithinMm = 0,
        StockThicknessWithinMm = 0,
    };

    /// <summary>1.5 mm in every cell, each by itself: 1.3, 3.1 and 4.0 mm of 33 planks from keel to chine, the least, the middle and the most, by an outside reckoning.</summary>
    [Fact]
    public void TheLaunchesLengthsAreAsSureAsWasFoundOutside()
    {
        Sensitivities j = Slopes.Of("survey-launch");
        var sure = Sureness.Of(CellsAlone, j);
        double[] sigma =
        [
            .. Enumerable.Range(3, 33).Select(n => sure.SigmaOf(Length(n))!.Value).Order(),
        ];
        Assert.Equal(1.3, sigma[0], 0.05);
        Assert.Equal(3.1, sigma[16], 0.05);
        Assert.Equal(4.0, sigma[^1], 0.05);
    }

    /// <summary>Of that the keel's cells alone bring 0.9, 2.0 and 2.5 mm, at the keel's end, and the chine's 0.9, 2.4 and 3.1 at the other, by the same outside reckoning.</summary>
    [Theory]
    [InlineData(NumberKind.Inboard, 0.9, 2.0, 2.5)]
    [InlineData(NumberKind.Outboard, 0.9, 2.4, 3.1)]
    public void EachEndIsOutByItsOwnEdge(NumberKind end, double least, double middle, double most)
    {
        var sure = Sureness.Of(CellsAlone, Slopes.Of("survey-launch"));
        double[] sigma =
        [
            .. Enumerable.Range(3, 33).Select(n => sure.SigmaOf(new(Plank(n), end))!.Value).Order(),
        ];
        Assert.Equal(least, sigma[0], 0.06);
        Assert.Equal(middle, sigma[16], 0.06);
        Assert.Equal(most, sigma[^1], 0.06);
    }

    /// <summary>Planks share errors: neighbours by 0.88 at the mean, planks far apart hardly.</summary>
    [Fact]
    public void NeighboursAreWrongTogether()
    {
        var sure = Sureness.Of(CellsAlone, Slopes.Of("survey-launch"));
        double next = Enumerable
                .Range(3, 32)
                .Average(n => sure.Correlation(Length(n), Length(n + 1))!.Value),
            all = Enumerable
                .Range(3, 33)
                .SelectMany(a =>
                    Enumerable
                        .Range(3, 33)
                        .Where(b => b > a)
                        .Select(b => sure.Correlation(Length(a), Length(b))!.Value)
                )
                .Average();
        Assert.Equal(0.88, next, 0.01);
        Assert.Equal(0.08, all, 0.01);
    }

    [Fact]
    public void BothEndsAreTheWhole()
    {
        var sure = Sureness.Of(TrustSpec.Default, Slopes.Of("survey-launch"));
        SureNumber inboard = new(Plank(12), NumberKind.Inboard),
            outboard = new(Plank(12), NumberKind.Outboard);
        double a = sure.SigmaOf(inboard)!.Value,
            b = sure.SigmaOf(outboard)!.Value,
            r = sure.Correlation(inboard, outboard)!.Value;
        Assert.Equal(
            sure.SigmaOf(Length(12))!.Value,
            Math.Sqrt((a * a) + (b * b) + (2 * r * a * b)),
            1e-6
        );
    }

    /// <summary>The master is laid by its marks: they are not in doubt. What is true altogether is sure altogether, and a corner piece is told nothing of.</summary>
    [Fact]
    public void WhatIsHeldIsSure()
    {
        Sensitivities j = Slopes.Of("survey-launch");
        var sure = Sureness.Of(TrustSpec.Default, j);
        Assert.Equal(0, sure.SigmaOf(new(Plank(20), NumberKind.ForwardKeelMark))!.Value, 1e-3);
        Assert.Equal(0, sure.SigmaOf(new(Plank(20), NumberKind.AfterChineMark))!.Value, 1e-3);
        Assert.Null(sure.SigmaOf(Length(1)));
        Matrix<double> nothing = Matrix<double>.Build.Dense(j.Cells.Count, j.Cells.Count);
        Assert.Equal(0, Sureness.Of(CellsAlone, j, nothing).SigmaOf(Length(12)));
    }

    /// <summary>Nothing measured: what is known of the table is what was known before, bit for bit.</summary>
    [Fact]
    public void TheTableAloneIsThePrior()
    {
        Sensitivities j = Slopes.Of("survey-launch");
        var alone = Sureness.Of(TrustSpec.Default, j);
        Matrix<double> prior = TablePrior.Of(TrustSpec.Default, j.Cells);
        Assert.Equal(prior, alone.Table);
        Assert.Equal(Sureness.Of(TrustSpec.Default, j, prior).Covariance, alone.Covariance);
    }

    private static SureNumber Length(int number) => new(Plank(number), NumberKind.Length);

    private static PlankId Plank(int number) => new(Side.Starboard, PlankId.Bottom, 1, number);
}
