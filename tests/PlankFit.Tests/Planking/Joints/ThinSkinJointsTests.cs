using System.Collections.Immutable;
using PlankFit.Export.Summary;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Joints;

/// <summary>A small boat of several thin skins is pieced by the rules that come with the program, and told which these are.</summary>
public sealed class ThinSkinJointsTests
{
    private static readonly ImmutableArray<FramingSpec> Stringers =
    [
        .. new[] { 200, 400, 600 }.Select(d => new FramingSpec(
            $"stringer at {d}",
            FramingKind.Stringer,
            new FramingLine.FromKeel(d),
            30,
            null,
            null
        )),
    ];

    private static BottomPlan Planned(
        JointKind kind,
        Skin? skin,
        params ImmutableArray<JointRule> own
    ) =>
        WholeBottomTests.Planned(
            DemoPlans.Of("tender").Job with
            {
                Framing = Stringers,
                Fastenings = null,
                Joints = new(
                    new(
                        800,
                        200,
                        kind,
                        8,
                        new(
                            ButtCut.AlongBacking,
                            [.. JointStock.Carrying, JointStock.LayerBelow],
                            null,
                            10
                        ),
                        25,
                        []
                    ),
                    ImmutableDictionary<string, JointStock>.Empty,
                    own
                )
                {
                    Skin = skin,
                },
            }
        );

    [Theory]
    [InlineData(JointKind.Scarf)]
    [InlineData(JointKind.Butt)]
    public void ThinSkinsArePiecedAsTheyCome(JointKind kind)
    {
        BottomPlan plan = Planned(kind, null);
        Assert.Empty(
            plan.Findings.Where(f => f.Message.Contains("rules of stagger")).Select(f => f.Message)
        );
        Assert.All(plan.PlankLayers, l => Assert.NotNull(plan.Joints.Of(l.Number, Side.Starboard)));
        Assert.Contains(plan.Joints.Layers, l => l.Planks.Length > 5);
        JointLaws.Hold(plan);
        Assert.Contains(
            PlanSummary.Of(plan).Lines(LengthUnit.Millimetre),
            l =>
                l.StartsWith("Joints of layer 1 keep ", StringComparison.Ordinal)
                && l.Contains(
                    "the rules that come with the program for layers glued on each other (proposal, no source)",
                    StringComparison.Ordinal
                )
        );

        // The same planks by rules for planks on frames: 5 ft, 1.2 m.
        BottomPlan onFrames = Planned(kind, Skin.OnFrames);
        Assert.Contains(
            onFrames.Findings,
            f => f.Rank == Rank.DoNotSaw && f.Message.Contains("rules of stagger")
        );
    }

    [Fact]
    public void ARuleOfNoughtIsSaidToBeSwitchedOff()
    {
        BottomPlan plan = Planned(
            JointKind.Scarf,
            null,
            new JointRule(JointRuleKind.OneBetween, 0, null, "our yard")
        );
        Assert.Contains(
            "Rules of joints that this job switches off: one plank between.",
            PlanSummary.Of(plan).Lines(LengthUnit.Millimetre)
        );
        Assert.Contains(
            PlankFit.Export.Joints.JointWords.SwitchedOff(plan.Job.Joints),
            s =>
                s
                == "Switched off: nothing is asked of the distance to joints with one plank between (our yard)."
        );
    }
}
