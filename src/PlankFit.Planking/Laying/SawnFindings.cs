using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Laying;

/// <summary>When a sawn plank fits, and which planks the room left between fixed ones makes wider than their stock.</summary>
public static class SawnFindings
{
    /// <summary>A length that is out by no more than this fits: 1/32 in, the tolerance of lofting, mm.</summary>
    public const double LengthMm = 0.8;

    /// <summary>Less than this nobody planes off a face, mm: our own bound, no source.</summary>
    public const double ThicknessMm = 0.1;

    private const double NoiseMm = 0.02;

    public static IEnumerable<Finding> Of(Planked planked)
    {
        foreach (PlankLayerPlan layer in planked.PlankLayers)
        {
            foreach (Side side in new[] { Side.Starboard, Side.Port })
            {
                string where =
                    $"layer {layer.Spec.Name}, {(side == Side.Starboard ? "starboard" : "port")}";
                if (OfWidths(planked.Job, layer, side, where) is { } wide)
                {
                    yield return wide;
                }
            }
        }
    }

    /// <summary>Whether the plank goes where it belongs as it was sawn, within these tolerances and what it has to spare.</summary>
    public static bool Fits(SawnFit fit, double gapMm) =>
        !fit.ShortAtAnEnd
        && fit.ShortMm <= fit.SpareMm + LengthMm
        && fit.OpenMm <= gapMm
        && fit.TightMm <= gapMm
        && Math.Abs(fit.ThinnerMm) <= ThicknessMm;

    private static Finding? OfWidths(PlankingJob job, PlankLayerPlan layer, Side side, string where)
    {
        ImmutableArray<Plank> planks = layer.On(side);
        if (planks.All(p => !p.IsFixed))
        {
            return null;
        }

        Plank? widest = planks
            .Where(p => !p.IsFixed && p.Kind != PlankKind.Corner)
            .MaxBy(p => p.WidestMm);
        return widest is not null && widest.WidestMm > layer.Planks.WidthMm + NoiseMm
            ? new(
                Severity.Warning,
                where,
                $"{widest.Id} must be {LengthText.ForPaper(widest.WidestMm, job.Units, RoundTo.Up)} wide to fill the room between planks that are fitted or sawn, and the stock is {LengthText.ForPaper(layer.Planks.WidthMm, job.Units)}: saw it from wider stock"
            )
            {
                Rank = Rank.DoNotSaw,
            }
            : null;
    }
}
