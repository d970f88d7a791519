using System.Collections.Immutable;
using PlankFit.Nesting;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>Square crosscuts, worked by hand; what lies is held to the laws of every plan.</summary>
public sealed class SquareCutsTests
{
    /// <summary>A thousand and 150 for the lean: three to 3600 with two kerfs, 3456; interlocked they would take 3160.</summary>
    [Fact]
    public void EachPieceTakesTheRectangleRoundIt()
    {
        ImmutableArray<SawPiece> pieces =
        [
            .. Enumerable
                .Range(1, 4)
                .Select(i => SawPieces.Parallelogram($"S1-0{i}", 1000, 150, 45)),
        ];
        NestSpec spec = SawPieces.Spec(
            SawPieces.Board("B-01", 3455.9, 150),
            SawPieces.Board("B-02", 3456, 150)
        );
        SquareCutting cuts = Lawful(spec, pieces);
        Assert.Empty(cuts.LeftOut);
        Assert.Equal([2, 2], cuts.Boards.Select(b => b.Pieces.Length));
        Assert.Equal((3455.9 + 3456) * 150, cuts.Value, 1e-6);

        Assert.Equal(
            [3, 1],
            Lawful(spec with { Boards = [.. spec.Boards.Reverse()] }, pieces)
                .Boards.Select(b => b.Pieces.Length)
        );
    }

    /// <summary>1000, 900, 700, 600, 400 into 1606: 1000+600 with a kerf 1603; 900+700 1603; 400 a third. In the order asked for it would have been the same boards less well filled.</summary>
    [Fact]
    public void TheLongestFirstIntoTheFirstBoardWithRoom()
    {
        ImmutableArray<SawPiece> pieces =
        [
            .. new[] { 400, 600, 700, 900, 1000 }.Select(l =>
                SawPieces.Rectangle($"S1-{l}", l, 150)
            ),
        ];
        NestSpec spec = SawPieces.Spec(SawPieces.Board("B", 1603, 150) with { Count = 7 });
        SquareCutting cuts = Lawful(spec, pieces);
        Assert.Equal(
            ["S1-1000 S1-600", "S1-900 S1-700", "S1-400"],
            cuts.Boards.Select(b => string.Join(' ', b.Pieces.Select(p => p.Piece.Id)))
        );
        Assert.Equal(["B.1", "B.2", "B.3"], cuts.Boards.Select(b => b.Id));
    }

    /// <summary>Two lanes of 150 and a kerf are 303, and a piece may stand proud by 0.2; a third of 100 asks for 406.</summary>
    [Theory]
    [InlineData(303, "S1-03")]
    [InlineData(302.8, "S1-03")]
    [InlineData(302.7, "S1-02")]
    [InlineData(405.7, "S1-03")]
    [InlineData(406, "")]
    public void WideBoardsAreRipped(double width, string left)
    {
        ImmutableArray<SawPiece> pieces =
        [
            SawPieces.Rectangle("S1-01", 1000, 150),
            SawPieces.Rectangle("S1-02", 1000, 150),
            SawPieces.Rectangle("S1-03", 999, 100),
        ];
        // Too short for two in a lane.
        SquareCutting cuts = Lawful(SawPieces.Spec(SawPieces.Board("B", 1500, width)), pieces);
        Assert.Equal(left, string.Join(' ', cuts.LeftOut.Select(p => p.Id)));
    }

    [Fact]
    public void FaultsAndBadEndsAreLeftAlone()
    {
        ImmutableArray<SawPiece> pieces =
        [
            .. Enumerable.Range(1, 4).Select(i => SawPieces.Rectangle($"S1-0{i}", 1000, 150)),
        ];
        StockBoard board = SawPieces.Board("B", 3600, 310) with
        {
            MarkedEndMm = 50,
            OtherEndMm = 20,
            // Across the lower lane only; a split of no width parts what lies on both sides of it.
            Faults = [new(1200, 1900, 0, 100), new(2500, 2500, 200, 310)],
        };
        SquareCutting cuts = Lawful(SawPieces.Spec(board), pieces);
        Assert.Empty(cuts.LeftOut);
        Assert.Equal(
            ["50 1900", "50 1053"],
            cuts.Boards.Single()
                .Lanes.Select(l =>
                    string.Join(
                        ' ',
                        cuts.Boards.Single()
                            .Pieces.Where(p => l.PieceIds.Contains(p.Piece.Id))
                            .Select(p => Math.Round(p.Outline.Min(v => v.X)))
                    )
                )
        );
    }

    [Fact]
    public void TheYardComesAfterTheRackAndOnlyWhatServesIsTaken()
    {
        ImmutableArray<SawPiece> pieces =
        [
            SawPieces.Rectangle("S1-01", 1000, 150) with
            {
                LeastGrade = "clear",
            },
            SawPieces.Rectangle("S1-02", 1000, 150),
            SawPieces.Rectangle("S1-03", 1000, 150) with
            {
                Species = "oak",
            },
        ];
        NestSpec spec = SawPieces.Spec(
            SawPieces.Board("Y-1", 4000, 150) with
            {
                OnHand = false,
                Count = null,
                Price = 30,
                Grade = "clear",
                Species = "larch",
            },
            SawPieces.Board("Y-2", 1200, 150) with
            {
                OnHand = false,
                Count = null,
                Price = 10,
                Grade = "clear",
                Species = "larch",
            },
            SawPieces.Board("B-1", 1000, 150) with
            {
                Grade = "common",
                Species = "larch",
            }
        ) with
        {
            Grades = ["clear", "common"],
            Objective = NestObjective.Cost,
        };
        SquareCutting cuts = Lawful(spec, pieces);
        Assert.Equal(["Y-2.1", "B-1"], cuts.Boards.Select(b => b.Id));
        Assert.Equal(10, cuts.Value);
        Assert.Equal("S1-03", cuts.LeftOut.Single().Id.ToString());
    }

    /// <summary>Twelve of 1000: the board of 1200 takes one for 10, the one of 4000 three for 24.</summary>
    [Fact]
    public void OfTwoWaysToBuyTheBetterIsTold()
    {
        ImmutableArray<SawPiece> pieces =
        [
            .. Enumerable.Range(1, 12).Select(i => SawPieces.Rectangle($"S1-{i:00}", 1000, 150)),
        ];
        NestSpec spec = SawPieces.Spec(
            SawPieces.Board("Y-1", 4000, 150) with
            {
                OnHand = false,
                Count = null,
                Price = 24,
            },
            SawPieces.Board("Y-2", 1200, 150) with
            {
                OnHand = false,
                Count = null,
                Price = 10,
            }
        ) with
        {
            Objective = NestObjective.Cost,
        };
        Assert.Equal(96, Lawful(spec, pieces).Value);
        Assert.Equal(
            120,
            Lawful(
                spec with
                {
                    Boards = [spec.Boards[0] with { Price = 40 }, spec.Boards[1]],
                },
                pieces
            ).Value
        );
    }

    [Fact]
    public void InASheetWhoseGrainRunsAcrossPiecesLieAcross()
    {
        ImmutableArray<SawPiece> pieces =
        [
            .. Enumerable
                .Range(1, 5)
                .Select(i => SawPieces.Parallelogram($"S1-0{i}", 1000, 150, 60)),
        ];
        StockBoard sheet = SawPieces.Board("S", 610, 1220) with
        {
            Kind = StockKind.Sheet,
            GrainAcross = true,
        };
        SquareCutting cuts = Lawful(SawPieces.Spec(sheet), pieces);
        Assert.Single(cuts.LeftOut);
        Assert.Equal(4, cuts.Boards.Single().Lanes.Length);
    }

    private static SquareCutting Lawful(NestSpec spec, ImmutableArray<SawPiece> pieces)
    {
        SquareCutting cuts = SquareCuts.Of(spec, pieces, spec.CostOf, new(default));
        NestPlan plan = new(
            spec,
            [
                new("all", [.. pieces.Select(p => p.Id)], cuts.Value, 0, null, null, 0)
                {
                    Measure =
                        spec.Objective == NestObjective.Cost ? NestMeasure.Cost : NestMeasure.Area,
                },
            ],
            cuts.Boards,
            [.. cuts.LeftOut.Select(p => new UnplacedPiece(p, "no room"))],
            []
        );
        Assert.Empty(CutLaws.Broken(plan, pieces));
        return cuts;
    }
}
