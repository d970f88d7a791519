using System.Collections.Immutable;
using System.Globalization;
using PlankFit.App.Running;
using PlankFit.Draughting.Dxf;
using PlankFit.Draughting.Files;
using PlankFit.Draughting.Skia;
using PlankFit.Draughting.Svg;
using PlankFit.Draughting.Tiling;
using PlankFit.Export;
using PlankFit.Export.Panels;
using PlankFit.Geometry.Development;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Panels;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>A whole panel laid flat: sheets to a scale as PDF and SVG, full size as DXF and SVG, and as one long PDF page where that is short enough.</summary>
internal static class PanelFiles
{
    public static FileWork Of(BottomPlan plan) =>
        new($"the {plan.Job.Hull.Panel.Name} laid flat", output => Write(output, plan));

    private static string NameOf(Panel panel) =>
        panel.HasKeel ? "bottom-laid-flat" : $"panel-{panel.Letter}-laid-flat";

    private static void Write(OutputFolder output, BottomPlan plan)
    {
        Job job = plan.Job;
        string name = NameOf(job.Hull.Panel);
        PanelPlan panel = BottomPanel.Develop(plan.Planked, PanelOptions.Usual);
        ImmutableArray<Drawing> pages = PanelSheets.Pages(job, panel);
        output.Write(
            name + ".pdf",
            s => PdfWriter.Write(s, pages, $"{job.Name}: the {job.Hull.Panel.Name} laid flat")
        );
        for (int k = 0; k < pages.Length; k++)
        {
            Drawing page = pages[k];
            output.Write(
                $"{name}-{(k + 1).ToString(CultureInfo.InvariantCulture)}.svg",
                s => SvgWriter.Write(s, page)
            );
        }

        Drawing full = PanelFullSize.Of(job, panel);
        output.Write(name + "-full-size.svg", s => SvgWriter.Write(s, full));
        foreach (
            (string folder, DxfVersion version) in new[]
            {
                ("r2000", DxfVersion.R2000),
                ("r12", DxfVersion.R12),
            }
        )
        {
            output.Write(
                $"dxf/{folder}/{name}.dxf",
                s => DxfWriter.Write(s, full, OutputAsked.Dxf(job.Output, version))
            );
        }

        Drawing roll = Tiler.LongPage(
            full,
            new(OutputAsked.Paper(job.Output), Inches: !LengthUnits.IsMetric(job.Units))
        );
        if (Math.Max(roll.WidthMm, roll.HeightMm) <= PdfWriter.LongestMm)
        {
            output.Write(name + "-full-size.pdf", s => PdfWriter.Write(s, [roll], roll.Title));
        }
    }
}
