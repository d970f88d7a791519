using CsCheck;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>
/// Planks' ends against the plane of a plumb keel side, on bottoms that are narrow at the stem. There the trace of the side climbs towards a pole, and whatever
/// is carried from there into the first bay shows.
/// </summary>
public sealed class NarrowStemTests
{
    /// <summary>A plumb side met to this is met, mm; a hundredth was asked for.</summary>
    private const double MetMm = 0.005;

    [Fact]
    public void EndsLieOnThePlumbSideOnHullsByChance()
    {
        int planned = 0,
            refused = 0;
        NarrowStem.Any.Sample(
            hull => Interlocked.Increment(ref Held(hull) ? ref planned : ref refused),
            iter: LongRuns.Of(12, 600),
            threads: 2
        );
        Shares.AtLeast(0.9, planned, planned + refused);
    }

    /// <summary>Hulls on which ends were out by 2.03, 1.94, 0.57 and 0.44 mm.</summary>
    [Fact]
    public void WhereEndsWereOutTheyLieOnTheSide()
    {
        Assert.True(
            Held(
                NarrowStem.Build(
                    (5, 6622, 41.265625, 16.34375, 0, 1.7447),
                    (11.1875, 0.0345, 0, false, false),
                    (2, 17.8026, 139.5186, 35.0892, true)
                )
            )
        );
        Assert.True(
            Held(
                NarrowStem.Build(
                    (6, 5754, 54.59, 42, 0.0009928, 1.81435),
                    (23.914, 15.778, 0, false, true),
                    (3, 20, 182, 36.074, false)
                )
            )
        );
        Assert.True(
            Held(
                NarrowStem.Build(
                    (5, 8052, 53.875, 48, 0, 2),
                    (16.1155, 11, 0, false, true),
                    (1, 11.63636, 109.6667, 44.2025, false)
                )
            )
        );
        Assert.True(
            Held(
                NarrowStem.Build(
                    (5, 7263.451, 90, 48, 0.00207307, 2.27418),
                    (18.5, 9.64, 0, true, true),
                    (2, 18.66667, 180, 50.8482, true)
                )
            )
        );
    }

    /// <summary>False where the hull is refused, in words.</summary>
    private static bool Held(NarrowStem.Hull hull)
    {
        PlanResult result = BottomPlanner.Plan(hull.Job);
        if (result.Plan is not { } plan)
        {
            Assert.Contains(result.Findings, f => f.Message.Length > 20);
            return false;
        }

        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            (double off, string where) = KeelSideLaws.Worst(
                plan,
                layer,
                (p, _) => hull.OffMm(p.X, p.Y)
            );
            Assert.True(off < MetMm, $"{where}: {off} mm off the keel's side");
        }

        return true;
    }
}
