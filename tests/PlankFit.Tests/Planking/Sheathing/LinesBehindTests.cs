using PlankFit.Planking.Framing;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>What lies behind is drawn on the face that cloth lies on where there is any of it, and nowhere beyond the chine.</summary>
public sealed class LinesBehindTests
{
    private const string Far = "a stringer far out";

    /// <summary>At 700 mm from the keel the launch has no bottom forward: there is no mark; where there is, both distances make up the girth.</summary>
    [Fact]
    public void WhereItHasRunOffTheBottomNothingIsDrawn()
    {
        Job job = GluedLaunch.Plan.Job;
        BottomPlan plan = GluedLaunch.Of(
            job with
            {
                Sheathing = [job.Sheathing[0] with { FirstAlong = new FirstLine.Straight(0.5, 0) }],
                Glue = null,
                Structure = null,
                Joints = null,
                Fastenings = null,
                SettingUp = null,
                Framing =
                [
                    .. job.Framing,
                    new(Far, FramingKind.Stringer, new FramingLine.FromKeel(700), 40, null, null),
                ],
            }
        );
        StationMarks[] stations =
        [
            .. plan.Sheathing!.Layers.SelectMany(l => l.Sides).SelectMany(s => s.Marks),
        ];
        Assert.All(
            stations.SelectMany(s => s.Lines.Select(m => (s, m))),
            p =>
            {
                Assert.True(p.m.FromKeelMm >= 0 && p.m.FromChineMm >= 0);
                Assert.Equal(p.s.GirthMm, p.m.FromKeelMm + p.m.FromChineMm, 0.2);
            }
        );
        Assert.Contains(stations, s => s.Lines.Any(m => m.What == Far));
        Assert.Contains(stations, s => s.GirthMm < 650 && s.Lines.All(m => m.What != Far));
    }
}
