using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Offsets;

namespace PlankFit.App.Looking;

/// <summary>A cell that does not lie fair, and what was probably meant.</summary>
/// <param name="Line">Of the table's text, from 1.</param>
/// <param name="Column">From 1.</param>
/// <param name="Value">In the table's own notation.</param>
public sealed record MeantCell(int Line, int Column, string Value)
{
    /// <summary>Those for which a slip is known; none that the job has as written.</summary>
    internal static ImmutableArray<MeantCell> Of(FairnessReport report, Job job, string text)
    {
        var cells = TableCells.Of(text);
        return
        [
            .. report
                .Suspicions.Where(s => s.MeantMm is not null && !job.AsWritten.Has(s.Cell.Key))
                .Select(s => (s, At: cells.Find(s.Line, OffsetRow.Word(s.Measure), s.Station)))
                .Where(m => m.At is not null)
                .Select(m => new MeantCell(
                    m.At!.Value.Row + 1,
                    m.At.Value.Column + 1,
                    TableText.Of(m.s.MeantMm!.Value, job.WrittenIn)
                )),
        ];
    }
}
