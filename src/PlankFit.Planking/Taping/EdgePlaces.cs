using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Seams;

namespace PlankFit.Planking.Taping;

/// <summary>Where the edges of planks have their marks on keel and chine: as drawn, or where they were measured.</summary>
internal static class EdgePlaces
{
    /// <summary>How far the ends of a fitted plank's edge may lie from where they were drawn, taken along the edge, one standard deviation: our own, no source, mm.</summary>
    private const double NotMeasuredMm = 1;

    /// <summary>Those of the edges that run from keel to chine on the hull as drawn.</summary>
    /// <param name="drawn">Laid with nothing measured.</param>
    public static ImmutableDictionary<TapedEdge, TapedSeamPlace> Of(
        PlankingJob job,
        Planked drawn,
        IEnumerable<TapedEdge> edges
    )
    {
        ImmutableDictionary<TapedEdge, TapedSeamPlace>.Builder places =
            ImmutableDictionary.CreateBuilder<TapedEdge, TapedSeamPlace>();
        var loft = new Lazy<TapedLoft>(() => new(drawn.Job));
        foreach (TapedEdge edge in edges.Distinct())
        {
            if (Of(job, drawn, loft, edge) is { } place)
            {
                places[edge] = place;
            }
        }

        return places.ToImmutable();
    }

    private static TapedSeamPlace? Of(
        PlankingJob job,
        Planked drawn,
        Lazy<TapedLoft> loft,
        TapedEdge edge
    )
    {
        PlankId plank = edge.Plank;
        LaidLayer? layer = drawn.Workings?.Layers.FirstOrDefault(l => l.Number == plank.Layer);
        int at = layer is null ? -1 : plank.Number - layer.Row.FirstNumber;
        if (layer is null || at < 0 || at >= layer.Row.Planks)
        {
            return null;
        }

        StationOnHull from = SeamCreeps.From(job, drawn.Hull);
        Seam? seam = edge.After ? layer.Row.After(at) : layer.Row.Forward(at);
        if (
            TapeReadings.Taped(layer.Faces, from, seam)
            is not { Inboard.At: PanelEdge.Lower, Outboard.At: PanelEdge.Upper } taped
        )
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
        );
    }
}
