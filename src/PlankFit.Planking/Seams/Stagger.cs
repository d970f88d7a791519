using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Seams;

/// <summary>Moving the seams of a layer against those of the layer below on the same diagonal.</summary>
internal static class Stagger
{
    /// <summary>The shift of the master plank (mm of x, mid-bottom) that sets its after seam by the part of a width asked for past the nearest seam below.</summary>
    public static double Shift(
        LayerRegion below,
        SeamRow belowRow,
        LayerRegion region,
        PlankLayerSpec spec,
        double part,
        Tracing tracing
    )
    {
        SeamRow unshifted = SeamFamily.Lay(region, spec, 0, tracing);
        (double after, double pitch) = NearMaster(region, unshifted, spec);
        return belowRow
            .Seams.Select(s => AtMidBottom(below, s))
            .OfType<double>()
            .Select(x => x + (part * pitch) - after)
            .DefaultIfEmpty(0)
            .MinBy(Math.Abs);
    }

    /// <summary>
    /// Where a seam crosses mid-bottom, x mm, and how far it lies from the one before: the master's two seams, or where the master stands so near an end that
    /// one of them passes by the middle, the two nearest that cross it.
    /// </summary>
    private static (double After, double Pitch) NearMaster(
        LayerRegion region,
        SeamRow row,
        PlankLayerSpec spec
    )
    {
        (double After, double Pitch)? near = Enumerable
            .Range(1, row.Seams.Length - 1)
            .OrderBy(i => Math.Abs(i - row.Master))
            .Select(i =>
                AtMidBottom(region, row.Seams[i - 1]) is { } a
                && AtMidBottom(region, row.Seams[i]) is { } b
                    ? (b, b - a)
                    : ((double, double)?)null
            )
            .FirstOrDefault(p => p is not null);
        return near
            ?? throw new JobFaultException(
                $"layer {spec.Name}",
                $"`stagger` cannot be set: fewer than two of the layer's seams cross the middle of the {region.Panel.Name}; leave it out, or give narrower stock"
            );
    }

    /// <summary>The least distance between seams of two layers, mm along the surface, and the x where it is; null where no seam lies abreast of another.</summary>
    public static (double Mm, double X)? LeastDistance(
        LayerRegion below,
        SeamRow belowRow,
        LayerRegion region,
        SeamRow row,
        Tracing tracing
    )
    {
        (double, double)? least = null;
        var lower = belowRow
            .Seams.Select(s => (Seam: s, X: AtMidBottom(below, s)))
            .Where(s => s.X is not null)
            .ToList();
        foreach (Seam seam in row.Seams)
        {
            if (AtMidBottom(region, seam) is not { } x)
            {
                continue;
            }

            foreach ((Seam near, _) in lower.OrderBy(l => Math.Abs(l.X!.Value - x)).Take(2))
            {
                var strip = new FermiStrip(near.Line, tracing.PerpendicularStepMm);
                for (int i = 0; i <= 4; i++)
                {
                    Uv uv = seam.Line.UvAt(seam.In.S + (seam.LengthMm * i / 4));
                    Vec3 point = below.PointAt(uv);
                    double guess = near.In.S + (near.LengthMm * i / 4);
                    double t = Math.Abs(strip.Find(uv, point, new(guess, 0), 1e-3).T);
                    if (least is null || t < least.Value.Item1)
                    {
                        least = (t, point.X);
                    }
                }
            }
        }

        return least;
    }

    private static double? AtMidBottom(LayerRegion region, Seam seam)
    {
        double Level(Uv uv) => uv.V - (region.UpperV(uv.U) / 2);
        double low = Level(seam.In.Uv),
            high = Level(seam.Out.Uv);
        return low * high < 0
            ? region.PointAt(seam.Line.UvAt(seam.Line.Crossing(Level, seam.In.S, seam.Out.S))).X
            : null;
    }
}
