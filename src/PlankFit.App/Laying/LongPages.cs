using PlankFit.Export;
using PlankFit.Export.Skia;
using PlankFit.Export.Tiling;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>A drawing in true size for paper: one long page for a roll, or pages of the job's paper where it is longer than a page of a PDF may be or the job asks for them.</summary>
internal static class LongPages
{
    public static IReadOnlyList<Drawing> Of(Job job, Drawing fullSize)
    {
        var options = new TilingOptions(job.Output.Paper, Inches: !LengthUnits.IsMetric(job.Units));
        if (job.Output.Patterns == PatternPages.Long)
        {
            Drawing roll = Tiler.LongPage(fullSize, options);
            if (Math.Max(roll.WidthMm, roll.HeightMm) <= PdfWriter.LongestMm)
            {
                return [roll];
            }
        }

        return Tiler.Pages(fullSize, options);
    }
}
