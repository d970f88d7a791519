using CsCheck;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>What boards leave empty at their ends, on jobs by chance and on a list of cuts that has what is wrong.</summary>
public sealed class EmptyBoardTests
{
    [Fact]
    public void NoRipOfAPlanRunsThroughEmptyBoardAtEitherEnd() =>
        RandomCutting.Gen.Sample(
            job =>
            {
                NestPlan plan = Planned.Of(job.Spec, job.Pieces);
                Hold(plan.Spec, plan.Boards);
            },
            iter: LongRuns.Of(3, 300),
            threads: 2
        );

    [Fact]
    public void NoRipRunsThroughEmptyBoardWhereverItsFaultsAre() =>
        RandomLanes.Gen.Sample(
            lanes => Hold(lanes.Spec, lanes.Board),
            iter: LongRuns.Of(100, 20000),
            threads: 2
        );

    /// <summary>
    /// The end of two lanes, sawn off across them, is 0.005 mm longer than the end of the one that is larger anyway, since that leans; for its sake 954 by 108 that
    /// other two leave in common was given up, and then all of it, since what is kept was the less.
    /// </summary>
    [Fact]
    public void AHairMoreOfTheLargestIsNoReasonToGiveUpTheNext() =>
        RandomLanes.Gen.Sample(
            lanes => Hold(lanes.Spec, lanes.Board),
            seed: "9RrYfEZCscjc",
            iter: 1,
            threads: 1
        );

    /// <summary>A saw of next to no kerf, and an edge's waste of 0.14 mm that the law itself took for a lane beside another.</summary>
    [Fact]
    public void AnEdgesWasteIsNoLane() =>
        RandomCutting.Gen.Sample(
            job =>
            {
                NestPlan plan = Planned.Of(job.Spec, job.Pieces);
                Hold(plan.Spec, plan.Boards);
            },
            seed: "ceqIll_5Akzk",
            iter: 1,
            threads: 1
        );

    private static void Hold(NestSpec spec, SawnBoard board)
    {
        Hold(spec, [board]);
        Assert.Empty(SawLaws.Broken(spec, board));
        Assert.Empty(OffcutLaws.Broken(spec, board));
    }

    private static void Hold(NestSpec spec, IEnumerable<SawnBoard> boards)
    {
        foreach (BoardCutList list in boards.Select(b => BoardCuts.Of(b, spec)))
        {
            Assert.Empty(EmptyBoardLaws.Broken(spec, list));
            Assert.Empty(EmptyBoardLaws.Smaller(spec, list));
        }
    }

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
        Assert.Contains(
            "runs from 0 to 2440, and 2003 to 2440 is empty, 277 wide",
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
    }
}
