using System.Collections.Immutable;
using PlankFit.Planking;
using PlankFit.Tests.Planking.Keels;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Standing;

/// <summary>Sawn planks go with their layer, and a layer goes on heading as the most of its sawn planks do.</summary>
public sealed class CutLayersTests
{
    private static readonly Lazy<BottomPlan> Plan = new(() =>
        WholeBottomTests.Planned(PlaneBottom.Job(20, 0, 9, 1, OffsetsAreTo.Inside))
    );

    /// <summary>The inner layer alone, turned.</summary>
    private static readonly Lazy<BottomPlan> Turned = new(() =>
    {
        Job job = Plan.Value.Job;
        return WholeBottomTests.Planned(
            job with
            {
                Layers = [(PlankLayerSpec)job.Layers[0] with { Heads = Heads.Forward }],
            }
        );
    });

    [Fact]
    public void A_layer_put_in_below_moves_the_numbers_and_is_told()
    {
        (ImmutableArray<CutPlank> planks, ImmutableArray<Finding> findings) = CutLayers.Numbered(
            [Sawn("S1-20"), Sawn("P2-07"), Sawn("S1-21")],
            ["inner", "new", "outer"],
            "record"
        );
        Assert.Equal(["S1-20", "P3-07", "S1-21"], planks.Select(p => p.Id.ToString()));
        Finding told = Assert.Single(findings);
        Assert.Equal((Severity.Warning, "record"), (told.Severity, told.Where));
        Assert.StartsWith(
            "layer outer was number 2 when planks of it were sawn, and is number 3 now: P2-07 is P3-07;",
            told.Message
        );
    }

    [Fact]
    public void Where_the_layers_are_what_they_were_nothing_is_said()
    {
        ImmutableArray<CutPlank> sawn = [Sawn("S1-20"), Sawn("P2-07")];
        (ImmutableArray<CutPlank> planks, ImmutableArray<Finding> findings) = CutLayers.Numbered(
            sawn,
            ["inner", "outer"],
            "record"
        );
        Assert.Equal(sawn.AsEnumerable(), planks);
        Assert.Empty(findings);
    }

    /// <summary>A plank whose layer the job no longer names keeps its number; where that is then another's, the record is refused.</summary>
    [Fact]
    public void Two_planks_of_one_number_are_refused()
    {
        CutPlank nameless = Sawn("S2-20") with { SawnFor = null };
        (ImmutableArray<CutPlank> planks, ImmutableArray<Finding> findings) = CutLayers.Numbered(
            [Sawn("S1-20"), nameless],
            ["new", "inner"],
            "record"
        );
        Assert.Empty(planks);
        Assert.Equal(Severity.Error, Assert.Single(findings).Severity);
        Assert.StartsWith("two planks would be S2-20", findings[0].Message);
    }

    /// <summary>The inner layer heads aft as drawn and is turned in the job: two of three sawn planks are more than half, one of two is not.</summary>
    [Theory]
    [InlineData(1, 0, true)]
    [InlineData(2, 1, true)]
    [InlineData(1, 1, false)]
    [InlineData(1, 2, false)]
    public void A_layer_goes_on_heading_as_the_most_of_its_sawn_planks(
        int aft,
        int forward,
        bool turnedBack
    )
    {
        Job turned = Turned.Value.Job;
        CutPlank[] sawn =
        [
            .. Enumerable.Range(0, aft).Select(i => Sawn($"S1-{18 + i:00}")),
            .. Enumerable
                .Range(0, forward)
                .Select(i => SawnPlanks.Of(Turned.Value, $"S1-{24 + i:00}")),
        ];
        BottomPlan plan = WholeBottomTests.Planned(
            turned with
            {
                Standing = StandingSpec.None with { Cut = [.. sawn] },
            }
        );
        Assert.Equal(turnedBack ? Heads.Aft : Heads.Forward, plan.PlankLayers.First().Planks.Heads);
        Assert.Equal(
            turnedBack ? aft : forward,
            plan.PlankLayers.First().Starboard.Count(p => p.IsCut)
        );
        Finding[] across =
        [
            .. plan.Findings.Where(f => f.Message.Contains("across the other planks")),
        ];
        string sense = turnedBack ? "forward" : "aft";
        Assert.Equal(turnedBack ? forward : aft, across.Length);
        Assert.All(across, f => Assert.StartsWith($"it is sawn heading {sense},", f.Message));
        Finding[] layer =
        [
            .. plan.Findings.Where(f => f.Where == "layer inner" && f.Severity == Severity.Warning),
        ];
        Assert.Equal(turnedBack ? 1 : 0, layer.Length);
        Assert.All(
            layer,
            f =>
                Assert.StartsWith(
                    $"the job has it head forward, and {aft} plank(s) of it are sawn heading aft",
                    f.Message
                )
        );
    }

    private static CutPlank Sawn(string id) => SawnPlanks.Of(Plan.Value, id);
}
