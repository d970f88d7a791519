using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.App.Planning;

/// <summary>A job planned again with all that it asks for: what a change does not touch is the very same, the plan of cutting with it.</summary>
public sealed class PlannerTests
{
    private static readonly Job Inner = DemoPlans.Of("survey-launch").Job is var job
        ? job with
        {
            Layers = [job.Layers[0]],
            Joints = null,
            Keel = KeelSpec.None,
            Nest = SawPieces.Spec(
                SawPieces.Board("Y-1", 3600, 300) with
                {
                    ThicknessMm = 9,
                    Species = null,
                    OnHand = false,
                    Count = null,
                }
            ) with
            {
                Rounds = 0,
            },
        }
        : null!;

    private static readonly BottomPlan Before = Plan(null, Inner);

    [Fact]
    public void ItHasBoardsForItsPlanks()
    {
        Assert.NotEmpty(Before.Nest!.Boards);
        Assert.Empty(Before.Nest.Unplaced);
    }

    [Fact]
    public void AnotherSpacingKeepsTheNestAndEveryPlank()
    {
        BottomPlan again = Plan(Before, Spaced);
        Assert.Same(Before.Nest, again.Nest);
        Assert.NotSame(Before.Fastenings, again.Fastenings);
        Plank[] were = [.. Planks(Before)],
            are = [.. Planks(again)];
        Assert.Equal(were.Length, are.Length);
        Assert.All(were.Zip(are), p => Assert.Same(p.First, p.Second));
    }

    [Fact]
    public void WhatIsToldIsThatOfAWholePlanning() =>
        Assert.Equal(Told(Plan(null, Spaced)), Told(Plan(Before, Spaced)));

    /// <summary>Stock that is read again is other objects, and the same stock.</summary>
    [Fact]
    public void TheSameStockReadAgainKeepsTheNest()
    {
        NestSpec spec = Inner.Nest!;
        Job read = Inner with
        {
            Name = "Other",
            Nest = spec with
            {
                Boards =
                [
                    .. spec.Boards.Select(b => b with { Id = string.Concat(b.Id.ToCharArray()) }),
                ],
            },
        };
        Assert.Same(Before.Nest, Plan(Before, read).Nest);
    }

    [Fact]
    public void AnotherKerfMakesAnotherNest()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        BottomPlan again = Plan(Before, Inner with { Nest = Inner.Nest! with { KerfMm = 4 } });
        Assert.NotSame(Before.Nest, again.Nest);
        Assert.Equal(4, again.Nest!.Spec.KerfMm);
        Assert.Same(Before.Fastenings, again.Fastenings);
    }

    [Fact]
    public void OtherPlanksMakeAnotherNest()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        Job turned = Inner with
        {
            Layers =
            [
                .. Inner.Layers.Select(l =>
                    l is PlankLayerSpec { Name: "inner" } p ? p with { AngleDegrees = 47 } : l
                ),
            ],
        };
        BottomPlan again = Plan(Before, turned);
        Assert.NotSame(Before.Nest, again.Nest);
        Assert.Equal(Told(Plan(null, turned)), Told(again));
    }

    /// <summary>A plank is sawn: it is left out of the boards, which is told once, and no longer where it is sawn no more.</summary>
    [Fact]
    public void WhatIsSawnIsLeftOutAndToldOnce()
    {
        // Where more is asked for, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        SawnPlank sawn = RecordsOfSawn.Of(Before, Named.Plank("S1-05"));
        BottomPlan cut = Plan(
                Before,
                Inner with
                {
                    AsBuilt = Inner.AsBuilt with { Sawn = [sawn] },
                }
            ),
            spaced = Plan(cut, Spaced with { AsBuilt = Inner.AsBuilt with { Sawn = [sawn] } }),
            back = Plan(cut, Inner);
        const string About = "the plan of cutting";
        Assert.Same(cut.Nest, spaced.Nest);
        Assert.Single(spaced.Findings, f => f.Where == About);
        Assert.DoesNotContain(back.Findings, f => f.Where == About);
        Assert.Equal(Told(Before), Told(back));
    }

    [Fact]
    public void AJobWithoutStockHasNoNest() =>
        Assert.Null(Plan(Before, Inner with { Nest = null }).Nest);

    private static Job Spaced =>
        Inner with
        {
            Fastenings = Inner.Fastenings! with
            {
                Usual = Inner.Fastenings.Usual with { SpacingMm = 60 },
            },
        };

    private static IEnumerable<Plank> Planks(BottomPlan plan) =>
        plan.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port));

    private static string[] Told(BottomPlan plan) =>
        [
            .. plan.Findings.Select(f => $"{f.Severity} {f.Where}: {f.Message}"),
            .. plan.Nest!.Boards.Select(b =>
                $"{b.Id} {string.Join(' ', b.Pieces.Select(p => p.Piece.Id))}"
            ),
        ];

    private static BottomPlan Plan(BottomPlan? before, Job job)
    {
        PlanResult result = Planner.Again(
            before,
            job,
            new Unheard(),
            new Timings(),
            CancellationToken.None
        );
        Assert.NotNull(result.Plan);
        Assert.Equal(result.Plan.Findings, result.Findings);
        return result.Plan;
    }

    private sealed class Unheard : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) { }
    }
}
