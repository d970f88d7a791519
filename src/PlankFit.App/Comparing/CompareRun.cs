using System.Collections.Immutable;
using PlankFit.App.Running;
using PlankFit.Draughting.Skia;
using PlankFit.Draughting.Svg;
using PlankFit.Export.Comparing;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Reading.Text;

namespace PlankFit.App.Comparing;

/// <summary>Several lay-outs side by side, and which of them nothing beats.</summary>
public static class CompareRun
{
    /// <param name="stop">Once lay-outs are being laid it ends that, and what is laid by then is written.</param>
    public static RunReport Run(
        RunRequest request,
        CompareAsked asked,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    )
    {
        string name = Path.GetFileName(request.JobPath);
        var text = TextFile.Read(request.JobPath, name.Length > 0 ? name : request.JobPath);
        Tried tried = timings.Time(
            "lay and judge every lay-out",
            () => Trying.Of(request.JobPath, text, asked, progress, stop)
        );
        if (tried.Comparison is not { } comparison)
        {
            return RunReport.Faults(tried.Findings);
        }

        if (comparison.Layouts.IsEmpty)
        {
            throw new OperationCanceledException(stop);
        }

        if (!comparison.Laid.Any())
        {
            return RunReport.Faults([
                .. tried.Findings,
                .. comparison.NotLaid.SelectMany(l =>
                    l.Why.Select(w => new Finding(Severity.Error, l.Name, w))
                ),
            ]);
        }

        IReadOnlyList<string> written = timings.Time(
            "write chart, list and pictures",
            () =>
                WrittenFiles.Write(
                    request.Folder,
                    "compare",
                    Files(comparison),
                    progress,
                    timings,
                    comparison.IsStopped ? CancellationToken.None : stop
                )
        );
        return new(
            ExitCode.Done,
            tried.Findings,
            [
                CompareWords.Head(comparison),
                .. CompareWords.Table(comparison),
                .. CompareWords.Fewer(comparison, asked.Mark + "by") is { } fewer
                    ? [fewer]
                    : (string[])[],
                .. CompareWords.NotLaid(comparison),
                $"{written.Count} files are in {request.Folder}: start with {Sheets}.",
            ],
            request.Json ? WrittenFiles.Text(s => CompareJson.Write(comparison, s)) : null
        )
        {
            First = PlanWords.InMargin(comparison.Job) is { Length: > 0 } unfair ? [unfair] : [],
        };
    }

    private const string Sheets = "sheets/compare.pdf";

    private static ImmutableArray<FileWork> Files(Comparison c) =>
        [
            MadeFiles.File(
                Sheets,
                s => PdfWriter.Write(s, CompareSheets.Of(c), $"{c.Job.Name}: lay-outs side by side")
            ),
            MadeFiles.File("tables/compare.csv", s => Csv.Write(CompareTables.Layouts(c), s)),
            MadeFiles.File("drawings/compare.svg", s => SvgWriter.Write(s, CompareChart.Of(c))),
            MadeFiles.File("compare.json", s => CompareJson.Write(c, s)),
        ];
}
