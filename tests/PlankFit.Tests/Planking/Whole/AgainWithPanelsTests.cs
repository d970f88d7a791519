using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Whole;

/// <summary>Topsides are planned again as the bottom is, and a layer goes by those beneath it: the plan is that of a whole planning.</summary>
public sealed class AgainWithPanelsTests
{
    private static readonly BottomPlan Day = DemoPlans.Of("day-launch");

    public static TheoryData<string> Changes =>
        LongRuns.Asked ? [.. Changed.Keys] : [.. Changed.Keys.Where((_, i) => i % 8 == 0)];

    private static readonly Dictionary<string, Func<Job, Job>> Changed = new()
    {
        ["a topside's angle"] = j =>
            Topside(j, p => Layer(p, 1, l => l with { AngleDegrees = 47 })),
        ["a topside's ends"] = j =>
            Topside(j, p => p with { Ends = p.Ends with { Lower = EndRule.Fit } }),
        ["a topside's lines"] = j => Lined(j),
        ["no topside"] = j => j with { Panels = [] },
        ["the bottom's angle"] = j =>
            j with
            {
                Planking = Layer(j.Planking, 0, l => l with { AngleDegrees = 47 }),
            },
        ["the bottom staggered"] = Staggered,
    };

    [Theory]
    [MemberData(nameof(Changes))]
    public void ThePlanIsThatOfAWholePlanning(string change)
    {
        Job changed = Changed[change](Day.Job);
        Held(Day.Job, changed);
        Held(changed, Day.Job);
    }

    /// <summary>The upper of two layers on one diagonal takes its seams from the lower one, whatever it says itself.</summary>
    [Fact]
    public void AStaggeredLayerGoesByTheOneBeneath()
    {
        Job staggered = Staggered(Day.Job);
        Held(
            staggered,
            staggered with
            {
                Planking = Layer(staggered.Planking, 0, l => l with { AngleDegrees = 47 }),
            }
        );
        Held(
            staggered,
            staggered with
            {
                Planking = Layer(staggered.Planking, 0, l => l with { MasterMm = 3000 }),
            }
        );
    }

    [Fact]
    public void ATopsideThatIsNotTouchedStays()
    {
        Job changed = Changed["the bottom's angle"](Day.Job);
        BottomPlan again = BottomPlanner
            .Again(Day, changed, null, TestContext.Current.CancellationToken)
            .Plan!;
        Assert.All(
            Day.Others[0].PlankLayers.Zip(again.Others[0].PlankLayers),
            l => Assert.Same(l.First, l.Second)
        );
    }

    private static void Held(Job before, Job after)
    {
        BottomPlan one = WholeBottomTests.Planned(before);
        PlanResult whole = BottomPlanner.Plan(after, null, TestContext.Current.CancellationToken),
            again = BottomPlanner.Again(one, after, null, TestContext.Current.CancellationToken);
        Assert.Null(SamePlan.Difference(whole, again));
    }

    private static Job Topside(Job job, Func<PlankingJob, PlankingJob> change) =>
        job with
        {
            Panels = [change(job.Panels[0])],
        };

    private static PlankingJob Layer(
        PlankingJob job,
        int at,
        Func<PlankLayerSpec, PlankLayerSpec> change
    ) => job with { Layers = job.Layers.SetItem(at, change((PlankLayerSpec)job.Layers[at])) };

    /// <summary>Both skins on one diagonal, the outer one's seams half a width beside the inner one's.</summary>
    private static Job Staggered(Job job) =>
        job with
        {
            Planking = Layer(
                job.Planking,
                1,
                l => l with { Heads = ((PlankLayerSpec)job.Layers[0]).Heads, Stagger = 0.5 }
            ),
        };

    /// <summary>The sheer 3 mm up at one station.</summary>
    private static Job Lined(Job job)
    {
        OffsetLine sheer = job.Offsets.Find(job.Panels[0].Hull.Panel.Upper)!;
        OffsetTable table = job.Offsets with
        {
            Lines = job.Offsets.Lines.Replace(
                sheer,
                sheer with
                {
                    HeightsMm = sheer.HeightsMm.SetItem(4, sheer.HeightsMm[4] + 3),
                }
            ),
        };
        return Topside(job with { Offsets = table }, p => p with { Offsets = table });
    }
}
