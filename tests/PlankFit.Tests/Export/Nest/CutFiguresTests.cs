using System.Collections.Immutable;
using PlankFit.Export.Stock;
using PlankFit.Export.Tables;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.Export.Nest;

/// <summary>Figures of a cut sheet and of the list of cuts as worked by hand.</summary>
public sealed class CutFiguresTests
{
    /// <summary>Two parallelograms at 45 degrees with a kerf of 3: 1000 and 1150, and the second 1000 and 3 times the root of 2 further on.</summary>
    [Fact]
    public void FiguresAreThoseWorkedByHand()
    {
        double pitch = 1000 + (3 * Math.Sqrt(2));
        StockBoard board = SawPieces.Board("B-01", 2400, 150);
        ImmutableArray<LaidPiece> pieces =
        [
            new(SawPieces.Parallelogram("S1-01", 1000, 150, 45), false, false, 0, new(0, 0)),
            new(SawPieces.Parallelogram("S1-02", 1000, 150, 45), false, false, 0, new(pitch, 0)),
        ];
        NestPlan nest = HandMadePlan.Plan with
        {
            Spec = SawPieces.Spec(board),
            Boards = [new("B-01", board, [], pieces)],
        };
        Assert.Equal(
            [
                "1|across, kerf right|S1-01 | S1-02|1000|1150|45° to the right",
                "2|across, kerf right|end of S1-02|2004|2154|45° to the right",
                "3|across, kerf left|begin S1-01|0|150|45° to the right",
            ],
            Rows(nest, LengthUnit.Millimetre)
        );
        // The list of cuts has the same as numbers: along and up at both ends, degrees from square.
        Table list = NestTables.Cuts(PrismaticPlan.Build(new()) with { Nest = nest }, nest);
        Assert.Equal(
            [
                [1000, 0, 1150, 150, 45],
                [Math.Round(pitch + 1000, 6), 0, Math.Round(pitch + 1150, 6), 150, 45],
                [0, 0, 150, 150, 45],
            ],
            list.Rows.Select(r =>
                r.Skip(8).Take(5).Select(c => Math.Round(c.Number!.Value, 6)).ToArray()
            )
        );
        // To 1/32 in: 1000 mm are 39 3/8 in; 1150 are 45 9/32; 2004.24 are 78 29/32; 2154.24 are 84 13/16; 150 are 5 29/32.
        Assert.Equal(
            [
                "1|across, kerf right|S1-01 | S1-02|3'-3 3/8\"|3'-9 9/32\"|45° to the right",
                "2|across, kerf right|end of S1-02|6'-6 29/32\"|7'-0 13/16\"|45° to the right",
                "3|across, kerf left|begin S1-01|0\"|5 29/32\"|45° to the right",
            ],
            Rows(nest, LengthUnit.FeetInchesEighths)
        );
    }

    /// <summary>
    /// Two lanes of 150 and a kerf of 3 in a board of 320: rips at 150 and at 303, both lanes below their kerf, and between them the empty end comes off. In the second lane a rectangle whose corner is taken
    /// off by 40: that corner is 40 up from the edge that the lane has when it lies on the bench, though 193 from the board's.
    /// </summary>
    [Fact]
    public void AFreeLaneIsMeasuredFromItsOwnEdge()
    {
        StockBoard board = SawPieces.Board("B-01", 2400, 320);
        NestPlan nest = HandMadePlan.Plan with
        {
            Spec = SawPieces.Spec(board),
            Boards =
            [
                new(
                    "B-01",
                    board,
                    [new(0, 150, [Named.Piece("S1-01")]), new(153, 303, [Named.Piece("S1-02")])],
                    [
                        new(SawPieces.Rectangle("S1-01", 2400, 150), false, false, 0, new(0, 0)),
                        new(
                            SawPieces.Of(
                                "S1-02",
                                new(40, 0),
                                new(2000, 0),
                                new(2000, 150),
                                new(0, 150),
                                new(0, 40)
                            ),
                            false,
                            false,
                            0,
                            new(0, 153)
                        ),
                    ]
                ),
            ],
        };
        Assert.Equal(
            [
                "1|rip, whole length|kerf above|150 up",
                "2|cut across lane 2|end of S1-02|2000|2000|square",
                "3|rip, whole length|kerf above|303 up",
                "4|across, kerf left|begin S1-02|40|0, 40 up|45° to the left",
            ],
            Rows(nest, LengthUnit.Millimetre, 4)
        );
        Table list = NestTables.Cuts(PrismaticPlan.Build(new()) with { Nest = nest }, nest);
        Assert.Equal(
            [
                [40d, 0, 0, 40, -45],
            ],
            list.Rows.Where(r => r[1].Number == 4)
                .Select(r => r.Skip(8).Take(5).Select(c => Math.Round(c.Number!.Value, 6)))
        );
    }

    private static IEnumerable<string> Rows(NestPlan nest, LengthUnit unit, int count = 3)
    {
        BottomPlan plan = PrismaticPlan.Build(new()) with { Nest = nest };
        plan = plan with { Job = plan.Job with { Units = unit } };
        Lettering[] words =
        [
            .. CutSheets.Board(plan, plan.Nest!.Spec, nest.Boards[0]).Shapes.OfType<Lettering>(),
        ];
        Lettering head = words.Single(w => w.Text == "makes"),
            last = words.Single(w => w.Text == "leans");
        return words
            .Where(w => w.At.Y < head.At.Y && w.LeftEnd().X < last.At.X && w.Text.Length > 0)
            .GroupBy(w => Math.Round(w.At.Y, 3))
            .OrderByDescending(g => g.Key)
            .Take(count)
            .Select(g => string.Join('|', g.OrderBy(w => w.LeftEnd().X).Select(w => w.Text)));
    }
}
