using System.Collections.Immutable;
using CsCheck;
using PlankFit.Export.AsBuilt;
using PlankFit.Export.Views;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>
/// Planks are sawn, and then the job changes: there is always a plan; what is sawn keeps every digit or is named with what is amiss; the rest is laid on from its
/// edges, and keeps every law of a bottom.
/// </summary>
public sealed class SawnThenChangedTests
{
    internal static readonly Gen<Job> Tender = Gen.Const(0).Select(_ => DemoPlans.Of("tender").Job);

    private static readonly Gen<(int Layer, int From, int Count, int Step, int Sides)> Which =
        Gen.Select(Gen.Int[0, 2], Gen.Int[0, 1000], Gen.Int[1, 12], Gen.Int[1, 3], Gen.Int[0, 2]);

    [Fact]
    public void TheTenderIsPlannedWhateverChanges() => Hold(Tender, LongRuns.Of(1, 3));

    [Fact]
    public void HullsByChanceArePlannedWhateverChanges() => Hold(RandomHull.Gen, LongRuns.Of(1, 3));

    /// <summary>The launch has keel, joints, what lies behind, fastenings and timber, all of which are worked out on the planks that are sawn as on the others.</summary>
    internal static void HoldTheLaunch(int draws) =>
        FixedDraws.Always(
            Gen.Select(
                Gen.Const(0).Select(_ => DemoPlans.Of("survey-launch").Job),
                Which,
                ChangeByChance.Any
            ),
            draws,
            t => Holds(t.Item1, t.Item2, t.Item3),
            t => $"{t.Item1.Name} {t.Item2} {t.Item3.What}"
        );

    private static void Hold(Gen<Job> jobs, int draws) =>
        FixedDraws.Keep(
            Gen.Select(jobs, Which, ChangeByChance.Any),
            draws,
            10 * draws,
            t => Holds(t.Item1, t.Item2, t.Item3),
            t => $"{t.Item1.Name} {t.Item2} {t.Item3.What}"
        );

    internal static void HoldOnce(Gen<Job> jobs, string seed) =>
        Gen.Select(jobs, Which, ChangeByChance.Any)
            .Sample(t => Holds(t.Item1, t.Item2, t.Item3), seed: seed, iter: 1, threads: 1);

    private static void Holds(
        Job job,
        (int Layer, int From, int Count, int Step, int Sides) which,
        ChangeByChance change
    )
    {
        if (BottomPlanner.Plan(job).Plan is not { } drawn)
        {
            return;
        }

        PlankLayerPlan[] layers = [.. drawn.PlankLayers];
        ImmutableArray<SawnPlank> sawn =
        [
            .. Sawn(drawn, layers[which.Layer % layers.Length], which).DistinctBy(c => c.Id),
        ];
        Job changed = change.Made(job);

        // As the reader does: planks go with their layer.
        sawn = SawnLayers
            .Numbered(
                sawn,
                [.. changed.Layers.OfType<PlankLayerSpec>().Select(l => l.Name)],
                "record"
            )
            .Planks;
        PlanResult result = BottomPlanner.Plan(
            changed with
            {
                AsBuilt = changed.AsBuilt with { Sawn = sawn },
            }
        );
        if (result.Plan is not { } plan)
        {
            // What cannot be planned with nothing sawn cannot be planned with planks sawn; and nothing else is refused.
            PlanResult bare = BottomPlanner.Plan(changed);
            Assert.True(
                bare.Plan is null,
                string.Join("\n", result.Findings.Select(f => $"{f.Where}: {f.Message}"))
            );
            return;
        }

        List<string> broken = SawnLaws.Broken(plan, sawn);
        Assert.True(broken.Count == 0, string.Join("\n", broken.Take(6)));
        Drawn(plan);
    }

    private static IEnumerable<SawnPlank> Sawn(
        BottomPlan plan,
        PlankLayerPlan layer,
        (int Layer, int From, int Count, int Step, int Sides) which
    )
    {
        for (int i = 0; i < which.Count; i++)
        {
            int at = (which.From + (i * which.Step)) % layer.Starboard.Length;
            if (which.Sides != 1)
            {
                yield return RecordsOfSawn.Of(plan, layer.Starboard[at].Id);
            }

            if (which.Sides != 0)
            {
                yield return RecordsOfSawn.Of(plan, layer.Port[at].Id);
            }
        }
    }

    /// <summary>What is drawn on the hull, where points of sawn planks were looked for on a surface that they are no longer on.</summary>
    private static void Drawn(BottomPlan plan)
    {
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            Assert.NotEmpty(BottomPlanView.Of(plan, layer).Shapes);
            Assert.NotEmpty(ShellExpansion.Of(plan, layer).Shapes);
        }

        Assert.NotEmpty(AsBuiltPages.Of(plan, plan.AsBuilt!));
    }
}
