using System.Collections.Immutable;
using CsCheck;
using PlankFit.Export.Cards;
using PlankFit.Export.Shown;
using PlankFit.Export.Whole;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Joints;

/// <summary>Hulls by chance with stock by chance: whatever is pieced keeps the laws, and what is not is told.</summary>
public sealed class JointsByChanceTests
{
    [Fact]
    public void TheLawsHoldOrItIsSaidWhyThereAreNoPieces()
    {
        int draws = LongRuns.Of(5, 100),
            pieced = 0,
            refused = 0;
        Gen.Select(RandomHull.Gen, Gen.Double[0.4, 0.95], Gen.Bool, Gen.Double[0, 300])
            .Sample(
                (job, part, scarf, next) =>
                {
                    PlanResult plain = BottomPlanner.Plan(job);
                    if (plain.Plan is not { } whole)
                    {
                        return;
                    }

                    double longest =
                        part
                        * whole.PlankLayers.SelectMany(l => l.Starboard).Max(p => p.CutLengthMm);
                    JointStock stock = new(
                        longest,
                        longest / 5,
                        scarf ? JointKind.Scarf : JointKind.Butt,
                        8,
                        new(ButtCut.Square, [JointStock.Block, JointStock.LayerBelow], 100, 15),
                        50,
                        []
                    );
                    BottomPlan plan = BottomPlanner
                        .Plan(
                            job with
                            {
                                Joints = new(
                                    stock,
                                    ImmutableDictionary<string, JointStock>.Empty,
                                    [
                                        new(JointRuleKind.NextPlank, next, null, "test"),
                                        new(JointRuleKind.OneBetween, 0, null, "test"),
                                        new(JointRuleKind.SameBacking, null, 0, "test"),
                                        new(JointRuleKind.JointsBelow, 20, null, "test"),
                                        new(JointRuleKind.SeamsBelow, 0, null, "test"),
                                    ]
                                ),
                            }
                        )
                        .Plan!;
                    // A plank that no place divides is left whole and told; the laws are about planks in pieces.
                    if (
                        plan.Findings.Any(f =>
                            f.Message.Contains("left whole", StringComparison.Ordinal)
                        )
                    )
                    {
                        return;
                    }

                    JointLaws.Hold(plan);
                    pieced += plan.Joints.ByPlank.Count;
                    // Nothing tells the sides of these hulls apart: a plank and its twin are drawn once, pieces and all.
                    PlanShown shown = OnPlanks.Of(plan);
                    foreach (PlankLayerPlan layer in plan.PlankLayers)
                    {
                        Assert.Empty(DrawnPlanks.Of(shown, layer, Side.Port));
                        if (plan.Joints.Of(layer.Number, Side.Starboard) is null)
                        {
                            refused++;
                            Assert.Contains(
                                plan.Findings,
                                f =>
                                    f.Severity == Severity.Warning
                                    && f.Message.Contains(
                                        "cannot be pieced",
                                        StringComparison.Ordinal
                                    )
                            );
                        }
                    }
                },
                iter: draws,
                threads: 1,
                seed: "0002bqwHRKf3"
            );
        Assert.True(pieced > 5 * draws, $"{pieced} planks in pieces, {refused} layers refused");
    }
}
