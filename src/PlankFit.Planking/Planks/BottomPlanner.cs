using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>A plan, or the faults that stand in its way; findings of both.</summary>
public sealed record PlanResult(BottomPlan? Plan, ImmutableArray<Finding> Findings);

/// <summary>How far the work has come: what is being done, and the part of the whole that is done, 0 to 1.</summary>
public readonly record struct PlanProgress(string Doing, double Part);

/// <summary>The main job: from a job to every plank of every layer, both sides.</summary>
public static class BottomPlanner
{
    /// <summary>Plans the bottom. Faults of the job come back as findings; only a stop request is an exception.</summary>
    public static PlanResult Plan(
        Job job,
        IProgress<PlanProgress>? progress = null,
        CancellationToken stop = default
    )
    {
        try
        {
            return Work(job, progress, stop);
        }
        catch (JobFaultException fault)
        {
            return new(null, [fault.Finding]);
        }
        catch (Exception e) when (LostPlace.Is(e))
        {
            var lost = new LostPlace(HullLoft.Build(job.Offsets, job.Hull), job.Hull);
            return new(
                null,
                [
                    new(
                        Severity.Error,
                        "offsets",
                        $"the bottom cannot be followed: {lost.Told(e)}; {lost.Remedy(e)}"
                    ),
                ]
            );
        }
    }

    /// <summary>Mid-thickness offsets of all layers from the table's surface along the outward normal, mm, from the inside out.</summary>
    public static ImmutableArray<double> NeutralOffsets(Job job)
    {
        double whole = job.Layers.Sum(l => l.ThicknessMm);
        double at = job.Hull.OffsetsAreTo == OffsetsAreTo.Outside ? -whole : 0;
        var offsets = ImmutableArray.CreateBuilder<double>();
        foreach (LayerSpec layer in job.Layers)
        {
            offsets.Add(at + (layer.ThicknessMm / 2));
            at += layer.ThicknessMm;
        }

        return offsets.ToImmutable();
    }

    /// <summary>Numbers of a layer's planks that are sawn on a side; on both where they are one another's mirror images.</summary>
    private static HashSet<int> Sawn(Job job, LaidLayer layer, Side? side)
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

    private static PlanResult Work(
        Job job,
        IProgress<PlanProgress>? progress,
        CancellationToken stop
    )
    {
        int planked = job.Layers.OfType<PlankLayerSpec>().Count();
        if (planked == 0)
        {
            throw new JobFaultException(
                "job",
                "no layer of planks is named; give at least one [[layer]] with a thickness and a width"
            );
        }

        ImmutableArray<CutPlank> onRecord = job.Standing.Cut;
        (job, ImmutableArray<Finding> ofHeads) = SawnHeads.Kept(job);
        progress?.Report(new("lofting the bottom", 0));
        HullSurface starboardHull = HullAsItStands.Of(job, Side.Starboard);
        bool apart = HullAsItStands.SidesDiffer(job);
        int rounds = (apart ? 2 : 1) + (job.Standing.IsEmpty ? 0 : 1);
        var counter = new LayerCount(progress, rounds * planked);

        // What was drawn holds the planks' numbers, and is what the hull as it stands is measured against.
        Job drawnJob = job with
        {
            Standing = StandingSpec.None,
        };
        HullSurface drawnHull = job.Standing.IsEmpty
            ? starboardHull
            : HullAsItStands.Of(drawnJob, Side.Starboard);
        IReadOnlyList<LaidLayer>? asDrawn = job.Standing.IsEmpty
            ? null
            : SidePlanner.Lay(drawnJob, drawnHull, Side.Starboard, null, counter, stop);
        if (!apart && asDrawn is not null && HullAsItStands.SawnApart(job, asDrawn))
        {
            apart = true;
            counter.More(planked);
        }

        HullSurface portHull = apart ? HullAsItStands.Of(job, Side.Port) : starboardHull;
        IReadOnlyList<LaidLayer> starboard = SidePlanner.Lay(
            job,
            starboardHull,
            Side.Starboard,
            asDrawn,
            counter,
            stop
        );
        IReadOnlyList<LaidLayer>? port = apart
            ? SidePlanner.Lay(job, portHull, Side.Port, asDrawn, counter, stop)
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
                    LayerFindings
                        .Of(port[at], job.Limits, job.Units, Side.Port, Sawn(job, layer, Side.Port))
                        .Select(SidesApart.OfPort)
                );
            }

            at++;
        }

        BottomPlan plan = PlanParts.AddedTo(
            new(job, starboardHull, layers.ToImmutable(), findings.ToImmutable())
            {
                PortHull = portHull,
                OnRecord = onRecord,
                Drifts = asDrawn is null ? [] : SeamDrifts.Of(job, drawnHull, asDrawn),
            },
            stop
        );
        return new(plan, plan.Findings);
    }
}
