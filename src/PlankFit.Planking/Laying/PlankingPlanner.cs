using System.Collections.Immutable;
using PlankFit.Planking.Findings;
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

    /// <param name="job">Whose faults <see cref="PlankingChecks"/> has told, and there are none.</param>
    /// <param name="before">Of another job: what would be made from the same is taken over from it.</param>
    /// <exception cref="JobFaultException">The bottom cannot be followed, or not be laid on from what is measured and sawn.</exception>
    public static Planked Lay(
        PlankingJob job,
        Planked? before,
        IProgress<PlanProgress>? progress,
        CancellationToken stop
    )
    {
        LayWorkings? made = before?.Workings;
        if (before is not null && made is not null && SameValue.Are(made.Asked, job))
        {
            return before;
        }

        PlankingJob asked = job;
        int count = job.Layers.OfType<PlankLayerSpec>().Count();
        ImmutableArray<SawnPlank> onRecord = job.AsBuilt.Sawn;
        (job, ImmutableArray<Finding> ofHeads) = SawnHeads.Kept(job);
        progress?.Report(new($"lofting the {job.Hull.Panel.Name}", 0));
        LoftedHull starboardHull = HullAsBuilt.Of(job, Side.Starboard, made);
        bool apart = HullAsBuilt.SidesDiffer(job);
        int rounds = (apart ? 2 : 1) + (job.AsBuilt.IsEmpty ? 0 : 1);
        var counter = new LayerCount(progress, rounds * count);

        // What was drawn holds the planks' numbers, and is what the hull as it stands is measured against.
        PlankingJob drawnJob = job with
        {
            AsBuilt = AsBuiltSpec.None,
        };
        LoftedHull drawnHull = job.AsBuilt.IsEmpty
            ? starboardHull
            : HullAsBuilt.Of(drawnJob, Side.Starboard, made);
        var drawnGround = SideGround.Of(drawnJob, drawnHull.Hull, Side.Starboard, made);
        IReadOnlyList<LaidLayer>? asDrawn = job.AsBuilt.IsEmpty
            ? null
            : SidePlanner.Lay(drawnGround, null, made, counter, stop);
        if (!apart && asDrawn is not null && HullAsBuilt.SawnApart(job, asDrawn))
        {
            apart = true;
            counter.More(count);
        }

        LoftedHull portHull = apart ? HullAsBuilt.Of(job, Side.Port, made) : starboardHull;
        SideGround starboardGround = job.AsBuilt.IsEmpty
            ? drawnGround
            : SideGround.Of(job, starboardHull.Hull, Side.Starboard, made);
        SideGround portGround = apart
            ? SideGround.Of(job, portHull.Hull, Side.Port, made)
            : starboardGround;
        IReadOnlyList<LaidLayer> starboard = SidePlanner.Lay(
            starboardGround,
            asDrawn,
            made,
            counter,
            stop
        );
        IReadOnlyList<LaidLayer>? port = apart
            ? SidePlanner.Lay(portGround, asDrawn, made, counter, stop)
            : null;
        progress?.Report(new("planks worked out", 1));
        ImmutableArray<LayerPlan>.Builder layers = ImmutableArray.CreateBuilder<LayerPlan>();
        ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
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
            new(job, starboardHull.Hull, layers.ToImmutable(), findings.ToImmutable())
            {
                PortHull = portHull.Hull,
                StarboardKeel = starboardGround.Keel,
                PortKeel = portGround.Keel,
                DrawnKeel = drawnGround.Keel,
                OnRecord = onRecord,
                Drifts = asDrawn is null ? [] : SeamCreeps.Of(job, drawnHull.Hull, asDrawn),
                Workings = new(
                    asked,
                    [starboardHull, portHull, drawnHull],
                    [starboardGround.Keel, portGround.Keel, drawnGround.Keel],
                    [.. starboard, .. port ?? [], .. asDrawn ?? []]
                ),
            }
        );
    }
}
