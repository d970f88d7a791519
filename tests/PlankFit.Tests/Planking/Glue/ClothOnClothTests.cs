using System.Collections.Immutable;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>A cloth on another cloth goes on while that still bonds, or else once it has cured, is washed of blush, keyed and dry; never on bare trust.</summary>
public sealed class ClothOnClothTests
{
    private const string Second = "second cloth";

    /// <summary>The launch with another cloth on the one between her skins.</summary>
    private static Job Job(int seed)
    {
        Job launch = GluedLaunch.Job(seed);
        string core = launch.Layers.OfType<ClothLayerSpec>().Single().Name;
        ImmutableArray<LayerSpec> layers =
        [
            .. launch.Layers.SelectMany(l =>
                l.Name == core ? new[] { l, new ClothLayerSpec(Second, 0.5) } : [l]
            ),
        ];
        return launch with
        {
            Planking = launch.Planking with { Layers = layers },
            Sheathing =
            [
                .. launch
                    .Sheathing.Append(launch.Sheathing[0] with { Layer = Second })
                    .Select(s => s with { FirstAlong = new FirstLine.Straight(0.5, 0) }),
            ],
            Joints = null,
            Fastenings = null,
            SettingUp = null,
            Structure = null,
        };
    }

    private static readonly Lazy<Job> Asked = new(() => Job(3));

    private static readonly Lazy<BottomPlan> Laid = new(() => GluedLaunch.Of(Asked.Value));

    private static BottomPlan With(Func<GlueSpec, GlueSpec> change) =>
        BottomPlanner
            .Again(Laid.Value, Asked.Value with { Glue = change(Asked.Value.Glue!) })
            .Plan!;

    /// <summary>No window, or one that is over before a side is on: cured, washed, keyed, dry, in this order and each with its hour.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void PastItsWindowItIsKeyed(bool window)
    {
        BottomPlan plan = With(spec =>
            spec with
            {
                Resin = spec.Resin! with
                {
                    Clocks = spec.Resin.Clocks with
                    {
                        Recoat = window ? new(Always(500), Always(501)) : null,
                    },
                },
            }
        );
        GlueLaws.Hold(plan);
        GlueStage second = plan.Glue!.Stages.Single(s => s.Layer == Second);
        Assert.Equal(
            [
                "the cloth has cured",
                "stitching and ridges are scraped off",
                "washed of blush, and of any water or soap used to slick it",
                "keyed: dull all over, dust off",
                "dry",
            ],
            second.Before.Take(5).Select(h => h.What)
        );
        double?[] hours = [.. second.Before.Take(5).Select(h => h.NotBefore)];
        Assert.True(hours[0] < hours[3] && hours[3] + 60 <= hours[4] + 1e-9);
        Assert.All(second.Batches, b => Assert.True(b.MixAt >= hours[4]));
        Assert.DoesNotContain(
            second.Before,
            h => h.What.Contains("the wood below", StringComparison.Ordinal)
        );
    }

    /// <summary>Within the window nothing is washed or keyed, and its two ends are said.</summary>
    [Fact]
    public void WithinItsWindowNothingIsTouched()
    {
        BottomPlan plan = With(spec =>
            spec with
            {
                Resin = spec.Resin! with
                {
                    Clocks = spec.Resin.Clocks with { Recoat = new(Always(60), Always(6000)) },
                },
            }
        );
        GlueLaws.Hold(plan);
        GlueStage second = plan.Glue!.Stages.Single(s => s.Layer == Second);
        HoldPoint bonds = second.Before[0];
        Assert.NotNull(bonds.NotBefore);
        Assert.NotNull(bonds.NotAfter);
        Assert.DoesNotContain(
            second.Before,
            h => h.What.Contains("keyed: dull", StringComparison.Ordinal)
        );
        Assert.All(
            second.Batches,
            b =>
            {
                Assert.True(b.MixAt >= bonds.NotBefore);
                Assert.True(b.Clocks.OutAt <= bonds.NotAfter);
            }
        );
        // What the first has to wait for is said before the second and not after the first.
        Assert.DoesNotContain(
            plan.Glue.Stages[plan.Glue.Stages.IndexOf(second) - 1].After,
            h => h.What == "cured"
        );
    }

    /// <summary>By chance: products, crews and days of which some reach the window and some do not; no clock, order or hand is broken either way.</summary>
    [Fact]
    public void ByChanceNoClockIsBroken()
    {
        int bonds = 0,
            keyed = 0,
            draws = LongRuns.Of(6, 400);
        for (int seed = 1; seed <= draws; seed++)
        {
            BottomPlan plan = With(_ => GluedLaunch.Job(seed).Glue!);
            GlueLaws.Hold(plan);
            if (plan.Glue!.Stages.FirstOrDefault(s => s.Layer == Second) is not { } second)
            {
                Assert.True(plan.Glue.NotPlanned.Contains(Second) && !plan.Glue.Findings.IsEmpty);
                continue;
            }

            bool washed = second.Before.Any(h =>
                h.What.StartsWith("washed", StringComparison.Ordinal)
            );
            (bonds, keyed) = washed ? (bonds, keyed + 1) : (bonds + 1, keyed);
        }

        Assert.True(bonds > 0 && keyed > 0, $"{bonds} bond and {keyed} are keyed");
    }

    /// <summary>Nobody says when it has cured: neither it nor what comes after is planned, and why is told once.</summary>
    [Fact]
    public void WithoutAClockForCuringItIsNotPlanned()
    {
        BottomPlan plan = With(spec =>
            spec with
            {
                Resin = spec.Resin! with
                {
                    Clocks = spec.Resin.Clocks with { Recoat = null, Sandable = null },
                },
            }
        );
        Assert.Contains(Second, plan.Glue!.NotPlanned);
        Assert.Single(
            plan.Glue.Findings,
            f => f.Message.Contains("must have cured and be keyed", StringComparison.Ordinal)
        );
    }

    private static ClockLaw Always(double minutes) =>
        ClockLaw.Through([new(10, minutes), new(30, minutes)])!;
}
