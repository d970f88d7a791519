using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Keel;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>Sawn planks go with their layer, and a layer goes on heading as the most of its sawn planks do.</summary>
public sealed class SawnLayersTests
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
    public void ALayerPutInBelowMovesTheNumbersAndIsTold()
    {
        (ImmutableArray<SawnPlank> planks, ImmutableArray<Finding> findings) = SawnLayers.Numbered(
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
    public void WhereTheLayersAreWhatTheyWereNothingIsSaid()
    {
        ImmutableArray<SawnPlank> sawn = [Sawn("S1-20"), Sawn("P2-07")];
        (ImmutableArray<SawnPlank> planks, ImmutableArray<Finding> findings) = SawnLayers.Numbered(
            sawn,
            ["inner", "outer"],
            "record"
        );
        Assert.Equal(sawn.AsEnumerable(), planks);
        Assert.Empty(findings);
    }

    /// <summary>A plank whose layer the job no longer names keeps its number; where that is then another's, the record is refused.</summary>
    [Fact]
    public void TwoPlanksOfOneNumberAreRefused()
    {
        SawnPlank nameless = Sawn("S2-20") with { SawnFor = null };
        (ImmutableArray<SawnPlank> planks, ImmutableArray<Finding> findings) = SawnLayers.Numbered(
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
    public void ALayerGoesOnHeadingAsTheMostOfItsSawnPlanks(int aft, int forward, bool turnedBack)
    {
        Job turned = Turned.Value.Job;
        SawnPlank[] sawn =
        [
            .. Enumerable.Range(0, aft).Select(i => Sawn($"S1-{18 + i:00}")),
            .. Enumerable
                .Range(0, forward)
                .Select(i => RecordsOfSawn.Of(Turned.Value, $"S1-{24 + i:00}")),
        ];
        BottomPlan plan = WholeBottomTests.Planned(
            turned with
            {
                AsBuilt = AsBuiltSpec.None with { Sawn = [.. sawn] },
            }
        );
        Assert.Equal(turnedBack ? Heads.Aft : Heads.Forward, plan.PlankLayers.First().Planks.Heads);
        Assert.Equal(
            turnedBack ? aft : forward,
            plan.PlankLayers.First().Starboard.Count(p => p.IsSawn)
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
                    $"the job has it head forward, and {aft} {(aft == 1 ? "plank of it is" : "planks of it are")} sawn heading aft",
                    f.Message
                )
        );
    }

    private static SawnPlank Sawn(string id) => RecordsOfSawn.Of(Plan.Value, id);
}
