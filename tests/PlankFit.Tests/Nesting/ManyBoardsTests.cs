using System.Collections.Immutable;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>A few pieces and a great many boards: no more boards than are of use are looked at, and no plan is worse for a larger rack.</summary>
public sealed class ManyBoardsTests
{
    /// <summary>The same rack and many more boards beside it: no more wood, and a bound that no smaller rack's plan is below.</summary>
    [Fact]
    public void ALargerRackIsNoWorse()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        ImmutableArray<SawPiece> pieces = Pieces(8);
        double value = double.PositiveInfinity;
        foreach (int count in new[] { 30, Long.Runs(60, 10_000) })
        {
            NestPlan plan = Planned.Lawful(SawPieces.Spec(Rack(count)) with { Rounds = 1 }, pieces);
            Assert.Empty(plan.Unplaced);
            Assert.True(
                plan.Value <= value,
                $"{plan.Value} from {count} boards, {value} from fewer"
            );
            Assert.InRange(plan.LowerBound, 0.8 * plan.Value, plan.Value * (1 + 1e-9));
            value = plan.Value;
        }
    }

    /// <summary>Equal boards on lines of their own are one kind to the search, and keep their names.</summary>
    [Fact]
    public void EqualBoardsKeepTheirNames()
    {
        NestSpec spec = SawPieces.Spec([
            .. Enumerable
                .Range(1, 5)
                .Select(i => SawPieces.Board(FormattableString.Invariant($"B-0{i}"), 1300, 100)),
            SawPieces.Board("C-01", 1300, 100) with
            {
                Count = 3,
            },
        ]);
        ImmutableArray<SawPiece> pieces =
        [
            .. Enumerable
                .Range(1, 7)
                .Select(i =>
                    SawPieces.Rectangle(FormattableString.Invariant($"S1-0{i}"), 1000, 100)
                ),
        ];
        NestPlan plan = Planned.Lawful(spec, pieces);
        Assert.Equal(
            ["B-01", "B-02", "B-03", "B-04", "B-05", "C-01.1", "C-01.2"],
            plan.Boards.Select(b => b.Id)
        );
    }

    private static StockBoard[] Rack(int count)
    {
        var chance = new Random(11);
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(i =>
                    SawPieces.Board(
                        FormattableString.Invariant($"B-{i:00000}"),
                        1500 + (3000 * chance.NextDouble()),
                        152 + (60 * chance.NextDouble())
                    ) with
                    {
                        MarkedEndMm = 40 * chance.NextDouble(),
                    }
                ),
        ];
    }

    private static ImmutableArray<SawPiece> Pieces(int count) =>
        SawPieces.Slanting(12, count, 150, (35, 20), (400, 1000));
}
