using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>Cloth that is laid by hand and not cut by the plan has no session; once its hours are written down, what comes after it is planned as after any other.</summary>
public sealed class HandLaidClothTests
{
    private const string Core = "core cloth",
        Outside = "hand cloth";

    private static readonly ImmutableArray<GlueDone> Inner =
    [
        .. GluedLaunch
            .Plan.PlankLayers.First()
            .Starboard.Concat(GluedLaunch.Plan.PlankLayers.First().Port)
            .Select(p => new GlueDone(p.Id, null, p.Side, 900)),
    ];

    private static GlueDone Wet(string cloth, Side side, double at, int coat = 0) =>
        new(null, cloth, side, at) { Coat = coat };

    private static GluePlan Planned(Job job, params ImmutableArray<GlueDone> done) =>
        GluedLaunch.Of(job with { Glue = job.Glue! with { Done = new(done) } }).Glue!;

    /// <summary>By chance: the hours of all that comes after are those of the same cloth cut by the plan and on at the same time.</summary>
    [Theory]
    [InlineData(3, 100)]
    [InlineData(6, 0)]
    [InlineData(12, 700)]
    [InlineData(14, 1441)]
    public void OnceItsHoursAreKnownTheRestIsPlanned(int seed, double apart)
    {
        Job job = GluedLaunch.Job(seed);
        GlueDone[] done =
        [
            .. Inner,
            Wet(Core, Side.Port, 5000),
            Wet(Core, Side.Starboard, 5000 + apart),
        ];
        GluePlan cut = Planned(job, [.. done]),
            byHand = Planned(job with { Sheathing = [] }, [.. done]);
        Assert.Equal((5000, 5000 + apart), byHand.Stages.Single(s => s.Layer == Core).OnAt);
        Assert.Equal(cut.NotPlanned, byHand.NotPlanned);
        Assert.Equal(Told(cut), Told(byHand));
        Assert.NotEmpty(Told(byHand));
        Assert.DoesNotContain(
            byHand.Findings,
            f => f.Message.Contains("Write into", StringComparison.Ordinal)
        );

        static IEnumerable<string> Told(GluePlan plan) =>
            plan
                .Stages.SelectMany(s => s.Batches)
                .Select(b =>
                    FormattableString.Invariant(
                        $"{b.Name} {b.Layer} {b.Side} {b.MixAt} {b.Grams} {string.Join(' ', b.Planks.Select(p => p.Id))}"
                    )
                );
    }

    /// <summary>One side is not enough: the row of the other is asked for, and no other.</summary>
    [Fact]
    public void OfOneSideTheOtherIsAskedFor()
    {
        Job job = GluedLaunch.Job(3);
        GluePlan half = Planned(
            job with
            {
                Sheathing = [],
            },
            [.. Inner, Wet(Core, Side.Port, 5000)]
        );
        Assert.Contains("outer", half.NotPlanned);
        Finding asked = Assert.Single(
            half.Findings,
            f => f.Message.Contains("Write into progress.csv", StringComparison.Ordinal)
        );
        Assert.Contains(Core + " starboard", asked.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Core + " port", asked.Message, StringComparison.Ordinal);
    }

    /// <summary>Its hours are known, and no resin says when it has cured.</summary>
    [Fact]
    public void WithoutResinNobodyKnowsWhenItHasCured()
    {
        Job job = GluedLaunch.Job(3);
        GluePlan plan = Planned(
            job with
            {
                Sheathing = [],
                Glue = job.Glue! with { Resin = null, Glue = job.Glue!.BetweenLayers },
            },
            [.. Inner, Wet(Core, Side.Port, 5000), Wet(Core, Side.Starboard, 5100)]
        );
        Assert.Contains("outer", plan.NotPlanned);
        Assert.Contains(
            plan.Findings,
            f => f.Message.Contains("Add [resin]", StringComparison.Ordinal)
        );
    }

    /// <summary>Planks on it say that it is on, at an hour that nobody wrote: the rest goes on it once it has cured and is keyed.</summary>
    [Fact]
    public void UnderPlanksThatAreDownItIsTakenAsOn()
    {
        Job job = GluedLaunch.Job(3);
        PlankId first = GluedLaunch.Plan.PlankLayers.Last().Starboard[0].Id;
        GluePlan plan = Planned(
            job with
            {
                Sheathing = [],
            },
            [.. Inner, new(first, null, first.Side, 6000)]
        );
        GlueStage outer = plan.Stages.Single(s => s.Layer == "outer");
        Assert.Contains(outer.Before, h => h.What == "the cloth has cured");
        Assert.All(outer.Batches, b => Assert.True(b.MixAt > 6000));
        Assert.DoesNotContain("outer", plan.NotPlanned);
    }

    /// <summary>Of a cloth outside nobody knows how much there is of it: its coats have no session, and are asked for; once they are on, fairing is planned.</summary>
    [Fact]
    public void ItsCoatsAreAskedForAndThenFairingIsPlanned()
    {
        Job launch = GluedLaunch.Job(3);
        Job job = launch with
        {
            Planking = launch.Planking with
            {
                Layers =
                [
                    .. launch.Layers.OfType<PlankLayerSpec>(),
                    new ClothLayerSpec(Outside, 0.5),
                ],
            },
            Sheathing = [],
            Glue = launch.Glue! with
            {
                WeaveGsm = new(100, 200, 300),
                WeaveCoats = 2,
                Fairing = new FairingSpec(0.8, 0.3),
                Fillets = [],
            },
        };
        GlueDone[] cloth = [Wet(Outside, Side.Starboard, 9000), Wet(Outside, Side.Port, 9100)],
            coat = [Wet(Outside, Side.Starboard, 9500, 1), Wet(Outside, Side.Port, 9600, 1)],
            last = [Wet(Outside, Side.Starboard, 9900, 2), Wet(Outside, Side.Port, 9950, 2)];
        GlueDone[] planks =
        [
            .. GluedLaunch
                .Of(job)
                .PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
                .Select(p => new GlueDone(p.Id, null, p.Side, 900)),
        ];
        Assert.Equal(["fairing"], Planned(job, [.. planks]).NotPlanned);
        GluePlan on = Planned(job, [.. planks, .. cloth]);
        Assert.Equal(
            [$"weave coat 1 of 2, {Outside}", $"weave coat 2 of 2, {Outside}", "fairing"],
            on.NotPlanned
        );
        GluePlan once = Planned(job, [.. planks, .. cloth, .. coat]);
        Assert.Equal([$"weave coat 2 of 2, {Outside}", "fairing"], once.NotPlanned);
        Assert.Contains(
            once.Findings,
            f =>
                f.Message.Contains(
                    $"{Outside} coat 2 starboard, {Outside} coat 2 port",
                    StringComparison.Ordinal
                )
        );
        GluePlan twice = Planned(job, [.. planks, .. cloth, .. coat, .. last]);
        Assert.Empty(twice.NotPlanned);
        GlueStage fairing = twice.Stages.Single(s => s.Layer == "fairing");
        Assert.All(fairing.Batches, b => Assert.True(b.MixAt > 9950));
        Assert.NotEmpty(fairing.Batches);
    }

    /// <summary>The last of all, laid by hand: it has cured so long after its later side, by a clock that is the same in any warmth.</summary>
    [Fact]
    public void ItHasCuredByItsLaterSide()
    {
        Job launch = GluedLaunch.Job(3);
        Mix resin = launch.Glue!.Resin!;
        Job job = launch with
        {
            Planking = launch.Planking with
            {
                Layers =
                [
                    .. launch.Layers.OfType<PlankLayerSpec>(),
                    new ClothLayerSpec(Outside, 0.5),
                ],
            },
            Sheathing = [],
            Glue = launch.Glue with
            {
                Resin = resin with
                {
                    Clocks = resin.Clocks with
                    {
                        Sandable = ClockLaw.Through([new(10, 600), new(30, 600)]),
                    },
                },
                WeaveGsm = null,
                Fairing = null,
                Fillets = [],
            },
        };
        GlueDone[] planks =
        [
            .. GluedLaunch
                .Of(job)
                .PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
                .Select(p => new GlueDone(p.Id, null, p.Side, 900)),
        ];
        GlueStage cloth = Planned(
            job,
            [.. planks, Wet(Outside, Side.Port, 5000), Wet(Outside, Side.Starboard, 5101)]
        )
            .Stages.Single(s => s.Layer == Outside);
        Assert.Equal(5101 + 600, cloth.After.Single(h => h.What == "cured").NotBefore);
    }

    /// <summary>A cloth that is cut by the plan, over one that is not: as a skin would, it waits for the hour of what lies under it.</summary>
    [Fact]
    public void AClothOverItWaitsAsWell()
    {
        Job launch = GluedLaunch.Job(3);
        Job job = launch with
        {
            Planking = launch.Planking with
            {
                Layers =
                [
                    .. launch.Layers.Take(1),
                    new ClothLayerSpec("first", 0.5),
                    .. launch.Layers.Skip(1),
                ],
            },
        };
        GluePlan plan = Planned(job, Inner);
        Assert.Equal([Core, "outer"], plan.NotPlanned.Take(2));
        GluePlan known = Planned(
            job,
            [.. Inner, Wet("first", Side.Starboard, 5000), Wet("first", Side.Port, 5100)]
        );
        GlueStage core = known.Stages.Single(s => s.Layer == Core);
        Assert.NotEmpty(core.Batches);
        Assert.All(core.Batches, b => Assert.True(b.MixAt >= 5100));
    }
}
