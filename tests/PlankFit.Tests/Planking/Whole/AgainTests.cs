using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Whole;

/// <summary>
/// Of a job that was changed nothing is worked out again that the change does not touch. Which parts are the very same is told here by name; that the plan is that of a
/// whole planning is <see cref="AgainByChanceTests"/>'s.
/// </summary>
public sealed class AgainTests
{
    private static readonly BottomPlan Launch = DemoPlans.Of("survey-launch");

    [Fact]
    public void TheSameJobReadAgainMakesNothing() => AnewIn(Read("survey-launch"), "");

    [Fact]
    public void NameAndOutputAreNothingToAnyPart() =>
        AnewIn(
            Launch.Job with
            {
                Name = "Other",
                Revision = "000000",
                Output = new(DxfUnits.Inches, PaperSize.Letter) { CardPictures = true },
            },
            ""
        );

    [Fact]
    public void TheSpacingOfFastenings() => AnewIn(Spaced(60), "fastenings");

    /// <summary>Setting up and the skin beneath stay; what crosses, joins, holds or weighs the planks of the turned layer is worked out again.</summary>
    [Fact]
    public void TheAngleOfTheOuterLayer() =>
        AnewIn(Turned("outer", 47), "planks outer keel behind joints fastenings timber");

    [Fact]
    public void TheAngleOfTheInnerLayer() =>
        AnewIn(Turned("inner", 47), "planks inner keel behind joints fastenings timber");

    /// <summary>How wide a keel's layer may be out is judged after the planks are laid.</summary>
    [Fact]
    public void TheKeelsTolerance() =>
        AnewIn(
            Launch.Job with
            {
                Keel = Launch.Job.Keel with { HalfWidthToleranceMm = 1.5 },
            },
            "planks keel behind joints fastenings timber"
        );

    /// <summary>Its moisture moves wood, but does not bend it otherwise.</summary>
    [Fact]
    public void TheMoistureOfTheWorkshop() =>
        AnewIn(
            Launch.Job with
            {
                Timber = Launch.Job.Timber! with { Workshop = Launch.Job.Timber.Service },
            },
            "planks keel behind joints fastenings timber"
        );

    [Fact]
    public void TheLongestPlankOfTheOuterLayer()
    {
        JointSpec joints = Launch.Job.Joints!;
        JointStock stock = joints.ByLayer["outer"]!;
        AnewIn(
            Launch.Job with
            {
                Joints = joints with
                {
                    ByLayer = joints.ByLayer.SetItem("outer", stock with { LongestMm = 1700 }),
                },
            },
            "joints fastenings"
        );
    }

    [Fact]
    public void WhatLiesBehind() =>
        AnewIn(
            Launch.Job with
            {
                Framing = Launch.Job.Framing.RemoveAt(Launch.Job.Framing.Length - 1),
            },
            "setting-up behind joints fastenings"
        );

    /// <summary>Skins that lie under a changed one keep their crossings and their fastenings, plank by plank the very same.</summary>
    [Fact]
    public void TheSkinUnderATurnedOneKeepsItsFastenings()
    {
        BottomPlan again = Again(Launch, Turned("outer", 47));
        foreach (Plank plank in again.PlankLayers.First().Starboard)
        {
            Assert.Same(Launch.Fastenings!.On(plank.Id), again.Fastenings!.On(plank.Id));
            Assert.Equal(Launch.Framing.On(plank.Id), again.Framing.On(plank.Id));
        }
    }

    /// <summary>A layer is added above one that is there: what holds that one is missed, whether it was taken over or not.</summary>
    [Fact]
    public void ALayerThatIsAddedMissesWhatHoldsThoseBelow()
    {
        Job one = Launch.Job with
        {
            Layers = [.. Launch.Job.Layers.Take(2)],
            Joints = null,
            Keel = KeelSpec.None,
        };
        Job two = Launch.Job with { Joints = null, Keel = KeelSpec.None };
        BottomPlan inner = Again(
                Launch,
                one with
                {
                    Hull = one.Hull with { OffsetsAreTo = OffsetsAreTo.Inside },
                }
            ),
            both = Again(
                inner,
                two with
                {
                    Hull = two.Hull with { OffsetsAreTo = OffsetsAreTo.Inside },
                }
            );
        Assert.Null(
            SamePlan.Difference(
                BottomPlanner.Plan(both.Job, null, TestContext.Current.CancellationToken).Plan,
                both
            )
        );
    }

    /// <summary>A feature that is asked for no more takes nothing with it, and one that is asked for again makes itself alone.</summary>
    [Fact]
    public void AFeatureComesAndGoes()
    {
        Job without = Launch.Job with { SettingUp = null };
        BottomPlan less = Again(Launch, without);
        Assert.Null(less.SettingUp);
        Assert.Equal("", Anew(Launch, less, "setting-up"));
        Assert.Equal("setting-up", Anew(Launch, Again(less, Launch.Job), ""));
    }

    /// <summary>What was taken over once can be taken over again, with all that it stands on.</summary>
    [Fact]
    public void TheThirdPlanTakesOverWhatTheSecondTookOver()
    {
        BottomPlan second = Again(Launch, Launch.Job with { Name = "Second" }),
            third = Again(second, Spaced(60));
        Assert.Null(SamePlan.Difference(Launch, Again(second, Launch.Job)));
        Assert.Equal("fastenings", Anew(Launch, third, ""));
    }

    /// <summary>A fault is told as a whole planning tells it.</summary>
    [Fact]
    public void AFaultIsTold()
    {
        Job wide = Launch.Job with
        {
            Layers =
            [
                .. Launch.Job.Layers.Select(l =>
                    l is PlankLayerSpec { Name: "outer" } p ? p with { WidthMm = 5000 } : l
                ),
            ],
        };
        PlanResult again = BottomPlanner.Again(
                Launch,
                wide,
                null,
                TestContext.Current.CancellationToken
            ),
            whole = BottomPlanner.Plan(wide, null, TestContext.Current.CancellationToken);
        Assert.Null(again.Plan);
        Assert.Equal(
            whole.Findings.Select(f => f.ToString()),
            again.Findings.Select(f => f.ToString())
        );
    }

    /// <summary>Asserts which parts are worked out anew for a job, and that all of the plan is that of a whole planning.</summary>
    private static void AnewIn(Job job, string parts)
    {
        BottomPlan again = Again(Launch, job);
        Assert.Equal(parts, Anew(Launch, again, ""));
        Assert.Null(SamePlan.Difference(BottomPlanner.Plan(job).Plan, again));
    }

    private static BottomPlan Again(BottomPlan before, Job job)
    {
        PlanResult again = BottomPlanner.Again(before, job);
        Assert.NotNull(again.Plan);
        return again.Plan;
    }

    private static string Anew(BottomPlan before, BottomPlan now, string but)
    {
        (string Name, object? Was, object? Is)[] parts =
        [
            ("planks", before.Planked, now.Planked),
            .. before
                .PlankLayers.Zip(now.PlankLayers)
                .Select(l => (l.First.Planks.Name, (object?)l.First, (object?)l.Second)),
            ("keel", before.Keel, now.Keel),
            ("setting-up", before.SettingUp, now.SettingUp),
            ("behind", before.Framing, now.Framing),
            ("joints", before.Joints, now.Joints),
            ("fastenings", before.Fastenings, now.Fastenings),
            ("timber", before.Timber, now.Timber),
        ];
        return string.Join(
            ' ',
            parts.Where(p => p.Name != but && !ReferenceEquals(p.Was, p.Is)).Select(p => p.Name)
        );
    }

    private static Job Read(string hull) =>
        JobReader.Read(Path.Combine(DemoTables.Folder(hull), "job.toml")).Job!;

    private static Job Spaced(double mm) =>
        Launch.Job with
        {
            Fastenings = Launch.Job.Fastenings! with
            {
                Usual = Launch.Job.Fastenings.Usual with { SpacingMm = mm },
            },
        };

    private static Job Turned(string layer, double degrees) =>
        Launch.Job with
        {
            Layers =
            [
                .. Launch.Job.Layers.Select(l =>
                    l is PlankLayerSpec p && p.Name == layer ? p with { AngleDegrees = degrees } : l
                ),
            ],
        };
}
