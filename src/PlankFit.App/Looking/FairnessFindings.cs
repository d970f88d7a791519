using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Offsets;

namespace PlankFit.App.Looking;

/// <summary>What the judge of fairness found, each with the file, line and cell where it stands.</summary>
internal static class FairnessFindings
{
    /// <param name="text">The table of offsets as it stands in the file.</param>
    public static ImmutableArray<Finding> Of(
        FairnessReport report,
        Job job,
        string text,
        string file
    )
    {
        AsWritten asWritten = job.AsWritten;
        var cells = TableCells.Of(text);
        return
        [
            .. report.Stations.Select(s =>
                At(
                    cells.Place(file, "", "position", s.Station),
                    "position:",
                    s.ToFinding(job.WrittenIn, job.Units, asWritten)
                )
            ),
            .. report.Suspicions.Select(s =>
                At(
                    cells.Place(file, s.Line, OffsetRow.Word(s.Measure), s.Station),
                    $"{s.Line} {OffsetRow.Word(s.Measure)}",
                    s.ToFinding(job.WrittenIn, job.Units, asWritten)
                )
            ),
            .. report.NotJudged,
        ];
    }

    private static Finding At(string? place, string what, Finding finding) =>
        place is null
            ? finding
            : finding with
            {
                About = place,
                Message = $"{what} {finding.Message}",
            };
}
