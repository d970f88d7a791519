using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Support;

/// <summary>The launch with cloth, resin, glue and crew of <see cref="ChanceGlue"/>, its cloth laid once a run of the tests.</summary>
internal static class GluedLaunch
{
    private static readonly Lazy<BottomPlan> Usual = new(() =>
        BottomPlanner.Again(Bare, ChanceGlue.Added(Bare.Job, 3)).Plan!
    );

    private static readonly Lazy<BottomPlan> Feet = new(() =>
        Of(Plan.Job with { Units = LengthUnit.Foot })
    );

    private static BottomPlan Bare => DemoPlans.Of("survey-launch");

    public static BottomPlan Plan => Usual.Value;

    /// <summary>The same shown in feet and inches.</summary>
    public static BottomPlan Imperial => Feet.Value;

    public static Job Job(int seed) => ChanceGlue.Added(Bare.Job, seed);

    /// <summary>A job of the launch; what of the usual plan may be taken over is.</summary>
    public static BottomPlan Of(Job job) => BottomPlanner.Again(Plan, job).Plan!;
}
