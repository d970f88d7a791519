using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Seams;

/// <summary>The seams of sawn planks on the bottom as it now is: through the feet of the ends that their record has.</summary>
internal sealed class SeamTraces(LayerRegion region, SeamRow planned, Tracing tracing)
{
    /// <summary>A plank further than this off its layer's surface is no longer this hull's, mm: our own bound, no source.</summary>
    private const double MostOffMm = 100;

    private const double FootMm = 1e-6;

    private readonly Dictionary<(Vec3, Vec3), Seam?> found = [];

    /// <summary>The seam through these ends; null where none runs over the bottom.</summary>
    public Seam? Of((Vec3 Inboard, Vec3 Outboard) ends)
    {
        if (!found.TryGetValue(ends, out Seam? seam))
        {
            found[ends] = seam = Traced(ends);
        }

        return seam;
    }

    /// <summary>What is amiss where a sawn plank lies nowhere on the bottom; null where it lies on it.</summary>
    public Func<LengthUnit, string>? WhyNot(SawnPlank plank)
    {
        foreach (bool after in new[] { false, true })
        {
            if (plank.SeamEnds(after) is not { } ends)
            {
                continue;
            }

            (Uv nearIn, Uv nearOut) = Near(ends);
            foreach (
                (Vec3 end, Uv near) in new[] { (ends.Inboard, nearIn), (ends.Outboard, nearOut) }
            )
            {
                double? off = Off(end, near);
                if (off is null or > MostOffMm)
                {
                    return off is { } mm && mm < 10 * MostOffMm
                        ? u =>
                            $"it was sawn for a place {LengthText.ForPaper(mm, u)} off the bottom as the job now has it"
                        : _ =>
                            "it was sawn for a place that is nowhere near the bottom as the job now has it";
                }
            }

            if (Of(ends) is null)
            {
                return _ =>
                    $"its {(after ? "after" : "forward")} edge runs past the bottom as the job now has it";
            }
        }

        return null;
    }

    private Seam? Traced((Vec3 Inboard, Vec3 Outboard) ends)
    {
        (Uv nearIn, Uv nearOut) = Near(ends);
        try
        {
            return SeamThrough.Of(region, ends.Inboard, ends.Outboard, nearIn, nearOut, tracing);
        }
        catch (Exception e)
            when (e
                    is GeodesicException
                        or JobFaultException
                        or MathNet.Numerics.NonConvergenceException
            )
        {
            return null;
        }
    }

    /// <summary>How far a point lies off the surface and past where lines are followed on it, mm; null where it has no foot on it.</summary>
    private double? Off(Vec3 point, Uv near)
    {
        if (
            !ClosestPoint.TryFind(region.Surface, point, near, FootMm, out ClosestPoint.Result foot)
        )
        {
            return null;
        }

        double past = Math.Max(0, -region.Room(foot.Uv));
        return past > tracing.ReachMm ? null : Math.Max(Math.Abs(foot.HeightMm), past);
    }

    private (Uv In, Uv Out) Near((Vec3 Inboard, Vec3 Outboard) ends) =>
        (
            planned.Seams.MinBy(s => region.PointAt(s.In.Uv).ChordTo(ends.Inboard))!.In.Uv,
            planned.Seams.MinBy(s => region.PointAt(s.Out.Uv).ChordTo(ends.Outboard))!.Out.Uv
        );
}
