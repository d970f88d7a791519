using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Support;

/// <summary>The demo launch and the skiff with their long planks in pieces, planned once a run of the tests.</summary>
internal static class JointedPlans
{
    private static readonly Lazy<BottomPlan> ButtsPlan = new(() =>
        Planned(
            "survey-launch",
            Stock(1500, 300) with
            {
                Kind = JointKind.Butt,
                Butt = new(ButtCut.AlongBacking, JointStock.Carrying, null, 15),
            },
            [
                .. new[] { 300, 550, 830 }.Select(d => new FramingSpec(
                    $"stringer at {d}",
                    FramingKind.Stringer,
                    new FramingLine.FromKeel(d),
                    45,
                    null,
                    null
                )),
            ],
            200,
            100,
            1,
            0
        )
    );

    private static readonly Lazy<BottomPlan> ScarfsPlan = new(() =>
        Planned("pilot-skiff", Stock(3 * 304.8, 304.8), [], 200, 100, 0, 0)
    );

    /// <summary>The launch, in millimetres, butted along its stringers.</summary>
    public static BottomPlan Butts => ButtsPlan.Value;

    /// <summary>The skiff, in feet-inches-eighths, scarfed, some planks twice.</summary>
    public static BottomPlan Scarfs => ScarfsPlan.Value;

    private static JointStock Stock(double longestMm, double shortestMm) =>
        new(
            longestMm,
            shortestMm,
            JointKind.Scarf,
            8,
            new(ButtCut.Square, JointStock.Carrying, null, 15),
            50,
            []
        );

    private static BottomPlan Planned(
        string hull,
        JointStock stock,
        ImmutableArray<FramingSpec> behind,
        double nextMm,
        double oneMm,
        int between,
        double belowMm
    )
    {
        JointSpec spec = new(
            stock,
            ImmutableDictionary<string, JointStock>.Empty,
            [
                new(JointRuleKind.NextPlank, nextMm, null, "test"),
                new(JointRuleKind.OneBetween, oneMm, null, "test"),
                new(JointRuleKind.SameBacking, null, between, "test"),
                new(JointRuleKind.JointsBelow, belowMm, null, "test"),
                new(JointRuleKind.SeamsBelow, 0, null, "test"),
            ]
        );
        PlanResult planned = BottomPlanner.Plan(
            DemoPlans.Of(hull).Job with
            {
                Joints = spec,
                Framing = behind,
            }
        );
        Assert.NotNull(planned.Plan);
        Assert.All(
            planned.Plan.PlankLayers,
            l => Assert.NotNull(planned.Plan.Joints.Of(l.Number, Side.Starboard))
        );
        return planned.Plan;
    }
}
