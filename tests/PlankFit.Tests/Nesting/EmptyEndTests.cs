using PlankFit.Draughting.Dxf;
using PlankFit.Export.Stock;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Export;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>The end of a sheet that all lanes leave empty, worked by hand: kerf 3.</summary>
public sealed class EmptyEndTests
{
    /// <summary>Lanes of 137 in a sheet of so many mm across; each has one piece.</summary>
    private static (NestSpec Spec, BoardCutList Cuts) Sheet(
        double length,
        double width,
        params double[] pieces
    )
    {
        StockBoard stock = SawPieces.Board("P-01", length, width) with { Kind = StockKind.Sheet };
        NestSpec spec = SawPieces.Spec(stock);
        SawnBoard board = new(
            "P-01",
            stock,
            [
                .. pieces.Select(
                    (_, i) => new SawnLane(140 * i, (140 * i) + 137, [Named.Piece($"S1-0{i + 1}")])
                ),
            ],
            [
                .. pieces.Select(
                    (p, i) =>
                        new LaidPiece(
                            SawPieces.Rectangle($"S1-0{i + 1}", p, 137),
                            false,
                            false,
                            0,
                            new(0, 140 * i)
                        )
                ),
            ]
        );
        BoardCutList list = BoardCuts.Of(board, spec);
        Assert.Empty(SawLaws.Broken(spec, list));
        Assert.Empty(OffcutLaws.Broken(spec, board));
        Assert.Empty(PlankFit.Tests.Planking.Stock.BoardCutsLaws.Broken(spec, list));
        return (spec, list);
    }

    /// <summary>
    /// Five lanes of 137 a kerf apart take 697 of 697: of 2440 they leave 2440 - 2117 - 3 = 320, which one cut first leaves as 320 by 697 instead of five strips
    /// of 320 by 137; and it is the end of all five pieces.
    /// </summary>
    [Fact]
    public void OneCutFirstLeavesTheEmptyEndInOnePiece()
    {
        (NestSpec spec, BoardCutList list) = Sheet(2440, 697, 2117, 2117, 2117, 2117, 2117);
        SawCut first = list.Cuts[0];
        Assert.Equal(
            (1, CutKind.EndOff, new Vec2(2117, 0), new Vec2(2117, 697), 3),
            (first.Number, first.Kind, first.From, first.To, first.KerfMm)
        );
        Assert.Equal(
            ["S1-01", "S1-02", "S1-03", "S1-04", "S1-05"],
            first.Ends.Select(id => id.ToString())
        );
        // Four rips part five lanes, none of them beyond the cut, and nothing else is to be sawn.
        Assert.Equal(5, list.Cuts.Length);
        Assert.All(
            list.Cuts.Skip(1),
            c => Assert.Equal((CutKind.Rip, 0, 2117), (c.Kind, c.From.X, c.To.X))
        );
        Offcut kept = Assert.Single(Offcuts.Of(spec, list));
        Assert.Equal((320, 697), (kept.LengthMm, kept.WidthMm));
        Assert.Equal("cut across the whole board", BoardCutWords.Kind(list, first));
        Assert.Equal("end of S1-01, S1-02, S1-03, S1-04, S1-05", BoardCutWords.Pieces(first));
        Assert.Equal(1, list.Settings);
    }

    /// <summary>2440 less 2138 less 3 is 299, a millimetre less than is kept: as without an empty end. With 2137 it is 300.</summary>
    [Theory]
    [InlineData(2138, false)]
    [InlineData(2137, true)]
    public void AnEndTooShortToKeepIsNotSawnOff(double piece, bool sawnOff)
    {
        (_, BoardCutList list) = Sheet(2440, 277, piece, piece);
        Assert.Equal(sawnOff, list.Cuts[0].Kind == CutKind.EndOff);
        Assert.Equal(sawnOff ? piece : 2440, list.Cuts.Single(c => c.Kind == CutKind.Rip).To.X);
    }

    /// <summary>
    /// Two lanes take 277 of 1220: beside them lie 1220 - 277 - 3 = 940 over the whole length, 2440 by 940, more than any cut across the whole board would leave.
    /// They come off first, and then the lanes' end, 437 by 277, in one piece.
    /// </summary>
    [Fact]
    public void WhatLiesBesideTheLanesStaysAsLongAsTheSheet()
    {
        (NestSpec spec, BoardCutList list) = Sheet(2440, 1220, 2000, 1800);
        Assert.Equal(
            [
                (CutKind.Rip, new Vec2(0, 277), new Vec2(2440, 277)),
                (CutKind.EndOff, new Vec2(2000, 0), new Vec2(2000, 277)),
                (CutKind.Rip, new Vec2(0, 137), new Vec2(2000, 137)),
                (CutKind.Crosscut, new Vec2(1800, 140), new Vec2(1800, 277)),
            ],
            list.Cuts.Select(c => (c.Kind, c.From, c.To))
        );
        Assert.Equal(
            [(2440, 940), (437, 277)],
            Offcuts.Of(spec, list).Select(o => (o.LengthMm, o.WidthMm))
        );
        Assert.Equal("cut across all lanes", BoardCutWords.Kind(list, list.Cuts[1]));
    }

    /// <summary>Six of eight lanes' width: a cut across the whole board at 500 leaves 1937 by 1220, a rip first 2440 by 380; the first is the larger.</summary>
    [Fact]
    public void TheLargerSingleOffcutDecides()
    {
        (NestSpec spec, BoardCutList list) = Sheet(2440, 1220, 500, 500, 500, 500, 500, 500);
        Assert.Equal(
            (CutKind.EndOff, new Vec2(500, 0), new Vec2(500, 1220)),
            (list.Cuts[0].Kind, list.Cuts[0].From, list.Cuts[0].To)
        );
        Assert.Equal(
            [(1937, 1220), (500, 380)],
            Offcuts.Of(spec, list).Select(o => (o.LengthMm, o.WidthMm))
        );
    }

    /// <summary>An end that leans by 45 degrees reaches to the cut with one corner only: it is sawn after the rips, as far as its lane goes.</summary>
    [Fact]
    public void ALeaningEndIsSawnAfterIt()
    {
        StockBoard stock = SawPieces.Board("P-01", 2440, 277) with { Kind = StockKind.Sheet };
        NestSpec spec = SawPieces.Spec(stock);
        SawnBoard board = new(
            "P-01",
            stock,
            [new(0, 137, [Named.Piece("S1-01")]), new(140, 277, [Named.Piece("S1-02")])],
            [
                new(SawPieces.Parallelogram("S1-01", 1000, 137, 45), false, false, 0, default),
                new(SawPieces.Rectangle("S1-02", 1137, 137), false, false, 0, new(0, 140)),
            ]
        );
        BoardCutList list = BoardCuts.Of(board, spec);
        Assert.Empty(SawLaws.Broken(spec, list));
        Assert.Empty(OffcutLaws.Broken(spec, board));
        Assert.Equal((CutKind.EndOff, 1137), (list.Cuts[0].Kind, list.Cuts[0].From.X));
        Assert.Equal([Named.Piece("S1-02")], list.Cuts[0].Ends);
        Assert.Single(list.Cuts, c => c.EndOf == Named.Piece("S1-01"));
        // 2440 less 1137 less the kerf, whole: the leaning kerf in the lane takes nothing of it.
        Offcut kept = Offcuts.Of(spec, list)[0];
        Assert.Equal((1300, 277), (kept.LengthMm, kept.WidthMm));
    }

    /// <summary>
    /// Two lanes go on to 1800, two end at 1200, and all four take 557 of 1000: 2440 by 440 comes off beside them and the end of all, 637 by 557. What is left of
    /// the last two, 1800 - 1200 - 3 = 597, comes off across both when a rip has parted them from the others: 597 by 277 and not two of 597 by 137.
    /// </summary>
    [Fact]
    public void LanesThatEndTogetherLeaveTheirEndInOnePiece()
    {
        (NestSpec spec, BoardCutList list) = Sheet(2440, 1000, 1800, 1800, 1200, 1200);
        Assert.Equal(
            [
                (CutKind.Rip, new Vec2(0, 557), new Vec2(2440, 557)),
                (CutKind.EndOff, new Vec2(1800, 0), new Vec2(1800, 557)),
                (CutKind.Rip, new Vec2(0, 137), new Vec2(1800, 137)),
                (CutKind.Rip, new Vec2(0, 277), new Vec2(1800, 277)),
                (CutKind.EndOff, new Vec2(1200, 280), new Vec2(1200, 557)),
                (CutKind.Rip, new Vec2(0, 417), new Vec2(1200, 417)),
            ],
            list.Cuts.Select(c => (c.Kind, c.From, c.To))
        );
        Assert.Equal(
            [(2440, 440), (637, 557), (597, 277)],
            Offcuts.Of(spec, list).Select(o => (o.LengthMm, o.WidthMm))
        );
        Assert.Equal([1800, 1800, 1200, 1200], list.LaneEndsMm);
        Assert.Equal("cut across lanes 3 and 4", BoardCutWords.Kind(list, list.Cuts[4]));
        Assert.Equal("end of S1-03, S1-04", BoardCutWords.Pieces(list.Cuts[4]));
        Assert.Empty(EmptyBoardLaws.Broken(spec, list));
    }

    /// <summary>A lane that is kept long beside two that are not: its rip goes the whole way, for 1937 by 137 is more than 437 by 417; the others end in one piece.</summary>
    [Fact]
    public void ALongPieceIsRippedFreeAndTheOthersEndInOne()
    {
        (NestSpec spec, BoardCutList list) = Sheet(2440, 417, 500, 2000, 2000);
        Assert.Equal(
            [
                (CutKind.Rip, new Vec2(0, 137), new Vec2(2440, 137)),
                (CutKind.EndOff, new Vec2(2000, 140), new Vec2(2000, 417)),
                (CutKind.Rip, new Vec2(0, 277), new Vec2(2000, 277)),
                (CutKind.Crosscut, new Vec2(500, 0), new Vec2(500, 137)),
            ],
            list.Cuts.Select(c => (c.Kind, c.From, c.To))
        );
        Assert.Equal(
            [(1937, 137), (437, 277)],
            Offcuts.Of(spec, list).Select(o => (o.LengthMm, o.WidthMm))
        );
        Assert.Empty(EmptyBoardLaws.Broken(spec, list));
    }

    /// <summary>The cut first is in the board's full-size drawing as well, to the hundredth of a millimetre where the saw goes.</summary>
    [Fact]
    public void TheLineOfTheCutIsInTheBoardsDxf()
    {
        (NestSpec spec, BoardCutList list) = Sheet(2440, 1000, 1800, 1800, 1200, 1200);
        NestPlan nest = HandMadePlan.Plan with { Spec = spec, Boards = [list.Board] };
        BottomPlan plan = PrismaticPlan.Build(new()) with { Nest = nest };
        foreach (
            (DxfVersion version, DxfUnit units, double unitMm) in new[]
            {
                (DxfVersion.R2000, DxfUnit.Millimetre, 1),
                (DxfVersion.R12, DxfUnit.Inch, 25.4),
            }
        )
        {
            using var file = new MemoryStream();
            DxfWriter.Write(
                file,
                BoardPattern.Of(plan, plan.Nest!.Spec, list.Board),
                new(version, units)
            );
            DxfReading read = new(file.ToArray());
            read.HoldToTheRules();
            (double, double)[][] lines =
            [
                .. read.Lines()
                    .Where(l => !l.Closed && l.Points.Count == 2)
                    .Select(l =>
                        l.Points.Select(p =>
                                (Math.Round(p.X * unitMm, 2), Math.Round(p.Y * unitMm, 2))
                            )
                            .Order()
                            .ToArray()
                    ),
            ];
            Assert.Single(lines, l => l is [(1800, 0), (1800, 557)]);
            Assert.Single(lines, l => l is [(1200, 280), (1200, 557)]);
        }
    }
}
