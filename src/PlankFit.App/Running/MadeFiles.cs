using PlankFit.Draughting.Dxf;
using PlankFit.Draughting.Files;
using PlankFit.Draughting.Skia;
using PlankFit.Draughting.Svg;
using PlankFit.Export;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Running;

/// <summary>The kinds of file that every part of a run makes.</summary>
internal static class MadeFiles
{
    public const double PictureDpi = 110;

    public static string DxfName(string name, DxfVersion version) =>
        $"dxf/{(version == DxfVersion.R12 ? "r12" : "r2000")}/{name}.dxf";

    /// <summary>One drawing in both versions of DXF, each in its folder.</summary>
    public static void BothDxf(OutputFolder output, string name, Drawing drawing, Job job)
    {
        foreach (DxfVersion version in new[] { DxfVersion.R2000, DxfVersion.R12 })
        {
            output.Write(
                DxfName(name, version),
                s => DxfWriter.Write(s, drawing, OutputAsked.Dxf(job.Output, version))
            );
        }
    }

    public static FileWork File(string name, Action<Stream> write) =>
        new(name, output => output.Write(name, write));

    public static FileWork Pdf(
        string name,
        BottomPlan plan,
        string what,
        Func<IReadOnlyList<Drawing>> pages
    ) => File(name, s => PdfWriter.Write(s, pages(), $"{plan.Job.Name}: {what}"));

    /// <summary>One drawing as SVG, PDF and PNG.</summary>
    public static FileWork Picture(string name, Func<Drawing> draw) =>
        new(
            name,
            output =>
            {
                Drawing drawing = draw();
                output.Write(name + ".svg", s => SvgWriter.Write(s, drawing));
                output.Write(name + ".pdf", s => PdfWriter.Write(s, [drawing], drawing.Title));
                output.Write(name + ".png", s => PngWriter.Write(s, drawing, PictureDpi));
            }
        );
}
