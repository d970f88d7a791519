using System.Collections.Immutable;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Stock;
using PlankFit.Reading.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading.Stock;

/// <summary>The rack as the record of sawn planks leaves it, counted by hand.</summary>
public sealed class RackAfterSawingTests
{
    private static StockBoard Row(string id, int count, int line) =>
        new(
            id,
            StockKind.Board,
            new(4000, 170, 10),
            new(null, null),
            new(null, count, true),
            new(0, 0, []),
            new("stock.csv", line)
        );

    private static BoardSawnInto Into(string board, string plank, params string[] offcuts) =>
        new(
            board,
            [Named.Plank(plank)],
            [
                .. offcuts.Select(
                    (o, i) => new OffcutLeft(o, false, false, 400 + (100 * i), 170, 10, null, null)
                ),
            ]
        );

    private static ImmutableArray<StockBoard> After(
        ImmutableArray<StockBoard> rack,
        params BoardSawnInto[] sawn
    ) => RackAfterSawing.Of(NestSpec.Usual with { Boards = rack }, [.. sawn], "record").Spec.Boards;

    /// <summary>Two plans name the first board of a row alike, and so what is left of it: both pieces are there.</summary>
    [Fact]
    public void OffcutsOfTwoPlansAreBothOnTheRack()
    {
        ImmutableArray<StockBoard> rack = After(
            [Row("B", 60, 2)],
            Into("B.1", "S1-01", "B-1-1"),
            Into("B.1", "S1-02", "B-1-1")
        );
        Assert.Equal(58, rack.Single(b => b.Id == "B").Count);
        Assert.Equal(["B", "B-1-1", "B-1-1 (2)"], rack.Select(b => b.Id));
    }

    /// <summary>B.3 and B.1 are sawn: what is chalked on the others in the rack stays true, down to the last of them.</summary>
    [Fact]
    public void BoardsThatAreLeftKeepTheirNumbers()
    {
        StockBoard left = After([Row("B", 5, 2)], Into("B.3", "S1-01"), Into("B.1", "S1-02"))
            .Single();
        Assert.Equal(["B.2", "B.4", "B.5"], [left.NameOf(0), left.NameOf(1), left.NameOf(2)]);
        StockBoard last = After([left], Into("B.2", "S1-03"), Into("B.5", "S1-04")).Single();
        Assert.Equal((1, "B.4"), (last.Count, last.NameOf(0)));
        Assert.Empty(After([last], Into("B.4", "S1-05")));
        Assert.Equal("B", Row("B", 1, 2).NameOf(0));
        Assert.Equal("B.2", Row("B", 2, 2).NameOf(1));
    }

    /// <summary>What the user has put into a file of his own is not put there twice.</summary>
    [Fact]
    public void AnOffcutThatTheStockNamesIsThereOnce() =>
        Assert.Equal(
            ["B", "B-1-1"],
            After([Row("B", 60, 2), Row("B-1-1", 1, 3)], Into("B.1", "S1-01", "B-1-1"))
                .Select(b => b.Id)
        );

    /// <summary>B.5 may be a row of its own, and is no fifth board of B then.</summary>
    [Fact]
    public void ARowOfItsOwnComesBeforeOneOfARowsBoards()
    {
        ImmutableArray<StockBoard> rack = After(
            [Row("B", 3, 2), Row("B.5", 1, 3)],
            Into("B.5", "S1-01")
        );
        Assert.Equal(3, Assert.Single(rack).Count);
        Assert.Equal("B", rack[0].Id);
    }
}
