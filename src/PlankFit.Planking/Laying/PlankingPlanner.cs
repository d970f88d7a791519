using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Laying;

/// <summary>Lays the planks of every layer, both sides, on from what is sawn and fitted.</summary>
internal static class PlankingPlanner
{
    /// <summary>Numbers of a layer's planks that are sawn on a side; on both where they are one another's mirror images.</summary>
    private static HashSet<int> Sawn(PlankingJob job, LaidLayer layer, Side? side)
    {
        HashSet<int> On(Side one) =>
            [.. LayerPlanner.CutOf(job, layer.Number, one).Select(c => c.Number)];
        if (side is { } apart)
        {
            return On(apart);
        }

        HashSet<int> both = On(Side.Starboard);
        both.IntersectWith(On(Side.Port));
        return both;
    }

    /// <exception cref="JobFaultException">The job has a fault that stands in the way.</exception>
    public static Planked Lay(
        PlankingJob job,
        IProgress<PlanProgress>? progress,
        CancellationToken stop
    )
    {
        int count = job.Layers.OfType<PlankLayerSpec>().Count();
        if (count == 0)
        {
            throw new JobFaultException(
                "job",
                "no layer of planks is named; give at least one [[layer]] with a thickness and a width"
            );
        }

        ImmutableArray<SawnPlank> onRecord = job.AsBuilt.Cut;
        (job, ImmutableArray<Finding> ofHeads) = SawnHeads.Kept(job);
        progress?.Report(new("lofting the bottom", 0));
        HullSurface starboardHull = HullAsBuilt.Of(job, Side.Starboard);
        bool apart = HullAsBuilt.SidesDiffer(job);
        int rounds = (apart ? 2 : 1) + (job.AsBuilt.IsEmpty ? 0 : 1);
        var counter = new LayerCount(progress, rounds * count);

        // What was drawn holds the planks' numbers, and is what the hull as it stands is measured against.
        PlankingJob drawnJob = job with
        {
            AsBuilt = AsBuiltSpec.None,
        };
        HullSurface drawnHull = job.AsBuilt.IsEmpty
            ? starboardHull
            : HullAsBuilt.Of(drawnJob, Side.Starboard);
        IReadOnlyList<LaidLayer>? asDrawn = job.AsBuilt.IsEmpty
            ? null
            : SidePlanner.Lay(
                SideGround.Of(drawnJob, drawnHull, Side.Starboard),
                null,
                counter,
                stop
            );
        if (!apart && asDrawn is not null && HullAsBuilt.SawnApart(job, asDrawn))
        {
            apart = true;
            counter.More(count);
        }

        HullSurface portHull = apart ? HullAsBuilt.Of(job, Side.Port) : starboardHull;
        var starboardGround = SideGround.Of(job, starboardHull, Side.Starboard);
        SideGround portGround = apart ? SideGround.Of(job, portHull, Side.Port) : starboardGround;
        IReadOnlyList<LaidLayer> starboard = SidePlanner.Lay(
            starboardGround,
            asDrawn,
            counter,
            stop
        );
        IReadOnlyList<LaidLayer>? port = apart
            ? SidePlanner.Lay(portGround, asDrawn, counter, stop)
            : null;
        progress?.Report(new("planks worked out", 1));
        var layers = ImmutableArray.CreateBuilder<LayerPlan>();
        var findings = ImmutableArray.CreateBuilder<Finding>();
        findings.AddRange(ofHeads);
        int at = 0;
        foreach (LayerSpec spec in job.Layers)
        {
            if (spec is ClothLayerSpec cloth)
            {
                layers.Add(new ClothLayerPlan(cloth));
                continue;
            }

            LaidLayer layer = starboard[at];
            findings.AddRange(
                LayerFindings.Of(
                    layer,
                    job.Limits,
                    job.Units,
                    port is null ? null : Side.Starboard,
                    Sawn(job, layer, port is null ? null : Side.Starboard)
                )
            );
            if (port is null)
            {
                layers.Add(layer.Plan);
            }
            else
            {
                layers.Add(SidesApart.Joined(layer.Plan, port[at].Plan));
                findings.AddRange(
                    LayerFindings.Of(
                        port[at],
                        job.Limits,
                        job.Units,
                        Side.Port,
                        Sawn(job, layer, Side.Port)
                    )
                );
            }

            at++;
        }

        return SawnPlanks.KeptIn(
            new(job, starboardHull, layers.ToImmutable(), findings.ToImmutable())
            {
                PortHull = portHull,
                StarboardKeel = starboardGround.Keel,
                PortKeel = portGround.Keel,
                OnRecord = onRecord,
                Drifts = asDrawn is null ? [] : SeamCreeps.Of(job, drawnHull, asDrawn),
            }
        );
    }
}
