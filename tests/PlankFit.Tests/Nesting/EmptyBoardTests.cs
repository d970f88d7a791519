using CsCheck;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>What boards leave empty at their ends, on jobs by chance and on a list of cuts that has what is wrong.</summary>
public sealed class EmptyBoardTests
{
    /// <summary>Rows begin at the squared end, or where a fault of the board ends: but for faults nothing is ever left empty at the near end.</summary>
    [Fact]
    public void NoRipRunsThroughEmptyBoardAndRowsBeginAtTheSquaredEnd() =>
        FixedDraws.Keep(
            RandomCutting.Gen,
            20,
            1500,
            job =>
            {
                NestPlan plan = Planned.Of(job.Spec, job.Pieces);
                BoardCutList[] lists = [.. plan.Boards.Select(b => BoardCuts.Of(b, plan.Spec))];
                Assert.Empty(lists.SelectMany(l => EmptyBoardLaws.Broken(plan.Spec, l)));
                Assert.Empty(lists.SelectMany(l => EmptyBoardLaws.Smaller(plan.Spec, l)));
                Assert.Empty(lists.SelectMany(l => EmptyBoardLaws.BegunLate(plan.Spec, l)));
            }
        );

    /// <summary>Two lanes of 2000 in a board of 2440 and a rip between them. Run on over all of it, or narrower than its kerf, or half off the board, it is told.</summary>
    [Fact]
    public void WhateverIsWrongIsTold()
    {
        StockBoard stock = SawPieces.Board("B-01", 2440, 277);
        NestSpec spec = SawPieces.Spec(stock);
        SawnBoard board = new(
            "B-01",
            stock,
            [new(0, 137, [Named.Piece("S1-01")]), new(140, 277, [Named.Piece("S1-02")])],
            [
                new(SawPieces.Rectangle("S1-01", 2000, 137), false, false, 0, default),
                new(SawPieces.Rectangle("S1-02", 2000, 137), false, false, 0, new(0, 140)),
            ]
        );
        BoardCutList right = BoardCuts.Of(board, spec);
        SawCut rip = right.Cuts.Single(c => c.Kind == CutKind.Rip);
        BoardCutList With(SawCut wrong) => right with { Cuts = [wrong] };
        Vec2 end = new(2440, 137);
        BoardCutList through = With(rip with { To = end, Line = [rip.From, end] }) with
        {
            LaneEndsMm = [2440, 2440],
        };
        Assert.Empty(EmptyBoardLaws.Broken(spec, right));
        Assert.Empty(EmptyBoardLaws.Smaller(spec, right));
        Assert.Empty(EmptyBoardLaws.BegunLate(spec, right));
        Assert.Contains(
            "runs on to 2440, and all is empty from 2000",
            Assert.Single(EmptyBoardLaws.Broken(spec, through)),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "lanes leave 437 x 277 mm empty",
            Assert.Single(EmptyBoardLaws.Smaller(spec, through)),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "takes 1.00 mm of the board",
            Assert.Single(EmptyBoardLaws.Broken(spec, With(rip with { KerfMm = 1 }))),
            StringComparison.Ordinal
        );
        Vec2 high = new(0, 276);
        Assert.Contains(
            "takes 1.00 mm of the board",
            Assert.Single(
                EmptyBoardLaws.Broken(
                    spec,
                    With(rip with { From = high, To = high + new Vec2(2000, 0) })
                )
            ),
            StringComparison.Ordinal
        );
        SawnBoard late = board with
        {
            Pieces = [board.Pieces[0], board.Pieces[1] with { Shift = new(1, 140) }],
        };
        Assert.Contains(
            "lane 2 begins at 1.0, and no fault",
            Assert.Single(EmptyBoardLaws.BegunLate(spec, right with { Board = late })),
            StringComparison.Ordinal
        );
    }
}
