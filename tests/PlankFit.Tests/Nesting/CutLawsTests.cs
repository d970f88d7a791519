using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>The laws of plans of cutting hold of a plan that is right, and break at every small thing that is wrong with it.</summary>
public sealed class CutLawsTests
{
    [Fact]
    public void AHandMadePlanKeepsThem() =>
        Assert.Empty(CutLaws.Broken(HandMadePlan.Plan, HandMadePlan.Pieces));

    public static TheoryData<string, Func<NestPlan, NestPlan>> Wrong =>
        new()
        {
            { "P1-01 is 2", Moved(0, 1, new(-0.5, 0)) },
            {
                "are -1 mm apart",
                p =>
                    With(
                        p,
                        0,
                        b => b with { Lanes = [b.Lanes[0], b.Lanes[1] with { LowMm = 149 }] }
                    )
            },
            { "P1-01 overlaps S1-01", Moved(0, 1, new(-10, 0)) },
            { "S1-02 is 2", Moved(0, 2, new(0, -0.5)) },
            { "S1-01: reaches 0.500", Moved(0, 0, new(-0.5, 0)) },
            { "S1-05: reaches", Moved(1, 0, new(0, 0.5)) },
            {
                "S1-05: reaches 0.500 mm beyond the board's usable width",
                Moved(1, 0, new(-0.5, 0))
            },
            {
                "S1-01: reaches 0.500 mm beyond the board's usable width",
                Moved(0, 0, new(0, -0.5))
            },
            { "has the fault at 2300", Moved(0, 1, new(107, 0)) },
            { "has the fault at 3000", Moved(0, 4, new(101, 0)) },
            { "crosses the edge of lane 2", Moved(0, 4, new(0, -3)) },
            { "P1-01 is in the plan 0 times", Without(1) },
            { "S1-02 is in the plan 0 times", Without(2) },
            {
                "S1-01 is in the plan 2 times",
                p => p with { Unplaced = [.. p.Unplaced, new(HandMadePlan.Pieces[0], "why not")] }
            },
            { "S1-06 is in the plan 0 times", p => p with { Unplaced = [] } },
            { "without a word", p => p with { Unplaced = [new(HandMadePlan.Pieces[6], "")] } },
            { "S1-99 was not asked for", Renamed(2, Named.Piece("S1-99")) },
            { "S1-03 is another piece", p => Exchanged(p, 2, 3) },
            { "P1-01 is another piece", p => Exchanged(p, 0, 1) },
            { "S1-02 is another piece", OtherPiece(2, s => s with { MayTurnFace = true }) },
            {
                "is another piece",
                OtherPiece(2, s => s with { Outline = s.Outline.SetItem(0, new(0.01, 0)) })
            },
            { "which is forbidden", Laid(0, 0, l => l with { FaceDown = true }) },
            { "turned end for end, which is forbidden", Laid(1, 0, l => l with { Turned = true }) },
            { "6.0 degrees from the grain", Laid(0, 4, l => l with { TiltDegrees = 6 }) },
            { "90.0 degrees from the grain", Laid(1, 0, l => l with { TiltDegrees = 0 }) },
            { "lies nowhere", Laid(0, 4, l => l with { TiltDegrees = double.NaN }) },
            {
                "do not have the same pieces",
                p => With(p, 0, b => b with { Lanes = [b.Lanes[0]] })
            },
            {
                "told before",
                p =>
                    With(
                        p,
                        0,
                        b =>
                            b with
                            {
                                Lanes =
                                [
                                    b.Lanes[0] with
                                    {
                                        PieceIds = [Named.Piece("P1-01"), Named.Piece("S1-01")],
                                    },
                                    b.Lanes[1],
                                ],
                                Pieces = [b.Pieces[1], b.Pieces[0], .. b.Pieces.Skip(2)],
                            }
                    )
            },
            {
                "nothing lies in lane",
                p => With(p, 1, b => b with { Lanes = b.Lanes.Add(new(160, 200, [])) })
            },
            {
                "nothing lies in B-01.2",
                p =>
                    p with
                    {
                        Boards = p.Boards.Add(
                            p.Boards[0] with
                            {
                                Id = "B-01.2",
                                Lanes = [],
                                Pieces = [],
                            }
                        ),
                    }
            },
            {
                "3 boards of B-01, of which there are 2",
                p =>
                    p with
                    {
                        Boards =
                        [
                            .. p.Boards,
                            p.Boards[0] with
                            {
                                Id = "B-01.2",
                            },
                            p.Boards[0] with
                            {
                                Id = "B-01.3",
                            },
                        ],
                    }
            },
            { "board B-01.1 is sawn 2 times", p => p with { Boards = p.Boards.Add(p.Boards[0]) } },
            { "does not name its row", p => With(p, 0, b => b with { Id = "B-02" }) },
            {
                "is not in the stock",
                p => p with { Spec = p.Spec with { Boards = p.Spec.Boards.RemoveAt(1) } }
            },
            { "is 12 mm thick", p => With(p, 0, b => b with { Stock = HandMadePlan.Thick }) },
            { "is larch", Stock(b => b with { Species = "larch" }) },
            { "is of grade common", Stock(b => b with { Grade = "common" }) },
            { "wants select", Stock(b => b with { Grade = null }) },
            { "are not in one board", p => Apart(p) },
            { "come to", p => p with { Materials = [p.Materials[0] with { Value = 1 }] } },
            {
                "come to",
                p =>
                    p with
                    {
                        Materials = [p.Materials[0] with { Measure = NestMeasure.BoughtArea }],
                    }
            },
            {
                "a bound of",
                p => p with { Materials = [p.Materials[0] with { LowerBound = 4.1e6 }] }
            },
            {
                "a bound of",
                p => p with { Materials = [p.Materials[0] with { LowerBound = double.NaN }] }
            },
            {
                "is not in one material",
                p =>
                    p with
                    {
                        Materials = [p.Materials[0] with { PieceIds = [Named.Piece("S1-01")] }],
                    }
            },
        };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void WhateverIsWrongIsTold(string told, Func<NestPlan, NestPlan> wrong) =>
        Assert.Contains(
            CutLaws.Broken(wrong(HandMadePlan.Plan), HandMadePlan.Pieces),
            b => b.Contains(told, StringComparison.Ordinal)
        );

    private static NestPlan With(NestPlan plan, int board, Func<SawnBoard, SawnBoard> change) =>
        plan with
        {
            Boards = plan.Boards.SetItem(board, change(plan.Boards[board])),
        };

    private static Func<NestPlan, NestPlan> Laid(
        int board,
        int piece,
        Func<LaidPiece, LaidPiece> change
    ) =>
        plan =>
            With(
                plan,
                board,
                b => b with { Pieces = b.Pieces.SetItem(piece, change(b.Pieces[piece])) }
            );

    private static Func<NestPlan, NestPlan> Moved(int board, int piece, Vec2 by) =>
        Laid(board, piece, l => l with { Shift = l.Shift + by });

    private static Func<NestPlan, NestPlan> OtherPiece(
        int piece,
        Func<SawPiece, SawPiece> change
    ) => Laid(0, piece, l => l with { Piece = change(l.Piece) });

    private static Func<NestPlan, NestPlan> Renamed(int piece, PieceId id) =>
        OtherPiece(piece, p => p with { Id = id });

    private static Func<NestPlan, NestPlan> Without(int piece) =>
        plan =>
            With(
                plan,
                0,
                b =>
                    b with
                    {
                        Pieces = b.Pieces.RemoveAt(piece),
                        Lanes =
                        [
                            .. b.Lanes.Select(l =>
                                l with
                                {
                                    PieceIds = l.PieceIds.Remove(b.Pieces[piece].Piece.Id),
                                }
                            ),
                        ],
                    }
            );

    private static NestPlan Exchanged(NestPlan plan, int a, int b)
    {
        PieceId idA = plan.Boards[0].Pieces[a].Piece.Id,
            idB = plan.Boards[0].Pieces[b].Piece.Id;
        return Renamed(b, idA)(Renamed(a, idB)(plan));
    }

    private static Func<NestPlan, NestPlan> Stock(Func<StockBoard, StockBoard> change) =>
        plan =>
        {
            StockBoard changed = change(plan.Boards[0].Stock);
            return With(plan, 0, b => b with { Stock = changed }) with
            {
                Spec = plan.Spec with { Boards = plan.Spec.Boards.SetItem(0, changed) },
            };
        };

    /// <summary>The second of the twins goes to a board of its own.</summary>
    private static NestPlan Apart(NestPlan plan)
    {
        SawnBoard board = plan.Boards[0];
        SawnBoard other = board with
        {
            Id = "B-01.2",
            Lanes = [new(0, 150, [Named.Piece("P1-01")])],
            Pieces = [board.Pieces[1]],
        };
        NestPlan without = Without(1)(plan);
        return without with { Boards = without.Boards.Add(other) };
    }
}
