using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Seams;

namespace PlankFit.Planking.Taping;

/// <summary>Where the edges of planks have their marks on keel and chine: as drawn, or where they were measured.</summary>
public static class EdgePlaces
{
    /// <summary>How far the ends of a fitted plank's edge may lie from where they were drawn, taken along the edge, one standard deviation: our own, no source, mm.</summary>
    private const double NotMeasuredMm = 1;

    /// <summary>Those of the edges that run from keel to chine on the hull as drawn.</summary>
    /// <param name="drawn">Laid with nothing measured.</param>
    /// <param name="asTaped">
    /// Laid on frames and keel as they were taped; null where they were not. Where that makes other planks, these are what its names are of: sheets are made of them.
    /// </param>
    public static ImmutableDictionary<TapedEdge, TapedSeamPlace> Of(
        PlankingJob job,
        Planked drawn,
        Planked? asTaped,
        IEnumerable<TapedEdge> edges
    )
    {
        ImmutableDictionary<TapedEdge, TapedSeamPlace>.Builder places =
            ImmutableDictionary.CreateBuilder<TapedEdge, TapedSeamPlace>();
        var loft = new Lazy<TapedLoft>(() => new(drawn.Job));
        foreach (TapedEdge edge in edges.Distinct())
        {
            if (Of(job, (drawn, asTaped), loft, edge) is { } place)
            {
                places[edge] = place;
            }
        }

        return places.ToImmutable();
    }

    private static TapedSeamPlace? Of(
        PlankingJob job,
        (Planked Drawn, Planked? AsTaped) laid,
        Lazy<TapedLoft> loft,
        TapedEdge edge
    )
    {
        PlankId plank = edge.Plank;
        LaidEdge? asDrawnLaid = Laid(job, laid.Drawn, edge),
            asTapedLaid = laid.AsTaped is null ? null : Laid(job, laid.AsTaped, edge);
        bool others = asTapedLaid is not null && !AreFellows(asDrawnLaid, asTapedLaid);
        if ((others ? asTapedLaid : asDrawnLaid) is not var (layer, from, taped))
        {
            return null;
        }

        // The forward edge of a plank is the after one of the plank before it, and seams are measured by that.
        PlankId named = edge.After ? plank : plank with { Number = plank.Number - 1 };
        double? Measured(PanelEdge on) =>
            job.AsBuilt.Seams.FirstOrDefault(s => s.PlankId == named && s.At == on)?.Mm;
        (double? keel, double? chine) = (Measured(PanelEdge.Lower), Measured(PanelEdge.Upper));
        double face = layer.From.Layer.InnerMm;
        SeamMarks planned = new(from.Name, taped.Inboard.AlongMm, taped.Outboard.AlongMm),
            marks = new(from.Name, keel ?? taped.Inboard.AlongMm, chine ?? taped.Outboard.AlongMm);
        double length = taped.LengthMm;
        // A tape that does not settle on the hull as drawn gives no reading that could be expected.
        if (loft.Value.Between(planned, face) is not { } asDrawn)
        {
            return null;
        }

        if (others)
        {
            // As laid there, less what the frames as taped make of it.
            if (Loft(laid.AsTaped!, plank.Side).Between(planned, face) is not { } asTaped)
            {
                return null;
            }

            length += asDrawn - asTaped;
        }

        if (marks != planned)
        {
            if (loft.Value.Between(marks, face) is not { } asMarked)
            {
                return null;
            }

            length += asMarked - asDrawn;
        }

        bool onTheHull =
            job.AsBuilt.Fitted.Contains(plank)
            || job.AsBuilt.Fitted.Contains(named)
            || job.AsBuilt.Sawn.Any(c => c.Id == plank || c.Id == named);
        return new(
            marks,
            face,
            length,
            onTheHull && (keel is null || chine is null) ? NotMeasuredMm : 0
        )
        {
            IsAsTaped = others,
        };
    }

    private static TapedLoft Loft(Planked planked, Side side) =>
        new(
            planked.Job.AsBuilt.Tables is { } tables
                ? planked.Job with
                {
                    Offsets = tables.Of(side),
                }
                : planked.Job
        );

    /// <param name="From">The station that its marks are measured from.</param>
    private sealed record LaidEdge(LaidLayer Layer, StationOnHull From, TapedSeam Taped);

    /// <summary>An edge from keel to chine where it is laid; null where there is none of its name.</summary>
    private static LaidEdge? Laid(PlankingJob job, Planked planked, TapedEdge edge)
    {
        LaidLayer? layer = LayerOf(planked, edge.Plank);
        int at = layer is null ? -1 : edge.Plank.Number - layer.Row.FirstNumber;
        if (layer is null || at < 0 || at >= layer.Row.Planks)
        {
            return null;
        }

        StationOnHull from = SeamCreeps.From(job, planked.HullOf(edge.Plank.Side));
        return
            TapeReadings.Taped(
                layer.Faces,
                from,
                edge.After ? layer.Row.After(at) : layer.Row.Forward(at)
            )
                is { Inboard.At: PanelEdge.Lower, Outboard.At: PanelEdge.Upper } taped
            ? new(layer, from, taped)
            : null;
    }

    /// <summary>The same plank a little longer or shorter, and not the one beside it that has its number now.</summary>
    private static bool AreFellows(LaidEdge? one, LaidEdge other) =>
        one is not null
        && one.From.Name == other.From.Name
        && Math.Abs(one.Taped.Inboard.AlongMm - other.Taped.Inboard.AlongMm)
            < one.Layer.Spec.WidthMm / 2;

    /// <summary>The plank's layer on its side; starboard's where the sides are alike.</summary>
    private static LaidLayer? LayerOf(Planked? planked, PlankId plank) =>
        planked
            ?.Workings?.Layers.Where(l => l.Number == plank.Layer)
            .OrderByDescending(l => l.From.Side == plank.Side)
            .FirstOrDefault();
}
