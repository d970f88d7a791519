using System.Collections.Immutable;
using PlankFit.Export.Stock;
using PlankFit.Export.Structure;
using PlankFit.Export.Tables;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Structure;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.Export.Nest;

/// <summary>Lists of a plan of cutting that is reckoned by hand: two parallelograms at 45 degrees in a board of the rack, and three boards to buy.</summary>
public sealed class NestTablesTests
{
    /// <summary>1000 and the kerf of 3 by the root of 2: where the second piece begins.</summary>
    private static readonly double Pitch = 1000 + (3 * Math.Sqrt(2));

    private static readonly StockBoard Rack = SawPieces.Board("B-01", 2400, 150) with
    {
        OtherEndMm = 40,
        Species = "larch",
        Grade = "clear",
    };

    private static readonly StockBoard Long = Yard("Y-1", 1200, 22.5m),
        Short = Yard("Y-2", 700, 9.25m);

    private static readonly BottomPlan Plan = Planned();

    private static NestPlan Nest => Plan.Nest!;

    [Fact]
    public void TheCutListSaysWhereEveryPieceLies()
    {
        Table list = NestTables.Pieces(Plan, Nest);
        // The second ends at 1004.24 + 1150 = 2154.24; the usable board at 2360.
        Assert.Equal(
            [
                "B-01|S1-01|1|starboard|1|outer face towards you, inboard end to the marked end|0 mm|1150 mm|1210 mm|0|1150|1210|no|no",
                "B-01|S1-02|1|starboard|1|outer face towards you, inboard end to the far end|1004 mm|2154 mm|206 mm|1004.24|2154.24|205.76|yes|no",
                "Y-1.1|S1-03|1|starboard|1|outer face away from you, inboard end to the marked end|0 mm|1100 mm|100 mm|0|1100|100|no|yes",
            ],
            list.Rows.Take(3).Select(Row)
        );
        Assert.Equal(5, list.Rows.Length);
    }

    [Fact]
    public void BoardsAndWhatIsBoughtAreCountedAndPriced()
    {
        // Two pieces of 1000 by 150 in 2400 by 150, one of 1100 in 1200, one of 600 in 700.
        Assert.Equal(
            [
                "B-01|board|2400 × 150 × 9 mm|larch|clear|the rack|S1-01 S1-02|2400|150|83.33|",
                "Y-1.1|board|1200 × 150 × 9 mm|||to buy|S1-03|1200|150|91.67|22.5",
                "Y-1.2|board|1200 × 150 × 9 mm|||to buy|S1-04|1200|150|91.67|22.5",
                "Y-2|board|700 × 150 × 9 mm|||to buy|S1-05|700|150|85.71|9.25",
            ],
            NestTables.Boards(Plan, Nest).Rows.Select(Row)
        );
        Assert.Equal(
            [
                "2|board|1200 mm|150 mm|9 mm|||Y-1|22.5|45|1200|150|9",
                "1|board|700 mm|150 mm|9 mm|||Y-2|9.25|9.25|700|150|9",
            ],
            NestTables.ToBuy(Plan, Nest).Rows.Select(Row)
        );
        string[] words = Words(ShoppingPages.Of(Plan, Nest)[0]);
        Assert.Contains("To buy: 3 boards, 54.25 in all.", words);
        Assert.Equal(["2", "1200 mm", "150 mm", "9 mm"], After(words, "2", 4));
        Assert.Contains("45.00", words);
    }

    [Fact]
    public void TheSheetHasRunningTotals()
    {
        string[] words = Words(CutSheets.Board(Plan, Plan.Nest!.Spec, Nest.Boards[0]));
        Assert.Equal(["S1-02", "1004", "2154", "206"], After(words, "S1-02", 4, last: true));
    }

    /// <summary>Whatever the plan of cutting goes by, the bill has what is bought, with its price, and what the rack gives.</summary>
    [Fact]
    public void TheBillHasItsBoards()
    {
        StructurePlan bare = new(new(), [], [], [], []);
        Assert.Equal(
            [
                "timber|boards to buy|all planks|3|boards|3 boards|54.25|the plan of cutting, sawing waste with it; 1 piece has no board yet and is not among it",
                "timber|boards of the rack|all planks|1|boards|1 board||the plan of cutting; on hand, and not paid",
            ],
            StructureTables.Bill(Plan, bare).Rows.Select(Row)
        );
        NestPlan priced = Nest with
        {
            Boards =
            [
                Nest.Boards[0] with
                {
                    Stock = Rack with { Price = 12.5m },
                },
                Nest.Boards[3] with
                {
                    Stock = Short with { Price = null },
                },
            ],
            Unplaced = [new(SawPieces.Rectangle("S1-09", 100, 100), "no room")],
        };
        Assert.Equal(
            [
                "timber|boards to buy|all planks|1|boards|1 board||the plan of cutting, sawing waste with it; not all of them have a price; 1 piece has no board yet and is not among it",
                "timber|boards of the rack|all planks|1|boards|1 board||the plan of cutting; on hand, by their prices 12.50, and not paid",
            ],
            StructureTables.Bill(Plan with { Nest = priced }, bare).Rows.Select(Row)
        );
    }

    private static BottomPlan Planned()
    {
        LaidPiece At(string id, double length, bool faceDown) =>
            new(
                SawPieces.Rectangle(id, length, 150),
                false,
                faceDown,
                0,
                new(0, faceDown ? 150 : 0)
            );
        NestPlan nest = HandMadePlan.Plan with
        {
            Spec = SawPieces.Spec(Rack, Long, Short) with { KerfMm = 3 },
            Boards =
            [
                new(
                    "B-01",
                    Rack,
                    [],
                    [
                        new(
                            SawPieces.Parallelogram("S1-01", 1000, 150, 45),
                            false,
                            false,
                            0,
                            default
                        ),
                        // Turned end for end about its own middle it covers the same place.
                        new(
                            SawPieces.Parallelogram("S1-02", 1000, 150, 45),
                            true,
                            false,
                            0,
                            new(Pitch + 1150, 150)
                        ),
                    ]
                ),
                new("Y-1.1", Long, [], [At("S1-03", 1100, true)]),
                new("Y-1.2", Long, [], [At("S1-04", 1100, false)]),
                new("Y-2", Short, [], [At("S1-05", 600, false)]),
            ],
        };
        return PrismaticPlan.Build(new()) with { Nest = nest };
    }

    private static StockBoard Yard(string id, double length, decimal price) =>
        SawPieces.Board(id, length, 150) with
        {
            OnHand = false,
            Count = null,
            Price = price,
        };

    private static string Row(ImmutableArray<TableCell> cells) =>
        string.Join(
            '|',
            cells.Select(c =>
                c.Text ?? (c.Number is { } n ? NumberText.Trimmed(Math.Round(n, 2), 2) : "")
            )
        );

    private static string[] Words(Drawing sheet) =>
        [.. sheet.Shapes.OfType<Lettering>().Select(l => l.Text)];

    private static string[] After(string[] words, string word, int count, bool last = false)
    {
        int at = last ? Array.LastIndexOf(words, word) : Array.IndexOf(words, word);
        return words[at..(at + count)];
    }
}
