using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>
/// A small low piece finds room under the leaning ends of its neighbours, and brings them no nearer to each other than they come without it: neither in a plan nor
/// in what is proved of all plans.
/// </summary>
public sealed class TuckedUnderTests
{
    private const int Planks = 6;

    /// <summary>
    /// Planks of 700 over 500, 100 wide, the longer edge above: two and a kerf of 3 take 1403 of a board with or without a low piece between them, which by its own two
    /// pitches would have them in 1269. Each of them then needs a board of its own, and that is proved.
    /// </summary>
    [Theory]
    [InlineData(1350)]
    [InlineData(1402.9)]
    public void ALowPieceBetweenTwoBringsThemNoNearer(double boardMm)
    {
        NestPlan plan = Plan(boardMm);
        Assert.Equal(Planks, plan.Boards.Length);
        Assert.Equal(Planks * boardMm * 100, plan.Materials.Single().Value, 1e-3);
        Assert.Equal(Planks * boardMm * 100, plan.LowerBound, 1);
    }

    /// <summary>Where two go into a board the low pieces lie between them for nothing.</summary>
    [Fact]
    public void ItCostsNothingWhereTwoHaveRoom()
    {
        NestPlan plan = Plan(1412);
        Assert.Equal(Planks / 2, plan.Boards.Length);
        Assert.Equal(Planks / 2 * 1412 * 100, plan.LowerBound, 1);
    }

    /// <summary>The small pieces of a bow, rounded to the millimetre, each with its mirror image; two of them are 87 high and go under the ends of the others.</summary>
    private static readonly ImmutableArray<ImmutableArray<Vec2>> Bow =
    [
        [new(0, 121), new(108, 0), new(232, 121)],
        [new(0, 123), new(124, 0), new(261, 123)],
        [new(0, 0), new(266, 0), new(110, 87)],
        [new(0, 0), new(317, 0), new(65, 124)],
        [new(0, 125), new(111, 0), new(343, 0), new(471, 125)],
        [new(0, 0), new(460, 23), new(483, 63), new(418, 103), new(153, 116)],
        [new(0, 125), new(127, 0), new(387, 0), new(526, 125)],
    ];

    /// <summary>With rows that cannot be sawn among those that a board could hold, as many as half of these boards were held for needless, and more were cut into.</summary>
    [Theory]
    [InlineData(4, 1100, 2)]
    [InlineData(5, 1000, 3)]
    [InlineData(6, 1000, 3)]
    [InlineData(7, 1300, 3)]
    public void WhatSmallPiecesOfABowNeedIsProved(int shapes, double boardMm, int boards)
    {
        NestSpec spec = SawPieces.Spec([
            .. Enumerable.Range(1, 8).Select(i => SawPieces.Board($"B-{i:00}", boardMm, 128)),
        ]);
        NestPlan plan = Planned.Lawful(
            spec with
            {
                EndMm = 5,
                Rounds = 0,
            },
            [
                .. Bow.Take(shapes)
                    .SelectMany(
                        (outline, i) =>
                            new[]
                            {
                                SawPieces.Of($"S1-{i + 1:00}", [.. outline]),
                                SawPieces.Of($"S2-{i + 1:00}", [.. Mirrored(outline)]),
                            }
                    ),
            ]
        );
        Assert.Empty(plan.Unplaced);
        Assert.Equal(boards, plan.Boards.Length);
        Assert.Equal(boards * boardMm * 128, plan.LowerBound, 1);
    }

    private static IEnumerable<Vec2> Mirrored(ImmutableArray<Vec2> outline) =>
        outline.Select(p => new Vec2(p.X, outline.Max(q => q.Y) - p.Y)).Reverse();

    private static NestPlan Plan(double boardMm)
    {
        ImmutableArray<SawPiece> pieces =
        [
            .. Enumerable
                .Range(1, Planks)
                .Select(i =>
                    SawPieces.Of(
                        $"S1-0{i}",
                        new(100, 0),
                        new(600, 0),
                        new(700, 100),
                        new(0, 100)
                    ) with
                    {
                        MayTurnEnd = false,
                    }
                ),
            .. Enumerable
                .Range(1, Planks / 2)
                .Select(i =>
                    SawPieces.Of($"S2-0{i}", new(0, 0), new(60, 0), new(30, 40)) with
                    {
                        MayTurnEnd = false,
                    }
                ),
        ];
        NestPlan plan = Planned.Lawful(
            SawPieces.Spec([
                .. Enumerable.Range(1, 10).Select(i => SawPieces.Board($"B-{i:00}", boardMm, 100)),
            ]),
            pieces
        );
        Assert.Empty(plan.Unplaced);
        return plan;
    }
}
