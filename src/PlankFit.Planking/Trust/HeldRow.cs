using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Seams;

namespace PlankFit.Planking.Trust;

/// <summary>
/// How a layer's planks are laid on a hull that is not quite the table's. The master goes by its two seams' marks along keel and chine, the others march from it edge
/// to edge; how many there are, which are tapered, and by what law, is kept.
/// </summary>
internal sealed class HeldRow
{
    private readonly PlankLayerSpec spec;
    private readonly SeamRow planned;
    private readonly string hook;
    private readonly HeldSeam forward,
        after;
    private readonly Tracing tracing;

    private sealed record HeldSeam(TapedEnd Inboard, TapedEnd Outboard, Uv In, Uv Out);

    /// <param name="spec">With the law by which it is laid.</param>
    /// <param name="planned">On the hull as the table has it.</param>
    /// <param name="inner">The face that marks are taped on.</param>
    public HeldRow(
        PlankLayerSpec spec,
        SeamRow planned,
        LayerRegion inner,
        HullSurface hull,
        Tracing tracing
    )
    {
        (this.spec, this.planned, this.tracing) = (spec, planned, tracing);
        StationOnHull from = TapeReadings.Hook(inner, hull, planned);
        hook = from.Name;
        HeldSeam Held(Seam seam)
        {
            (TapedEnd inboard, TapedEnd outboard) = TapeReadings.Ends(inner, from, seam);
            return new(inboard, outboard, seam.In.Uv, seam.Out.Uv);
        }

        forward = Held(planned.Forward(planned.Master)!);
        after = Held(planned.After(planned.Master)!);
    }

    public StationOnHull Hook(HullSurface hull) => hull.Stations.First(s => s.Name == hook);

    /// <summary>The row on another hull. A seam that passes the bottom by there, and all beyond it, are null.</summary>
    /// <param name="widthMm">Of the stock.</param>
    public Seam?[] On(LayerRegion middle, LayerRegion inner, HullSurface hull, double widthMm)
    {
        PlankLayerSpec law = widthMm == spec.WidthMm ? spec : spec with { WidthMm = widthMm };
        var seams = new Seam?[planned.Seams.Length];
        int master = planned.Master;
        StationOnHull from = Hook(hull);
        seams[master - 1] = Tried.Or(() => Through(middle, inner, from, forward));
        seams[master] = Tried.Or(() => Through(middle, inner, from, after));
        for (int i = master - 1; i > 0 && seams[i] is { } seam; i--)
        {
            bool tapered = planned.Tapered.Contains(i);
            seams[i - 1] = Tried.Or(() => Next(middle, law, seam, -1, tapered));
        }

        for (int i = master; i + 1 < seams.Length && seams[i] is { } seam; i++)
        {
            bool tapered = planned.Tapered.Contains(i + 1);
            seams[i + 1] = Tried.Or(() => Next(middle, law, seam, 1, tapered));
        }

        return seams;
    }

    private Seam? Next(LayerRegion region, PlankLayerSpec law, Seam seam, int side, bool tapered)
    {
        var next = new NextSeam(region, law, tracing);
        Seam? found =
            law.Hold == Hold.Angle
                ? next.AtAngle(seam, side) ?? next.AtWidth(seam, side)
                : next.AtWidth(seam, side);
        return
            tapered
            && found is not null
            && SeamFamily.DriftOf(region, law, seam, found, side, tracing) is { } over
            ? next.Tapered(seam, side, SeamFamily.TurnBack(law, over), out _)
            : found;
    }

    private Seam? Through(LayerRegion middle, LayerRegion inner, StationOnHull from, HeldSeam held)
    {
        Uv a = TapeReadings.PlaceOf(inner, from, held.Inboard, held.In),
            b = TapeReadings.PlaceOf(inner, from, held.Outboard, held.Out);
        Vec3 start = middle.PointAt(a),
            end = middle.PointAt(b);
        return SeamThrough.Of(middle, start, end, a, b, tracing);
    }
}
