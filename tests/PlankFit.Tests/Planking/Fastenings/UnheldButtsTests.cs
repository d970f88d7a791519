using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Fastenings;

/// <summary>
/// Butts along the middle of a stringer of 45 mm: 22.5 either side, of which the timber's edge takes 8 and a joint what the rule asks. With 13 a fastening stands
/// on either piece, with 15 on neither; on a block nobody asks.
/// </summary>
public sealed class UnheldButtsTests
{
    private static BottomPlan Planned(double jointMm, params string[] on) =>
        WholeBottomTests.Planned(
            PrismaticPlan.Build(new Prism(LengthMm: 4200, MasterMm: 2200)).Job with
            {
                Framing =
                [
                    new(
                        "stringer",
                        FramingKind.Stringer,
                        new FramingLine.FromKeel(500),
                        45,
                        null,
                        null
                    ),
                ],
                Fastenings = new(
                    new()
                    {
                        SpacingMm = 60,
                        JointMm = jointMm,
                        PullDown = new(true, null, null, null, null, null, null, null),
                    },
                    ImmutableDictionary<string, FasteningSettings>.Empty,
                    null,
                    ImmutableDictionary<string, double>.Empty,
                    10
                ),
                Joints = new(
                    new(
                        1200,
                        250,
                        JointKind.Butt,
                        8,
                        new(ButtCut.AlongBacking, [.. on], 200, 15),
                        50,
                        []
                    ),
                    ImmutableDictionary<string, JointStock>.Empty,
                    [
                        new(JointRuleKind.NextPlank, 0, null, "test"),
                        new(JointRuleKind.JointsBelow, 0, null, "test"),
                        new(JointRuleKind.SeamsBelow, 0, null, "test"),
                    ]
                ),
            }
        );

    private static Finding[] Told(BottomPlan plan) =>
        [
            .. plan.Findings.Where(f =>
                f.Message.StartsWith("nothing holds", StringComparison.Ordinal)
            ),
        ];

    [Theory]
    [InlineData(13, false)]
    [InlineData(15, true)]
    public void AButtWithoutAFasteningBesideItIsTold(double jointMm, bool told)
    {
        BottomPlan plan = Planned(jointMm, "stringer");
        Assert.Contains(plan.Joints.Layers, l => l.Planks.Length > 5);
        Finding[] bare = Told(plan);
        if (!told)
        {
            Assert.Empty(bare.Select(f => f.Message));
            return;
        }

        Assert.Equal(2, bare.Length);
        int butts = plan.Joints.Of(1, Side.Starboard)!.Planks.Sum(p => p.Joints.Length);
        Assert.All(bare, f => Assert.Equal(Rank.SawAfter, f.Rank));
        Assert.Contains($" beside {butts} butts on the timber", bare[0].Message);
        Assert.Contains("stringer is 45 mm wide, and fastenings keep 15 mm", bare[0].Message);
        Assert.EndsWith("; to port likewise", bare[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ButtsOnBlocksAreHeldByTheirGlue() =>
        Assert.Empty(Told(Planned(15, JointStock.Block, JointStock.LayerBelow)));
}
