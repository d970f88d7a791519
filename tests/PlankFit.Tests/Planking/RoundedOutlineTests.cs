using CsCheck;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>Outlines as they leave the program, rounded: to planking.json, to DXF, and turned and shifted to the saw.</summary>
public sealed class RoundedOutlineTests
{
    /// <summary>
    /// A number rounded to a ten-thousandth moves a corner by 0.00007 mm at most. Two sides can cross only after a corner has come through a side that it is no end
    /// of, so twice that between every corner and every such side keeps an outline simple, however it is turned and shifted before it is rounded.
    /// </summary>
    private const double ClearMm = 2 * 0.71e-4;

    [Fact]
    public void CornersKeepClearOfSidesOnHullsByChance()
    {
        int[] planned = [0, 0];
        int draws = LongRuns.Of(4, 300);
        RandomHull.Gen.Sample(
            job => Interlocked.Add(ref planned[0], Clear(job) ? 1 : 0),
            iter: draws,
            threads: 2
        );
        NarrowStem.Any.Sample(
            hull => Interlocked.Add(ref planned[1], Clear(hull.Job) ? 1 : 0),
            iter: draws,
            threads: 2
        );
        Shares.AtLeast(0.75, planned.Min(), draws);
    }

    /// <summary>
    /// A draw of chance: 36 planks, and laid anew, narrower by a ten-thousandth each, they left room for one more of 0.0025 by 0.0012 mm. The corners are chosen anew
    /// then, and no plank is a sliver.
    /// </summary>
    [Fact]
    public void PlanksLaidAnewLeaveNoSliver() =>
        RandomHull.Gen.Sample(
            job =>
            {
                Assert.True(Clear(job));
                Assert.All(
                    BottomPlanner.Plan(job).Plan!.PlankLayers.SelectMany(l => l.Starboard),
                    p => Assert.True(p.FlatNet.Max(v => v.X) - p.FlatNet.Min(v => v.X) > 50)
                );
            },
            seed: "4X8XWTx7pip1",
            iter: 1,
            threads: 1
        );

    [Fact]
    public void PiecesOfLongPlanksAreClearToo()
    {
        foreach (BottomPlan plan in new[] { JointedPlans.Butts, JointedPlans.Scarfs })
        {
            var pieces = plan
                .PlankLayers.SelectMany(l => l.Starboard)
                .Select(p => plan.Joints.On(p.Id))
                .OfType<JointedPlank>()
                .SelectMany(j => j.Pieces)
                .ToList();
            Assert.True(pieces.Count > 20);
            Assert.All(pieces, p => Assert.True(LeastClearMm(p.Cut) > ClearMm, p.Id.ToString()));
        }
    }

    private static bool Clear(Job job)
    {
        if (BottomPlanner.Plan(job).Plan is not { } plan)
        {
            return false;
        }

        Assert.All(
            plan.PlankLayers.SelectMany(l => l.Starboard),
            p =>
            {
                Assert.True(LeastClearMm(p.FlatNet) > ClearMm, $"{p.Id}, net");
                Assert.True(LeastClearMm(p.FlatCut) > ClearMm, $"{p.Id}, to saw");
            }
        );
        return true;
    }

    /// <summary>The least distance from a corner to a side that it is no end of.</summary>
    private static double LeastClearMm(IReadOnlyList<Vec2> outline)
    {
        double least = double.PositiveInfinity;
        int n = outline.Count;
        for (int side = 0; side < n; side++)
        {
            Vec2 a = outline[side],
                run = outline[(side + 1) % n] - a;
            double size = run.Dot(run);
            for (int k = 2; k < n; k++)
            {
                Vec2 p = outline[(side + k) % n] - a;
                least = Math.Min(least, (p - (Math.Clamp(p.Dot(run) / size, 0, 1) * run)).Norm);
            }
        }

        return least;
    }
}
