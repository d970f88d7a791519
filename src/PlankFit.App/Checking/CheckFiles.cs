using System.Collections.Immutable;
using PlankFit.Draughting.Files;
using PlankFit.Draughting.Skia;
using PlankFit.Draughting.Svg;
using PlankFit.Export.Lines;
using PlankFit.Export.Words;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Checking;

/// <summary>The files that `check` leaves: the lines, the curvature of each, and the findings in words.</summary>
internal static class CheckFiles
{
    private const double PictureDpi = 110;

    public static void Write(
        OutputFolder output,
        Job job,
        FairnessReport fairness,
        ImmutableArray<Finding> unfair
    )
    {
        string findings = FindingsText.Listing(unfair);
        if (fairness.TapeTheEnds is { } ends)
        {
            findings += $"\n{ends}\n";
        }

        output.Write("check.txt", s => s.Write(System.Text.Encoding.UTF8.GetBytes(findings)));
        Picture(output, "lines", LinesPlan.Of(job));
        IReadOnlyList<Drawing> charts = CurvatureCharts.Of(job, fairness);
        for (int i = 0; i < charts.Count; i++)
        {
            Picture(output, charts.Count == 1 ? "curvature" : $"curvature-{i + 1}", charts[i]);
        }
    }

    private static void Picture(OutputFolder output, string name, Drawing drawing)
    {
        output.Write(name + ".svg", s => SvgWriter.Write(s, drawing));
        output.Write(name + ".png", s => PngWriter.Write(s, drawing, PictureDpi));
    }
}
