using CsCheck;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>
/// Planks' ends against the plumb side of the keel line on hulls by chance of every kind. The side stands over the keel line of the table, whose plan is a curve that
/// the loft has for itself: every place of every end lies over it, whatever face it is on and wherever the trace of the side has its nodes.
/// </summary>
public sealed class KeelSideByChanceTests
{
    /// <summary>A hundredth was asked for.</summary>
    private const double MetMm = 0.005;

    [Fact]
    public void EndsLieOnThePlumbSideOfAnyHull() =>
        Held(RandomHull.Gen.Select(Plumb), LongRuns.Of(3, 240));

    /// <summary>Stems down to 40 mm whose keel line bows in plan, by as much as it may be wide, and all lines above it with it.</summary>
    [Fact]
    public void EndsLieOnThePlumbSideOfABowedKeelBelowANarrowStem() =>
        Held(
            Gen.Select(NarrowStem.Any, Gen.Double[-8, 30]).Select((h, by) => Bowed(h.Job, by)),
            LongRuns.Of(3, 240)
        );

    private static void Held(Gen<Job> jobs, int draws)
    {
        int planned = 0;
        jobs.Sample(
            job =>
            {
                if (BottomPlanner.Plan(job).Plan is not { } plan)
                {
                    return;
                }

                Interlocked.Increment(ref planned);
                foreach (PlankLayerPlan layer in plan.PlankLayers)
                {
                    (double off, string where) = KeelSideLaws.Worst(
                        plan,
                        layer,
                        (p, _) => OverKeelLineMm(plan, p)
                    );

                    Assert.True(off < MetMm, $"{where}: {off} mm off the keel's side");
                }
            },
            iter: draws,
            threads: 2
        );
        Shares.AtLeast(0.8, planned, draws);
    }

    private static Job Plumb(Job job) =>
        job with
        {
            Planking = job.Planking with
            {
                Hull = job.Planking.Hull with { KeelSide = KeelSide.Plumb },
            },
        };

    private static Job Bowed(Job job, double byMm)
    {
        OffsetTable table = job.Offsets;
        double length = table.Stations[^1].PositionMm;
        double?[] more =
        [
            .. table.Stations.Select(s =>
                (double?)(byMm * Math.Sin(Math.PI * s.PositionMm / length))
            ),
        ];
        return job with
        {
            Planking = job.Planking with
            {
                Offsets = table with
                {
                    Lines =
                    [
                        .. table.Lines.Select(l =>
                            l with
                            {
                                HalfBreadthsMm = [.. l.HalfBreadthsMm.Zip(more, (y, m) => y + m)],
                            }
                        ),
                    ],
                },
            },
        };
    }

    /// <summary>How far a place lies from the plan of the keel line, mm: by bisection for the line's place at the same station.</summary>
    private static double OverKeelLineMm(BottomPlan plan, Vec3 place)
    {
        LoftedSurface surface = plan.Hull.Surface;
        double from = surface.UFrom - 50,
            to = surface.UTo + 50;
        for (int i = 0; i < 60; i++)
        {
            double middle = (from + to) / 2;
            (from, to) = surface.At(middle, 0).P.X < place.X ? (middle, to) : (from, middle);
        }

        SurfacePoint line = surface.At(from, 0);
        Vec3 along = surface.At(from + 0.01, 0).P - surface.At(from - 0.01, 0).P;
        return Math.Abs(place.Y - line.P.Y)
            * along.X
            / Math.Sqrt((along.X * along.X) + (along.Y * along.Y));
    }
}
