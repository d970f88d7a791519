using System.Globalization;
using PlankFit.App.Running;
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

/// <summary>A whole panel laid flat: sheets to a scale, full size as DXF and SVG, and as one long PDF page where that is short enough.</summary>
internal static class PanelFiles
{
    public static FeatureFiles Of(BottomPlan plan)
    {
        Job job = plan.Job;
        string name = NameOf(job.Hull.Panel),
            what = $"The {job.Hull.Panel.Name} laid flat";
        Lazy<PanelPlan> panel = new(() => BottomPanel.Develop(plan.Planked, PanelOptions.Usual));
        var sheets = BookSection.Of(
            InBook.LaidFlat,
            name,
            what,
            () => PanelSheets.Pages(plan, panel.Value)
        );
        return new(
            [sheets],
            [],
            [
                new(
                    what,
                    output =>
                    {
                        foreach ((int k, Drawing page) in sheets.Pages.Value.Index())
                        {
                            output.Write(
                                $"drawings/{name}-{(k + 1).ToString(CultureInfo.InvariantCulture)}.svg",
                                s => SvgWriter.Write(s, page)
                            );
                        }

                        FullSize(output, job, name, PanelFullSize.Of(job, panel.Value));
                    }
                ),
            ]
        );
    }

    private static string NameOf(Panel panel) =>
        panel.HasKeel ? "bottom-laid-flat" : $"panel-{panel.Letter}-laid-flat";

    private static void FullSize(OutputFolder output, Job job, string name, Drawing full)
    {
        output.Write($"full-size/{name}.svg", s => SvgWriter.Write(s, full));
        MadeFiles.Dxf(output, name, full, job);
        Drawing roll = Tiler.LongPage(
            full,
            new(OutputAsked.Paper(job.Output), Inches: !LengthUnits.IsMetric(job.Units))
        );
        if (LongPages.IsTaken(roll))
        {
            output.Write($"full-size/{name}.pdf", s => PdfWriter.Write(s, [roll], roll.Title));
        }
    }
}
