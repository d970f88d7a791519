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
    /// <summary>A face may be no nearer to its centre of curvature than this part of the radius.</summary>
    private const double LeastRoom = 0.2;

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
        catch (Exception e)
            when (e is GeodesicException or MathNet.Numerics.NonConvergenceException)
        {
            return new(
                null,
                [
                    new(
                        Severity.Error,
                        "offsets",
                        $"the surface cannot be followed: {e.Message}; run `plankfit check` on the table"
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

    private static PlanResult Work(
        Job job,
        IProgress<PlanProgress>? progress,
        CancellationToken stop
    )
    {
        progress?.Report(new("lofting the bottom", 0));
        HullSurface hull = HullLoft.Build(job.Offsets, job.Hull);
        ImmutableArray<double> offsets = NeutralOffsets(job);
        double longest = LongestGirth(hull.Surface);
        var layers = ImmutableArray.CreateBuilder<LayerPlan>();
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var laid = new List<LaidLayer>();
        int planked = job.Layers.OfType<PlankLayerSpec>().Count();
        for (int i = 0; i < job.Layers.Length; i++)
        {
            stop.ThrowIfCancellationRequested();
            CheckThickness(hull.Surface, job.Layers[i], offsets[i]);
            if (job.Layers[i] is not PlankLayerSpec spec)
            {
                layers.Add(new ClothLayerPlan((ClothLayerSpec)job.Layers[i]));
                continue;
            }

            if (spec.WidthMm >= longest)
            {
                throw new JobFaultException(
                    $"layer {spec.Name}",
                    $"the stock, width = {spec.WidthMm:0.#} mm, is wider than the bottom, which is at most {longest:0} mm from keel to chine"
                );
            }

            int number = laid.Count + 1;
            progress?.Report(
                new(
                    $"laying layer {number} of {planked}, {spec.Name}",
                    (double)laid.Count / planked
                )
            );
            LaidLayer layer = Laid(
                job,
                hull,
                spec,
                number,
                offsets[i],
                laid.LastOrDefault(l => l.Spec.Heads == spec.Heads),
                stop
            );
            laid.Add(layer);
            layers.Add(layer.Plan);
            findings.AddRange(LayerFindings.Of(layer, job.Limits, job.Units));
        }

        if (laid.Count == 0)
        {
            throw new JobFaultException(
                "job",
                "no layer of planks is named; give at least one [[layer]] with a thickness and a width"
            );
        }

        progress?.Report(new("planks worked out", 1));
        BottomPlan plan = PlanParts.AddedTo(
            new(job, hull, layers.ToImmutable(), findings.ToImmutable()),
            stop
        );
        return new(plan, plan.Findings);
    }

    /// <summary>One layer; where its lines cannot be followed, the fault names it.</summary>
    private static LaidLayer Laid(
        Job job,
        HullSurface hull,
        PlankLayerSpec spec,
        int number,
        double offsetMm,
        LaidLayer? below,
        CancellationToken stop
    )
    {
        try
        {
            return LayerPlanner.Lay(job, hull, spec, number, offsetMm, below, stop);
        }
        catch (Exception e)
            when (e is GeodesicException or MathNet.Numerics.NonConvergenceException)
        {
            throw new JobFaultException(
                $"layer {spec.Name}",
                $"its seams cannot be followed over the whole bottom ({e.Message.TrimEnd('.')}): look at the lines with `plankfit check`; if they are right, try another `angle`, `master` or `width`"
            );
        }
    }

    private static double LongestGirth(LoftedSurface surface) =>
        Enumerable
            .Range(0, 41)
            .Select(i => surface.UFrom + ((surface.UTo - surface.UFrom) * i / 40))
            .Max(u => surface.At(u, 0).P.ChordTo(surface.At(u, surface.ChineV(u)).P));

    /// <summary>A face laid inside the bend of the surface must stay well short of its centre of curvature.</summary>
    private static void CheckThickness(LoftedSurface surface, LayerSpec layer, double offsetMm)
    {
        for (int i = 0; i <= 60; i++)
        {
            double u = surface.UFrom + ((surface.UTo - surface.UFrom) * Math.Max(i, 0.2) / 60);
            for (int j = 0; j <= 6; j++)
            {
                SurfacePoint p = surface.At(u, surface.ChineV(u) * j / 6);
                (double k1, double k2) = p.PrincipalCurvatures;
                foreach (
                    double z in new[]
                    {
                        offsetMm - (layer.ThicknessMm / 2),
                        offsetMm + (layer.ThicknessMm / 2),
                    }
                )
                {
                    double room = 1 - (z * (z > 0 ? k1 : k2));
                    if (!(room > LeastRoom))
                    {
                        throw new JobFaultException(
                            $"layer {layer.Name}",
                            $"the layer is too thick for its curvature: {Math.Abs(z):0.#} mm from the table's surface, where the bottom at x = {p.P.X:0} mm, y = {p.P.Y:0} mm has a radius of {1 / Math.Abs(z > 0 ? k1 : k2):0} mm; look at the offsets there, or make the stack thinner"
                        );
                    }
                }
            }
        }
    }
}
