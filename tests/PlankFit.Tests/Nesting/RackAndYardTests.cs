using System.Collections.Immutable;
using CsCheck;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>One model of rack and yard: what is bought is made least, and what is proved of it holds for every way to share the pieces out, tried one by one.</summary>
public sealed class RackAndYardTests
{
    private const double WideMm = 100;

    /// <summary>A rack that is filled first leaves the long piece to a long board of the yard: 480,000. The long piece out of the rack leaves a short board to buy.</summary>
    [Fact]
    public void TheRackGivesWhatSavesMostOfTheYard()
    {
        NestSpec spec = SawPieces.Spec(
            SawPieces.Board("B-01", 1950, WideMm),
            Bought("Y-1", 4800, WideMm),
            Bought("Y-2", 1810, WideMm)
        );
        ImmutableArray<SawPiece> pieces =
        [
            SawPieces.Rectangle("S1-01", 600, WideMm),
            SawPieces.Rectangle("S1-02", 600, WideMm),
            SawPieces.Rectangle("S1-03", 600, WideMm),
            SawPieces.Rectangle("S1-04", 1900, WideMm),
        ];
        NestPlan plan = Planned.Lawful(spec, pieces);
        Assert.Equal(NestMeasure.BoughtArea, plan.Measure);
        Assert.Equal(181_000, plan.Value, 1e-6);
        Assert.InRange(plan.LowerBound, 0, 181_000 + 1e-6);
        Assert.Equal(376_000, plan.Boards.Sum(b => b.Stock.AreaMm2), 1e-6);
    }

    /// <summary>Nothing need be bought: the wood of the rack is measured, and the bound is on plans that buy nothing.</summary>
    [Fact]
    public void WhereNothingIsBoughtTheRackIsMeasured()
    {
        NestSpec spec = SawPieces.Spec(
            SawPieces.Board("B-01", 2400, WideMm),
            SawPieces.Board("B-02", 1300, WideMm),
            Bought("Y-1", 1250, WideMm)
        );
        NestPlan plan = Planned.Lawful(
            spec,
            [SawPieces.Rectangle("S1-01", 600, WideMm), SawPieces.Rectangle("S1-02", 600, WideMm)]
        );
        Assert.Equal(NestMeasure.Area, plan.Measure);
        Assert.Equal("B-02", Assert.Single(plan.Boards).Id);
        Assert.Equal(130_000, plan.Value, 1e-6);
        Assert.Equal(130_000, plan.LowerBound, 1);
    }

    /// <summary>A plan of some of the pieces is no measure for a plan of all of them.</summary>
    [Fact]
    public void NothingIsProvedWhilePiecesAreMissing()
    {
        NestPlan plan = Planned.Lawful(
            SawPieces.Spec(SawPieces.Board("B-01", 1300, WideMm)),
            [SawPieces.Rectangle("S1-01", 1200, WideMm), SawPieces.Rectangle("S1-02", 1200, WideMm)]
        );
        Assert.Single(plan.Unplaced);
        Assert.Equal(0, plan.LowerBound);
        Assert.Equal(double.PositiveInfinity, plan.GapPercent);
    }

    /// <summary>By area and by price, on boards of one lane and of two, rectangles and slanting pieces of one angle: every plan in rows is tried.</summary>
    [Fact]
    public void NoPlanIsBetterThanWhatIsProved() =>
        Gen.Select(
                Gen.Select(
                    Gen.Int[300, 1500].Array[2, 6],
                    Gen.Select(Gen.Int[600, 2600], Gen.Int[1, 2]).Array[0, 3],
                    Gen.Select(Gen.Int[1500, 3600], Gen.Int[1, 2], Gen.Int[5, 60]).Array[1, 2]
                ),
                Gen.Int[0, 4],
                Gen.Bool,
                Gen.Bool
            )
            .Sample(
                (boards, kerf, slanting, byPrice) =>
                {
                    (int[] lengths, (int, int)[] rack, (int, int, int)[] yard) = boards;
                    NestSpec spec = SawPieces.Spec([
                        .. rack.Select(
                            (b, i) =>
                                SawPieces.Board(
                                    FormattableString.Invariant($"B-0{i + 1}"),
                                    b.Item1,
                                    Width(b.Item2, kerf)
                                )
                        ),
                        .. yard.Select(
                            (b, i) =>
                                Bought(
                                    FormattableString.Invariant($"Y-{i + 1}"),
                                    b.Item1,
                                    Width(b.Item2, kerf)
                                ) with
                                {
                                    Price = b.Item3,
                                }
                        ),
                    ]) with
                    {
                        KerfMm = kerf,
                        ProudMm = 0,
                        Objective = byPrice ? NestObjective.Cost : NestObjective.Area,
                        Rounds = 6,
                    };
                    ImmutableArray<SawPiece> pieces =
                    [
                        .. lengths.Select(
                            (l, i) =>
                                slanting
                                    ? SawPieces.Parallelogram(
                                        FormattableString.Invariant($"S1-0{i + 1}"),
                                        l,
                                        WideMm,
                                        45
                                    )
                                    : SawPieces.Rectangle(
                                        FormattableString.Invariant($"S1-0{i + 1}"),
                                        l,
                                        WideMm
                                    )
                        ),
                    ];
                    // Along the row a kerf takes kerf/sin 45°, and the row is longer than its edges by the lean of one end.
                    double apart = slanting ? kerf * Math.Sqrt(2) : kerf,
                        lean = slanting ? WideMm : 0;
                    double[] sizes = [.. lengths.Select(l => l + apart).OrderDescending()];
                    (double Bought, double Area)? least = EveryShare.Least(
                        sizes,
                        [
                            .. spec.Boards.Select(b =>
                                (
                                    b.LengthMm + apart - lean,
                                    Lanes: b.WidthMm > 1.5 * WideMm ? 2 : 1,
                                    b.OnHand,
                                    Asked: rack.Length > 0 && b.OnHand ? 0 : spec.CostOf(b),
                                    b.AreaMm2
                                )
                            ),
                        ]
                    );
                    NestPlan plan = Planned.Lawful(spec, pieces);
                    if (least is not { } best)
                    {
                        Assert.NotEmpty(plan.Unplaced);
                        return;
                    }

                    Assert.Empty(plan.Unplaced);
                    double optimum = best.Bought > 0 ? best.Bought : best.Area;
                    Assert.Equal(best.Bought > 0, plan.Measure.IsBought());
                    Assert.True(
                        plan.LowerBound <= optimum * (1 + 1e-9),
                        $"a bound of {plan.LowerBound}, and {optimum} is possible"
                    );
                    Assert.True(
                        plan.Value <= optimum * (1 + (plan.GapPercent / 100) + 1e-6),
                        $"{plan.Value} with a gap of {plan.GapPercent} %, and {optimum} is possible"
                    );
                    Assert.True(plan.Value >= optimum * (1 - 1e-9));
                },
                iter: Long.Runs(40, 2000),
                threads: 2
            );

    private static double Width(int lanes, double kerf) =>
        (lanes * WideMm) + ((lanes - 1) * kerf) + (lanes == 2 ? 1 : 0);

    private static StockBoard Bought(string id, double length, double width) =>
        SawPieces.Board(id, length, width) with
        {
            OnHand = false,
            Count = null,
        };
}
