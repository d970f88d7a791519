using System.Collections.Immutable;
using CsCheck;
using PlankFit.Geometry.Primitives;
using PlankFit.Nesting;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.Planking.Stock;

/// <summary>Cuts of real planks and of pieces by chance, held to <see cref="BoardCutsLaws"/>; and the laws seen to break.</summary>
public sealed class BoardCutsLawsTests
{
    [Theory]
    [InlineData("launch")]
    [InlineData("skiff")]
    [InlineData("by hand")]
    public void CutsMakeEveryPieceAndEnterNone(string which)
    {
        NestPlan plan = which switch
        {
            "launch" => NestedPlans.Launch.Nest!,
            "skiff" => NestedPlans.Skiff.Nest!,
            _ => HandMadePlan.Plan,
        };
        Assert.NotEmpty(plan.Boards);
        string[] broken =
        [
            .. plan.Boards.SelectMany(b =>
                BoardCutsLaws.Broken(plan.Spec, BoardCuts.Of(b, plan.Spec))
            ),
        ];
        Assert.True(broken.Length == 0, string.Join("\n", broken));
    }

    /// <summary>Square crosscuts over pieces by chance, ends from 30 to 150 degrees: plans that are made quickly and lie otherwise.</summary>
    [Fact]
    public void CutsOfPiecesByChanceKeepTheLaws()
    {
        var piece = Gen.Select(
            Gen.Double[200, 1500],
            Gen.Double[60, 150],
            Gen.Double[30, 150],
            Gen.Double[30, 150],
            (length, width, near, far) =>
            {
                double a = width / Math.Tan(near * Math.PI / 180),
                    b = width / Math.Tan(far * Math.PI / 180),
                    longer = length + Math.Abs(a) + Math.Abs(b);
                return SawPieces.Of(
                    "S1-00",
                    new Vec2(0, 0),
                    new Vec2(longer, 0),
                    new Vec2(longer + b, width),
                    new Vec2(a, width)
                );
            }
        );
        Gen.Select(piece.Array[1, 8], Gen.Double[150, 400])
            .Sample(
                (pieces, width) =>
                {
                    ImmutableArray<SawPiece> named =
                    [
                        .. pieces.Select(
                            (p, i) =>
                                p with
                                {
                                    Id = PieceId.Whole(PlankId.OfBottom(Side.Starboard, 1, i)),
                                }
                        ),
                    ];
                    StockBoard board = SawPieces.Board("B", 4200, width) with { Count = 20 };
                    NestSpec spec = SawPieces.Spec(board);
                    foreach (
                        SawnBoard sawn in SquareCuts
                            .Of(spec, named, spec.CostOf, new(default))
                            .Boards
                    )
                    {
                        string[] broken = [.. BoardCutsLaws.Broken(spec, BoardCuts.Of(sawn, spec))];
                        Assert.True(broken.Length == 0, string.Join("\n", broken));
                    }
                },
                iter: 60,
                seed: "0000KNyC5Ek0"
            );
    }

    public static TheoryData<string> Spoilings =>
        ["a cut left out", "a cut moved", "a cut turned", "numbers out of order", "sawn too soon"];

    [Theory]
    [MemberData(nameof(Spoilings))]
    public void TheLawsBreak(string spoiling)
    {
        double pitch = 1000 + (3 * Math.Sqrt(2));
        StockBoard board = SawPieces.Board("B", 4800, 150);
        NestSpec spec = SawPieces.Spec(board);
        SawnBoard sawn = new(
            "B",
            board,
            [],
            [
                new(SawPieces.Parallelogram("S1-01", 1000, 150, 45), false, false, 0, new(60, 0)),
                new(
                    SawPieces.Parallelogram("S1-02", 1000, 150, 45),
                    false,
                    false,
                    0,
                    new(60 + pitch, 0)
                ),
                new(
                    SawPieces.Parallelogram("S1-03", 1000, 150, 135),
                    false,
                    false,
                    0,
                    new(1363 + pitch, 0)
                ),
            ]
        );
        BoardCutList list = BoardCuts.Of(sawn, spec);
        Assert.Empty(BoardCutsLaws.Broken(spec, list));
        ImmutableArray<SawCut> cuts = list.Cuts;
        SawCut Shifted(SawCut c, Vec2 from, Vec2 to) =>
            c with
            {
                From = c.From + from,
                To = c.To + to,
                Line = [c.Line[0] + from, c.Line[^1] + to],
            };
        int parting = cuts.IndexOf(cuts.Single(c => c.Kind == CutKind.Parting));
        ImmutableArray<SawCut> spoilt = spoiling switch
        {
            "a cut left out" => cuts.RemoveAt(cuts.Length - 1),
            "a cut moved" => cuts.SetItem(0, Shifted(cuts[0], new(1.5, 0), new(1.5, 0))),
            "a cut turned" => cuts.SetItem(0, Shifted(cuts[0], new(0, 0), new(3, 0))),
            "numbers out of order" => cuts.SetItem(0, cuts[1]).SetItem(1, cuts[0]),
            _ =>
            [
                .. cuts.RemoveAt(parting)
                    .Add(cuts[parting])
                    .Select((c, i) => c with { Number = i + 1 }),
            ],
        };
        Assert.NotEmpty(BoardCutsLaws.Broken(spec, list with { Cuts = spoilt }));
    }
}
