using PlankFit.Draughting.Dxf;
using PlankFit.Export.Stock;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Export;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>The near end of a board that lanes leave empty because a fault is in their way, worked by hand: kerf 3.</summary>
public sealed class NearEndTests
{
    /// <summary>Lanes of 137, a kerf apart; each has one piece, from and to so far along a board with such faults.</summary>
    private static (NestSpec Spec, BoardCutList Cuts) Board(
        double length,
        BoardFault[] faults,
        params (double From, double To)[] pieces
    )
    {
        StockBoard stock = SawPieces.Board("B-01", length, (140 * pieces.Length) - 3) with
        {
            Faults = [.. faults],
        };
        NestSpec spec = SawPieces.Spec(stock);
        SawnBoard board = new(
            "B-01",
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
                            SawPieces.Rectangle($"S1-0{i + 1}", p.To - p.From, 137),
                            false,
                            false,
                            0,
                            new(p.From, 140 * i)
                        )
                ),
            ]
        );
        BoardCutList list = BoardCuts.Of(board, spec);
        Assert.Empty(SawLaws.Broken(spec, list));
        Assert.Empty(OffcutLaws.Broken(spec, board));
        Assert.Empty(PlankFit.Tests.Planking.Stock.BoardCutsLaws.Broken(spec, list));
        Assert.Empty(EmptyBoardLaws.Broken(spec, list));
        Assert.Empty(EmptyBoardLaws.Smaller(spec, list));
        return (spec, list);
    }

    private static BoardFault Across(double from, double to) => new(from, to, null, null);

    /// <summary>
    /// A shake across the board at 1000 to 1050, and two pieces of 1500 behind it: the 1000 by 277 before it stay in one piece, and the rip between the two begins
    /// where they begin. Beyond them 3000 - 2550 - 3 = 447 by 277.
    /// </summary>
    [Fact]
    public void WhatIsEmptyBeforeAFaultComesOffInOnePiece()
    {
        (NestSpec spec, BoardCutList list) = Board(
            3000,
            [Across(1000, 1050)],
            (1050, 2550),
            (1050, 2550)
        );
        Assert.Equal(
            [
                (CutKind.EndOff, new Vec2(1050, 0), new Vec2(1050, 277), -3),
                (CutKind.EndOff, new Vec2(2550, 0), new Vec2(2550, 277), 3),
                (CutKind.Rip, new Vec2(1050, 137), new Vec2(2550, 137), 3),
            ],
            list.Cuts.Select(c => (c.Kind, c.From, c.To, c.KerfMm))
        );
        Assert.Equal(
            [(1000, 277, 0), (447, 277, 2553)],
            Offcuts.Of(spec, list).Select(o => (o.LengthMm, o.WidthMm, o.FromMm))
        );
        Assert.Equal([1050, 1050], list.LaneBeginsMm);
        Assert.Equal([2550, 2550], list.LaneEndsMm);
        Assert.Equal("cut across the whole board", BoardCutWords.Kind(list, list.Cuts[0]));
        Assert.Equal("begin S1-01, S1-02", BoardCutWords.Pieces(list.Cuts[0]));
        Assert.Equal("kerf to the left", BoardCutWords.KerfSide(list.Cuts[0]));
        Assert.Equal("kerf to the right", BoardCutWords.KerfSide(list.Cuts[1]));
        Assert.Equal(1, list.Settings);
    }

    /// <summary>A saw that takes nothing saws off the near end all the same, and says on which side it lies.</summary>
    [Fact]
    public void ASawWithoutAKerfSawsItOffToo()
    {
        (NestSpec spec, BoardCutList list) = Board(
            3000,
            [Across(1000, 1050)],
            (1050, 2550),
            (1050, 2550)
        );
        spec = spec with { KerfMm = 0 };
        BoardCutList sawn = BoardCuts.Of(list.Board, spec);
        Assert.Equal([true, false], sawn.Cuts.Take(2).Select(c => c.IsNearEnd));
        Assert.Equal("kerf to the left", BoardCutWords.KerfSide(sawn.Cuts[0]));
        Assert.Empty(OffcutLaws.Broken(spec, list.Board));
    }

    /// <summary>299 before the shake is less than is kept, and then the rip goes through it; 300 is not.</summary>
    [Theory]
    [InlineData(299, false)]
    [InlineData(300, true)]
    public void ANearEndTooShortToKeepIsNotSawnOff(double clear, bool sawnOff)
    {
        (_, BoardCutList list) = Board(2100, [Across(clear, 400)], (400, 2000), (400, 2000));
        Assert.Equal(sawnOff, list.Cuts[0].IsNearEnd);
        Assert.Equal(sawnOff ? 400 : 0, list.Cuts.Single(c => c.Kind == CutKind.Rip).From.X);
    }

    /// <summary>
    /// Lane 1 begins at the board's end, lanes 2 and 3 behind a knot that takes them both: a rip frees lane 1 over the whole length, and what is left of the
    /// others, 800 by 277, comes off across both.
    /// </summary>
    [Fact]
    public void LanesBehindOneKnotLeaveTheirNearEndInOnePiece()
    {
        (NestSpec spec, BoardCutList list) = Board(
            2500,
            [new(800, 900, 140, 417)],
            (0, 2400),
            (900, 2400),
            (900, 2400)
        );
        Assert.Equal(
            [
                (CutKind.Rip, new Vec2(0, 137), new Vec2(2500, 137)),
                (CutKind.EndOff, new Vec2(900, 140), new Vec2(900, 417)),
                (CutKind.Rip, new Vec2(900, 277), new Vec2(2500, 277)),
            ],
            list.Cuts.Where(c => c.Lane is null).Select(c => (c.Kind, c.From, c.To))
        );
        Offcut kept = Offcuts.Of(spec, list)[0];
        Assert.Equal((800, 277, 140), (kept.LengthMm, kept.WidthMm, kept.LowMm));
        Assert.Equal("cut across lanes 2 and 3", BoardCutWords.Kind(list, list.Cuts[1]));
        Assert.Equal([0, 900, 900], list.LaneBeginsMm);
    }

    /// <summary>A lane that begins earlier than its neighbour: parted from it over the whole length it leaves 1497 by 137 of the latter, more than 297 by 277 of both.</summary>
    [Fact]
    public void ALaneThatIsKeptLongIsRippedFree()
    {
        (NestSpec spec, BoardCutList list) = Board(
            4000,
            [new(250, 297, 0, 137), new(1497, 1500, 140, 277)],
            (297, 3990),
            (1500, 3990)
        );
        Assert.DoesNotContain(list.Cuts, c => c.Kind == CutKind.EndOff);
        Assert.Equal(
            (1497, 137),
            Offcuts.Of(spec, list).Select(o => (o.LengthMm, o.WidthMm)).First()
        );
    }

    /// <summary>The near end's cut is in the board's full-size drawing where the saw goes.</summary>
    [Theory]
    [InlineData(DxfVersion.R2000, DxfUnit.Millimetre, 1)]
    [InlineData(DxfVersion.R12, DxfUnit.Inch, 25.4)]
    public void TheLineOfTheCutIsInTheBoardsDxf(DxfVersion version, DxfUnit units, double unitMm)
    {
        (NestSpec spec, BoardCutList list) = Board(
            3000,
            [Across(1000, 1050)],
            (1050, 2550),
            (1050, 2550)
        );
        NestPlan nest = HandMadePlan.Plan with { Spec = spec, Boards = [list.Board] };
        BottomPlan plan = PrismaticPlan.Build(new()) with { Nest = nest };
        using var file = new MemoryStream();
        DxfWriter.Write(file, BoardPattern.Of(plan, spec, list.Board), new(version, units));
        DxfReading read = new(file.ToArray());
        read.HoldToTheRules();
        Assert.Single(
            read.Lines().Where(l => !l.Closed && l.Points.Count == 2),
            l =>
                l.Points.Select(p => (Math.Round(p.X * unitMm, 2), Math.Round(p.Y * unitMm, 2)))
                    .Order()
                    .SequenceEqual([(1050, 0), (1050, 277)])
        );
    }

    /// <summary>The cut stands where the fault ends, and its number beside it; lanes by themselves are drawn from where they begin.</summary>
    [Fact]
    public void TheCutSheetNumbersItAndShowsLanesFromWhereTheyBegin()
    {
        (NestSpec spec, BoardCutList list) = Board(
            3000,
            [Across(1000, 1050)],
            (1050, 2550),
            (1050, 2550)
        );
        NestPlan nest = HandMadePlan.Plan with { Spec = spec, Boards = [list.Board] };
        BottomPlan plan = PrismaticPlan.Build(new()) with { Nest = nest };
        foreach (StripView view in new[] { StripView.Whole(list), StripView.Overview(list) })
        {
            Assert.Contains(view.Cuts, c => c.IsNearEnd);
            Assert.Empty(StripDrawing.AtAnyRate(plan, view, 0.06, 250).WithoutNumber);
        }

        var lanes = StripView.Ripped(list, 0, 2);
        Assert.Equal((1050, 2550), (lanes.FromMm, lanes.ToMm));
    }
}
