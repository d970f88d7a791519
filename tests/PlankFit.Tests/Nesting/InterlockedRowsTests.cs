using System.Collections.Immutable;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>Rows of slanting pieces whose least length is a closed form: it fits, and a millionth of a millimetre less does not.</summary>
public sealed class InterlockedRowsTests
{
    /// <summary>Parallelograms of edge 1000 at 45 degrees, 150 wide: n·1000 + (n − 1)·3/sin 45° + 150.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void ParallelogramsLieEdgeToEdge(int n)
    {
        double length = (n * 1000) + ((n - 1) * 3 / Math.Sin(Math.PI / 4)) + 150;
        ImmutableArray<SawPiece> pieces =
        [
            .. Enumerable
                .Range(1, n)
                .Select(i => SawPieces.Parallelogram($"S1-0{i}", 1000, 150, 45)),
        ];
        Assert.Equal(0, Left(length + 1e-6, 3, pieces));
        Assert.Equal(1, Left(length - 1e-6, 3, pieces));
    }

    /// <summary>Four trapezoids of 900 and 600, 150 wide, without a kerf: turned by turns 4·750 + 150 = 3150; where none may be turned 4·900 = 3600.</summary>
    [Theory]
    [InlineData(true, 3150)]
    [InlineData(false, 3600)]
    public void TrapezoidsLieTurnedByTurns(bool mayTurn, double length)
    {
        ImmutableArray<SawPiece> pieces =
        [
            .. Enumerable
                .Range(1, 4)
                .Select(i =>
                    SawPieces.Trapezoid($"S1-0{i}", 900, 600, 150) with
                    {
                        MayTurnEnd = mayTurn,
                    }
                ),
        ];
        Assert.Equal(0, Left(length + 1e-6, 0, pieces));
        Assert.Equal(1, Left(length - 1e-6, 0, pieces));
    }

    /// <summary>How many pieces one board does not take.</summary>
    private static int Left(double length, double kerf, ImmutableArray<SawPiece> pieces)
    {
        NestSpec spec = SawPieces.Spec(SawPieces.Board("B", length, 150)) with
        {
            KerfMm = kerf,
            Rounds = 20,
        };
        NestPlan plan = Planned.Lawful(spec, pieces);
        return plan.Unplaced.Length;
    }
}
