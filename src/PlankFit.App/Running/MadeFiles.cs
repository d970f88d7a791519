using System.Collections.Immutable;
using PlankFit.Draughting.Dxf;
using PlankFit.Draughting.Files;
using PlankFit.Draughting.Skia;
using PlankFit.Draughting.Svg;
using PlankFit.Export;
using PlankFit.Export.Binding;
using PlankFit.Export.Tables;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Running;

/// <summary>The kinds of file that every part of a run makes, and the folders that they lie in.</summary>
internal static class MadeFiles
{
    public const double PictureDpi = 110;

    /// <summary>The pages that have all that was found.</summary>
    public const string First = "before-you-saw.pdf";

    public const string Book = "bench-book.pdf";
    public const string Workbook = "tables/tables.xlsx";

    public static FileWork File(string name, Action<Stream> write) =>
        new(name, output => output.Write(name, write));

    /// <summary>The version that the job asks for lies in dxf/; where it asks for both, R12 in a folder of its own below.</summary>
    public static string DxfName(string name, DxfVersion version, OutputSpec asked) =>
        asked.Dxf == DxfAsked.Both && version == DxfVersion.R12
            ? $"dxf/r12/{name}.dxf"
            : $"dxf/{name}.dxf";

    public static void Dxf(OutputFolder output, string name, Drawing drawing, Job job)
    {
        foreach (DxfVersion version in OutputAsked.Versions(job.Output))
        {
            output.Write(
                DxfName(name, version, job.Output),
                s => DxfWriter.Write(s, drawing, OutputAsked.Dxf(job.Output, version))
            );
        }
    }

    /// <summary>Patterns in true size.</summary>
    public static FileWork FullSize(
        string name,
        Job job,
        string what,
        Func<IReadOnlyList<Drawing>> pages
    ) => File($"full-size/{name}.pdf", s => PdfWriter.Write(s, pages(), $"{job.Name}: {what}"));

    /// <summary>One drawing as SVG, and as PNG where the job asks for it.</summary>
    public static FileWork Picture(string name, Job job, Func<Drawing> draw) =>
        new(
            $"drawings/{name}",
            output =>
            {
                Drawing drawing = draw();
                output.Write($"drawings/{name}.svg", s => SvgWriter.Write(s, drawing));
                if (job.Output.DrawingsAsPng)
                {
                    output.Write(
                        $"drawings/{name}.png",
                        s => PngWriter.Write(s, drawing, PictureDpi)
                    );
                }
            }
        );

    /// <summary>All sheets in one book.</summary>
    public static FileWork BenchBook(Job job, ImmutableArray<BookSection> sections) =>
        File(
            Book,
            s =>
            {
                // Drawn side by side, bound one after the other.
                _ = Parallel.ForEach(sections, section => _ = section.Pages.Value);
                PdfWriter.Write(
                    s,
                    Export.Binding.BenchBook.Of(
                        job,
                        sections.Select(b => new BoundSheets(b.Name, b.Pages.Value))
                    )
                );
            }
        );

    /// <summary>Sections of the book one by one, where the job asks for them.</summary>
    public static IEnumerable<FileWork> SingleSheets(
        Job job,
        ImmutableArray<BookSection> sections
    ) =>
        job.Output.SingleSheets
            ? sections
                .Where(s => s.Place != InBook.BeforeYouSaw)
                .Select(section => SingleSheets(job, section))
            : [];

    public static FileWork SingleSheets(Job job, BookSection section) =>
        File(
            $"sheets/{section.File}.pdf",
            s => PdfWriter.Write(s, section.Pages.Value, $"{job.Name}: {section.Name}")
        );

    /// <summary>All that was found, by itself whatever the job asks for: it is to be read first.</summary>
    public static FileWork BeforeYouSaw(Job job, ImmutableArray<BookSection> sections)
    {
        BookSection section = sections.Single(s => s.Place == InBook.BeforeYouSaw);
        return File(
            $"{section.File}.pdf",
            s => PdfWriter.Write(s, section.Pages.Value, $"{job.Name}: {section.Name}")
        );
    }

    /// <summary>Every table as CSV.</summary>
    public static IEnumerable<FileWork> Csvs(ImmutableArray<ListedTable> tables) =>
        tables.Select(t => File($"tables/{t.File}.csv", s => Csv.Write(t.Table.Value, s)));

    /// <summary>All tables in one workbook.</summary>
    public static FileWork AllTables(ImmutableArray<ListedTable> tables) =>
        File(
            Workbook,
            s =>
                Export.Tables.Workbook.Write(
                    [.. tables.Select(t => new WorkbookSheet(t.Table.Value, t.FrozenColumns))],
                    s
                )
        );
}
