using System.Collections.Immutable;
using CsCheck;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>Ends left long by more than must stand there are turned to their neighbours while boards are found, and save wood.</summary>
public sealed class TurnedInRowsTests
{
    private const double KerfMm = 3;

    /// <summary>Its end square, 25 beyond its net end at 1000.</summary>
    private static SawPiece Long(double leastMm) =>
        SawPieces.Of("S1-01", new(0, 0), new(1025, 0), new(1025, 150), new(0, 150)) with
        {
            MayTurnEnd = false,
            LongEnds = [new([new(1000, 0), new(1000, 150)], new(1, 0), leastMm) { ByMm = 25 }],
        };

    /// <summary>Its end, which is fit, leans so far over the board's width.</summary>
    private static SawPiece Leaning(double lean) =>
        SawPieces.Of("S1-02", new(0, 0), new(800, 0), new(800, 150), new(lean, 150)) with
        {
            MayTurnEnd = false,
        };

    /// <summary>A kerf along the board at such a lean.</summary>
    private static double Kerf(double lean) => KerfMm * Math.Sqrt(1 + (lean * lean / (150 * 150)));

    private static NestPlan Of(double boardMm, SawPiece one, SawPiece other) =>
        Planned.Lawful(SawPieces.Spec(SawPieces.Board("B", boardMm, 150)), [one, other]);

    /// <summary>
    /// 10 mm over 150, as the tangent of the angle is, is what turning saves where 10 mm are to stand: from 25 at the upper corner it leaves 15 at the lower. A
    /// board that is 0.01 mm too short for that has no room for both.
    /// </summary>
    [Fact]
    public void TheTangentTimesTheWidthIsSaved()
    {
        double length = 1025 - 10 + Kerf(10) + 800;
        SawnBoard board = Assert.Single(Of(length + 0.001, Long(10), Leaning(10)).Boards);
        Assert.Equal(2, board.Pieces.Length);
        LaidPiece first = board.Pieces.Single(p => p.Piece.Id == Named.Piece("S1-01"));
        SawnLong end = Assert.Single(first.Long);
        Assert.Equal(
            (true, 15, 25),
            (end.Far, Math.Round(end.LeastMm, 9), Math.Round(end.MostMm, 9))
        );
        Assert.Contains(first.Outline, v => v.ChordTo(new(1015, 0)) < 1e-9);
        Assert.Contains(first.Outline, v => v.ChordTo(new(1025, 150)) < 1e-9);
        Assert.Equal(1015 + Kerf(10), board.Pieces.Single(p => p != first).Shift.X, 1e-9);
        SawCut shared = Assert.Single(
            BoardCuts.Of(board, SawPieces.Spec(board.Stock)).Cuts,
            c => c.IsShared
        );
        Assert.Equal(Math.Atan2(10, 150) * 180 / Math.PI, shared.DegreesFromSquare, 1e-9);
        Assert.Single(Of(length - 0.01, Long(10), Leaning(10)).Unplaced);
    }

    /// <summary>40 mm over 150 are more than the slack of 15: the lower corner comes down to 10, and the upper one grows to 50.</summary>
    [Fact]
    public void NoMoreThanTheSlackIsSaved()
    {
        double length = 1010 + Kerf(40) + 800;
        SawnBoard board = Assert.Single(Of(length + 0.001, Long(10), Leaning(40)).Boards);
        SawnLong end = Assert.Single(board.Pieces.SelectMany(p => p.Long));
        Assert.Equal(10, end.LeastMm, 1e-9);
        Assert.Equal(50, end.MostMm, 1e-9);
        Assert.Single(Of(length - 0.01, Long(10), Leaning(40)).Unplaced);
    }

    /// <summary>Where all 25 are to stand nothing can be saved: the turned end holds the plain one.</summary>
    [Fact]
    public void NothingIsSavedWhereAllIsToStand()
    {
        const double Length = 1025 + KerfMm + 800;
        Assert.Empty(Of(Length + 0.001, Long(25), Leaning(10)).Unplaced);
        Assert.Single(Of(Length - 0.01, Long(25), Leaning(10)).Unplaced);
    }

    /// <summary>The law that a piece is sawn no shorter than asked sees an end that stands 0.1 mm less than must beyond its net end.</summary>
    [Fact]
    public void TheLawSeesAnEndTooShort()
    {
        SawnBoard board = Assert.Single(Of(1900, Long(10), Leaning(40)).Boards);
        LaidPiece laid = board.Pieces.Single(p => p.Piece.Id == Named.Piece("S1-01"));
        SawnBoard With(double low) =>
            board with
            {
                Pieces = board.Pieces.Replace(
                    laid,
                    laid with
                    {
                        Sawn = [new(0, 0), new(low, 0), new(1050, 150), new(0, 150)],
                        Long = [new(true, 10, 50)],
                    }
                ),
            };
        Assert.Empty(BoardLaws.Broken(SawPieces.Spec(board.Stock), With(1010)));
        Assert.NotEmpty(BoardLaws.Broken(SawPieces.Spec(board.Stock), With(1009.9)));
    }

    /// <summary>All orders, ways to lie and ends turned of up to four pieces, by polygons: the shortest row of all is what a board must have, and no less.</summary>
    [Fact]
    public void TheShortestRowOfAllIsFound() =>
        LongEndedPieces.Few.Sample(
            pieces =>
            {
                double shortest = EveryRow.Shortest(pieces, KerfMm);
                NestPlan Of(double mm) =>
                    Planned.Lawful(
                        SawPieces.Spec(SawPieces.Board("B", mm, 150)) with
                        {
                            ProudMm = 0,
                        },
                        pieces
                    );
                Assert.Empty(Of(shortest + 0.05).Unplaced);
                Assert.NotEmpty(Of(shortest - 0.01).Unplaced);
            },
            iter: LongRuns.Of(4, 500),
            threads: 2
        );

    /// <summary>Mixed racks, sheets and yards, pieces of all shapes with ends left long, some with slack and some without.</summary>
    [Fact]
    public void JobsByChanceKeepTheLaws() =>
        FixedDraws.Keep(
            LongEndedPieces.Jobs,
            3,
            400,
            job =>
            {
                NestPlan plan = Planned.Of(job.Spec, job.Pieces);
                Assert.Empty(CutLaws.Broken(plan, job.Pieces));
            }
        );

    /// <summary>
    /// Draws of chance: an end was turned to a kerf from the foot of its neighbour's end, which bulged by a hair beyond it, 2.640 for a kerf of 2.675; and a piece began just
    /// at a fault of no length, and its end was grown over it.
    /// </summary>
    [Theory]
    [InlineData("aWv0XBUdMeac")]
    [InlineData("240xyeop-UK4")]
    public void DrawsThatWereFoundBrokenKeepTheLaws(string seed) =>
        LongEndedPieces.Jobs.Sample(
            job => Assert.Empty(CutLaws.Broken(Planned.Of(job.Spec, job.Pieces), job.Pieces)),
            seed: seed,
            iter: 1,
            threads: 1
        );

    /// <summary>A plan that turns nothing is one of those that the bound speaks of.</summary>
    [Fact]
    public void TheBoundIsNotAboveAPlanThatTurnsNothing() =>
        LongEndedPieces.Jobs.Sample(
            job =>
            {
                NestPlan plan = Planned.Of(job.Spec, job.Pieces),
                    plain = Planned.Of(
                        job.Spec,
                        [
                            .. job.Pieces.Select(p =>
                                p with
                                {
                                    LongEnds =
                                    [
                                        .. p.LongEnds.Select(e => e with { LeastMm = e.ByMm }),
                                    ],
                                }
                            ),
                        ]
                    );
                if (
                    plan.Measure == plain.Measure
                    && plan.Unplaced.IsEmpty
                    && plain.Unplaced.IsEmpty
                )
                {
                    Assert.True(plan.LowerBound <= plain.Value * (1 + 1e-9));
                }
            },
            iter: LongRuns.Of(1, 200),
            threads: 2
        );

    /// <summary>A twentieth of the launch's planks, left long by 25 and 30: with 10 that must stand one cut makes more of their ends, and no end stands less.</summary>
    [Fact]
    public void TheLaunchNeedsFewerCuts()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        BottomPlan drawn = DemoPlans.Of("survey-launch-from-the-rack");
        (int Cuts, int Shared, NestPlan Plan) Sawn(double? leastMm)
        {
            BottomPlan plan = drawn with
            {
                Job = drawn.Job with
                {
                    Nest = drawn.Job.Nest! with { LeastOverhangMm = leastMm, Rounds = 0 },
                },
            };
            ImmutableArray<SawPiece> pieces = [.. plan.PiecesToSaw().Where((_, i) => i % 20 == 0)];
            NestPlan nest = Planned.Lawful(plan.Job.Nest!, pieces);
            SawCut[] cuts = [.. nest.Boards.SelectMany(b => BoardCuts.Of(b, nest.Spec).Cuts)];
            return (cuts.Length, cuts.Count(c => c.IsShared), nest);
        }

        (int cuts, int shared, _) = Sawn(null);
        (int fewer, int more, NestPlan turned) = Sawn(10);
        Assert.True(
            fewer < cuts && more > shared,
            $"{fewer} cuts for {cuts}, {more} shared for {shared}"
        );
        Assert.All(
            turned.Boards.SelectMany(b => b.Pieces).SelectMany(p => p.Long),
            l => Assert.InRange(l.LeastMm, 10 - 1e-6, 105)
        );
        Assert.Contains(
            turned.Boards.SelectMany(b => b.Pieces).SelectMany(p => p.Long),
            l => l.LeastMm < 24.9
        );
    }
}
