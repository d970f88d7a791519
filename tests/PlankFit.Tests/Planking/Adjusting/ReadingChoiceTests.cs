using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Adjusting;

namespace PlankFit.Tests.Planking.Adjusting;

/// <summary>The few readings that bring most, where they can be worked by hand: a Wiener path on [0, 1], read exactly, by the integral of what it is unsure by.</summary>
public sealed class ReadingChoiceTests
{
    private const int Grid = 56;

    /// <summary>Between readings a variance is a parabola, so Simpson's rule on half steps has its integral exactly.</summary>
    private static ReadingChoice Of(int count)
    {
        const int halves = 2 * Grid;
        double At(int i) => (double)(i + 1) / halves;
        Matrix<double> s = Matrix<double>.Build.Dense(
                halves,
                halves,
                (i, j) => Math.Min(At(i), At(j))
            ),
            h = Matrix<double>.Build.Dense(Grid, halves, (k, j) => j == (2 * k) + 1 ? 1 : 0),
            j = Matrix<double>.Build.DenseOfDiagonalArray([
                .. Enumerable
                    .Range(1, halves)
                    .Select(i =>
                        Math.Sqrt(
                            (
                                i == halves ? 1
                                : i % 2 == 1 ? 4
                                : 2
                            ) / (6.0 * Grid)
                        )
                    ),
            ]);
        return ReadingChoice.Of(s, j, h, Vector<double>.Build.Dense(Grid), count);
    }

    private static double[] Places(ReadingChoice choice) =>
        [.. choice.Chosen.Select(c => (c.Reading + 1.0) / Grid).Order()];

    [Fact]
    public void TheFirstIsAtThreeQuarters()
    {
        ReadingChoice one = Of(1);
        Assert.Equal(0.5, one.SumBefore, 1e-9);
        Assert.Equal([0.75], Places(one));
        Assert.Equal(1 / 8.0, one.Chosen[0].SumAfter, 1e-9);
    }

    /// <summary>Greedily the second is at 3/8 and leaves 5/64; exchanged they come to 3/7 and 6/7, which leave 1/14, in two rounds that change something and one that does not.</summary>
    [Fact]
    public void ThePairIsExchangedToSevenths()
    {
        ReadingChoice two = Of(2);
        double[] places = Places(two);
        Assert.Equal(3 / 7.0, places[0], 1e-12);
        Assert.Equal(6 / 7.0, places[1], 1e-12);
        Assert.Equal(1 / 14.0, two.Chosen[^1].SumAfter, 1e-9);
        Assert.InRange(two.Rounds, 2, 3);
    }

    /// <summary>What brings nothing is not taken, however many may be.</summary>
    [Fact]
    public void NothingIsTakenThatBringsNothing()
    {
        var choice = ReadingChoice.Of(
            Matrix<double>.Build.DenseOfDiagonalArray([1, 1]),
            Matrix<double>.Build.Dense(1, 2, (_, j) => j == 0 ? 1 : 0),
            Matrix<double>.Build.DenseIdentity(2),
            Vector<double>.Build.Dense(2, 0.01),
            2
        );
        Assert.Equal(0, Assert.Single(choice.Chosen).Reading);
        Assert.Equal(0.01 / 1.01, choice.Chosen[0].SumAfter, 1e-12);
    }
}
