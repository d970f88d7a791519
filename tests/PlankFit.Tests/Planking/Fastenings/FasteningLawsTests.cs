using System.Collections.Immutable;
using CsCheck;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>The rules hold on the demos and on hulls, timbers and rules by chance.</summary>
public sealed class FasteningLawsTests
{
    [Fact]
    public void TheLaunchKeepsTheRules()
    {
        BottomPlan plan = DemoPlans.Of("survey-launch");
        Assert.Empty(FasteningLaws.Broken(plan));
        Assert.All(
            plan.Fastenings!.Layers,
            l =>
                Assert.True(
                    plan.Fastenings.Totals.Where(t => t.Layer == l.Layer).Sum(t => t.Count) > 400
                )
        );
    }

    [Fact]
    public void JobsByChanceKeepTheRules()
    {
        int draws = LongRuns.Of(5, 60),
            points = 0,
            plans = 0;
        Gen.Select(RandomHull.Gen, Behind, Wish, Wish)
            .Sample(
                (job, behind, wish, second) =>
                {
                    PlankLayerSpec[] layers = job.Layers.OfType<PlankLayerSpec>().ToArray();
                    PlanResult result = BottomPlanner.Plan(
                        job with
                        {
                            Framing = behind,
                            Fastenings = new(
                                wish,
                                layers.Length > 1
                                    ? ImmutableDictionary<string, FasteningSettings>.Empty.Add(
                                        layers[1].Name,
                                        second
                                    )
                                    : ImmutableDictionary<string, FasteningSettings>.Empty,
                                40,
                                ImmutableDictionary<string, double>.Empty,
                                10
                            ),
                        }
                    );
                    if (result.Plan is not { } plan)
                    {
                        return;
                    }

                    Interlocked.Increment(ref plans);
                    Interlocked.Add(ref points, plan.Fastenings!.Totals.Sum(t => t.Count));
                    List<string> broken = FasteningLaws.Broken(plan);
                    Assert.True(broken.Count == 0, string.Join("\n", broken.Take(8)));
                },
                iter: draws,
                threads: 2
            );
        Shares.AtLeast(0.8, plans, draws);
        Assert.True(points >= 80 * plans, $"{points} points of {plans} plans");
    }

    /// <summary>Without anything on one side only, port is fastened as starboard's mirror image.</summary>
    [Fact]
    public void PortIsTheMirrorImage()
    {
        Job job = DemoPlans.Of("survey-launch").Job;
        BottomPlan plan = WholeBottomTests.Planned(
            job with
            {
                Framing = [.. job.Framing.Where(b => b.Only is null)],
            }
        );
        int compared = 0;
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            foreach ((Plank s, Plank p) in layer.Starboard.Zip(layer.Port))
            {
                ImmutableArray<Fastening> to = plan.Fastenings!.On(s.Id)!.Points,
                    port = plan.Fastenings.On(p.Id)!.Points;
                Assert.Equal(to.Length, port.Length);
                foreach ((Fastening a, Fastening b) in to.Zip(port))
                {
                    Assert.Equal(a with { At = default }, b with { At = default });
                    // Places are looked for in steps, between outlines thinned by 0.02 mm from opposite ends; where two rules meet at a small angle that is a few tenths.
                    Assert.Equal(a.At.X, b.At.X, 0.3);
                    Assert.Equal(a.At.Y, -b.At.Y, 0.3);
                    compared++;
                }
            }
        }

        Assert.True(compared > 1000);
    }

    private static Gen<ImmutableArray<FramingSpec>> Behind =>
        Gen.Select(
                Gen.Enum<FramingKind>(),
                Gen.Int[0, 2],
                Gen.Double[0.05, 0.95],
                Gen.Double[20, 90]
            )
            .Array[1, 5]
            .Select(all =>
                all.Select(
                        (b, i) =>
                            new FramingSpec(
                                $"thing {i}",
                                b.Item1,
                                b.Item2 switch
                                {
                                    0 => new FramingLine.FromKeel(b.Item3 * 700),
                                    1 => new FramingLine.FromChine(b.Item3 * 500),
                                    _ => new FramingLine.AtPosition(b.Item3 * 5000),
                                },
                                b.Item4,
                                null,
                                null
                            )
                    )
                    .ToImmutableArray()
            );

    private static Gen<FasteningSettings> Wish =>
        Gen.Select(
                Gen.Enum<FasteningKind>(),
                Gen.Double[25, 150],
                Gen.Double[5, 30],
                Gen.Double[5, 40],
                Gen.Double[2, 20],
                Gen.Double[3, 25],
                Gen.Double[0, 15]
            )
            .Select(
                (kind, spacing, edge, end, margin, miss, below) =>
                    new FasteningSettings
                    {
                        Kind = kind,
                        SpacingMm = spacing,
                        EdgeMm = edge,
                        EndMm = end,
                        MarginMm = margin,
                        MissMm = miss,
                        BelowMm = below,
                        VentMm = 2 * spacing,
                    }
            );
}
