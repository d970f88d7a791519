using System.Collections.Immutable;
using CsCheck;
using PlankFit.Nesting;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>The laws of plans of cutting, on jobs by chance.</summary>
public sealed class RandomCuttingTests
{
    [Fact]
    public void EveryPlanKeepsTheLaws() =>
        FixedDraws.Keep(
            RandomCutting.Gen,
            LongRuns.Of(4, 8),
            1000,
            job =>
            {
                NestPlan plan = Planned.Of(job.Spec, job.Pieces);
                Assert.Empty(CutLaws.Broken(plan, job.Pieces));
            }
        );

    /// <summary>With a seed and a fixed effort.</summary>
    [Fact]
    public void TheSameJobGivesTheSamePlan() =>
        RandomCutting.Gen.Sample(
            job =>
            {
                NestPlan one = Planned.Of(job.Spec, job.Pieces),
                    two = Planned.Of(job.Spec, job.Pieces);
                Assert.Equal(
                    one.Boards.SelectMany(b => b.Pieces.Select(p => (b.Id, p))),
                    two.Boards.SelectMany(b => b.Pieces.Select(p => (b.Id, p)))
                );
                Assert.Equal(one.LowerBound, two.LowerBound);
            },
            iter: LongRuns.Of(1, 10),
            threads: 2
        );

    /// <summary>What a plan is held against can be sawn too; twins are not its care.</summary>
    [Fact]
    public void SquareCrosscutsKeepTheLaws() =>
        RandomCutting.Gen.Sample(
            job => SquareCrosscuts(job.Spec, job.Pieces),
            iter: LongRuns.Of(25, 20_000),
            threads: 2
        );

    /// <summary>A draw of chance: an end that is sawn to the line bulges by 6 mm, and beyond it, carried on along its chord, lay the corner of a neighbour.</summary>
    [Fact]
    public void AnEndSawnToTheLineIsCarriedOnClearOfItsNeighbour() =>
        RandomCutting.Gen.Sample(
            job => SquareCrosscuts(job.Spec, job.Pieces),
            seed: "7klAL-LmJ--2",
            iter: 1,
            threads: 1
        );

    private static void SquareCrosscuts(NestSpec spec, ImmutableArray<SawPiece> pieces)
    {
        SquareCutting cuts = SquareCuts.Of(spec, pieces, spec.CostOf, new(default));
        var plan = new NestPlan(
            spec with
            {
                PairsTogether = false,
            },
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
    }
}
