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
    private readonly HeldPlank?[] held;

    /// <summary>What the passes of a plank's outer seam came to on the table's hull, and of a tapered one's when it is turned.</summary>
    private sealed record HeldPlank(SettledWidth Straight, SettledWidth? Turned);

    private sealed record HeldSeam(TapedEnd Inboard, TapedEnd Outboard, Uv In, Uv Out);

    /// <param name="spec">With the law by which it is laid.</param>
    /// <param name="planned">On the hull as the table has it.</param>
    /// <param name="faces">Seams lie on the middle, marks are taped on the inner one.</param>
    public HeldRow(
        PlankLayerSpec spec,
        SeamRow planned,
        (LayerRegion Middle, LayerRegion Inner) faces,
        HullSurface hull,
        Tracing tracing
    )
    {
        (this.spec, this.planned, this.tracing) = (spec, planned, tracing);
        (LayerRegion middle, LayerRegion inner) = faces;
        StationOnHull from = TapeReadings.Hook(inner, hull, planned);
        hook = from.Name;
        HeldSeam Held(Seam seam)
        {
            (TapedEnd inboard, TapedEnd outboard) = TapeReadings.Ends(inner, from, seam);
            return new(inboard, outboard, seam.In.Uv, seam.Out.Uv);
        }

        forward = Held(planned.Forward(planned.Master)!);
        after = Held(planned.After(planned.Master)!);
        held =
        [
            .. Enumerable
                .Range(0, planned.Seams.Length)
                .Select(i =>
                    i < planned.Master - 1 ? HeldOf(middle, planned.Seams[i + 1], -1, i + 1)
                    : i > planned.Master ? HeldOf(middle, planned.Seams[i - 1], 1, i)
                    : null
                ),
        ];
    }

    /// <summary>Null where it has no seam there, and of a law that holds the angle.</summary>
    private HeldPlank? HeldOf(LayerRegion middle, Seam seam, int side, int plank)
    {
        if (spec.Hold == Hold.Angle)
        {
            return null;
        }

        var next = new NextSeam(middle, spec, tracing);
        return Tried.Or(() =>
            next.Settled(seam, side, 0) is { } straight
                ? new HeldPlank(straight, Turned(middle, next, seam, side, plank, straight))
                : null
        );
    }

    private SettledWidth? Turned(
        LayerRegion middle,
        NextSeam next,
        Seam seam,
        int side,
        int plank,
        SettledWidth straight
    ) =>
        planned.Tapered.Contains(plank)
        && next.From(straight, seam, side, 0) is { } found
        && SeamFamily.DriftOf(middle, spec, seam, found, side, tracing) is { } over
            ? next.Settled(seam, side, next.TurnOf(seam, SeamFamily.TurnBack(spec, over)))
            : null;

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
            seams[i - 1] = Tried.Or(() => Next(middle, law, seam, -1, tapered, held[i - 1]));
        }

        for (int i = master; i + 1 < seams.Length && seams[i] is { } seam; i++)
        {
            bool tapered = planned.Tapered.Contains(i + 1);
            seams[i + 1] = Tried.Or(() => Next(middle, law, seam, 1, tapered, held[i + 1]));
        }

        return seams;
    }

    private Seam? Next(
        LayerRegion region,
        PlankLayerSpec law,
        Seam seam,
        int side,
        bool tapered,
        HeldPlank? plank
    )
    {
        var next = new NextSeam(region, law, tracing);
        Seam? found =
            law.Hold == Hold.Angle ? next.AtAngle(seam, side) ?? next.AtWidth(seam, side)
            : plank is null ? next.AtWidth(seam, side)
            : next.From(plank.Straight, seam, side, 0);
        if (
            !tapered
            || found is null
            || SeamFamily.DriftOf(region, law, seam, found, side, tracing) is not { } over
        )
        {
            return found;
        }

        double turn = SeamFamily.TurnBack(law, over);
        return plank?.Turned is { } turned
            ? next.From(turned, seam, side, next.TurnOf(seam, turn))
            : next.Tapered(seam, side, turn, out _);
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
