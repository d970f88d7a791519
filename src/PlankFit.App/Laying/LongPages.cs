using PlankFit.Draughting.Skia;
using PlankFit.Draughting.Tiling;
using PlankFit.Export;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>A drawing in true size for paper: for a roll, on one long page or a few where a PDF takes none so long; or cut up on the job's paper where it asks for that.</summary>
internal static class LongPages
{
    public static IReadOnlyList<Drawing> Of(Job job, Drawing fullSize)
    {
        var options = new TilingOptions(
            OutputAsked.Paper(job.Output),
            Inches: !LengthUnits.IsMetric(job.Units)
        );
        if (job.Output.Patterns == PatternPages.Tiled)
        {
            return Tiler.Pages(fullSize, options with { FromCorner = true });
        }

        Drawing roll = Tiler.LongPage(fullSize, options);
        return IsTaken(roll)
            ? [roll]
            : Tiler.Pages(
                fullSize,
                options with
                {
                    Sheet = OfRoll(fullSize, options, roll.HeightMm),
                }
            );
    }

    /// <summary>A PDF takes a page of its size.</summary>
    public static bool IsTaken(Drawing page) =>
        Math.Max(page.WidthMm, page.HeightMm) <= PdfWriter.LongestMm;

    /// <summary>Lengths of a roll, all alike, as few as a PDF allows.</summary>
    private static (double WidthMm, double HeightMm) OfRoll(
        Drawing drawing,
        TilingOptions options,
        double heightMm
    )
    {
        double most = PdfWriter.LongestMm - (2 * options.MarginMm) - options.OverlapMm;
        double pages = Math.Ceiling(drawing.WidthMm / most);
        double window = Math.Ceiling((drawing.WidthMm / pages) + options.OverlapMm);
        return (window + (2 * options.MarginMm), heightMm);
    }
}
