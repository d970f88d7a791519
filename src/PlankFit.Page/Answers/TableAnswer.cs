using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.App.Looking;
using PlankFit.Export.Words;
using PlankFit.Pages.Sessions;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Offsets;

namespace PlankFit.Pages.Answers;

/// <summary>Something that is doubted of one cell of the table.</summary>
/// <param name="Line">Of the file, from 1.</param>
/// <param name="Column">From 1.</param>
internal sealed record DoubtAnswer(int Line, int Column, string Words);

/// <param name="Line">Of the file, from 1.</param>
internal sealed record RowAnswer(int Line, ImmutableArray<string> Cells);

/// <summary>The table of offsets as it stands in its file, or as it was mended since, and what is doubted of it.</summary>
internal sealed partial record TableAnswer(
    string File,
    ImmutableArray<RowAnswer> Rows,
    ImmutableArray<DoubtAnswer> Doubts
)
{
    /// <summary>It was mended, and is not saved.</summary>
    public bool IsMended { get; init; }

    /// <summary>What was probably meant, by line and column.</summary>
    public ImmutableArray<MeantCell> Meant { get; init; } = [];

    /// <summary>The turn that its lines are drawn of; null where the job could not be read so far.</summary>
    public int? Lines { get; init; }

    /// <summary>Null where no job has named a table that can be read.</summary>
    public static TableAnswer? Of(Seen seen)
    {
        if (seen.Table is not { } table)
        {
            return null;
        }

        // Findings name the file alone, whatever folder it lies in.
        return Of(
            Path.GetFileName(table.File),
            TableCells.Of(table.Text),
            seen.Faults.Concat(seen.Good?.Turn == seen.Tried ? seen.Good.Findings : [])
        ) with
        {
            IsMended = TableMending.Applies(seen.History.Present.Text, seen.History.Present.Table),
            Meant = seen.Read?.Meant ?? [],
            Lines = seen.Read?.Job is null ? null : seen.Tried,
        };
    }

    /// <param name="found">Of the job; what is not said of a cell of this file is left out.</param>
    public static TableAnswer Of(string file, TableCells table, IEnumerable<Finding> found) =>
        new(
            file,
            [
                .. table
                    .Words.Select((cells, i) => new RowAnswer(i + 1, cells))
                    .Where(r => !r.Cells.IsEmpty),
            ],
            [.. found.SelectMany(f => DoubtsOf(file, f))]
        );

    private static IEnumerable<DoubtAnswer> DoubtsOf(string file, Finding finding)
    {
        string where = finding.Where;
        if (
            where.StartsWith(file + ", ", StringComparison.Ordinal)
            && Cell().Match(where, file.Length) is { Success: true } at
        )
        {
            yield return new(
                int.Parse(at.Groups[1].ValueSpan, CultureInfo.InvariantCulture),
                int.Parse(at.Groups[2].ValueSpan, CultureInfo.InvariantCulture),
                FindingsText.Words(finding)
            );
        }
    }

    [GeneratedRegex(@"\G, line (\d{1,9}), column (\d{1,9})", RegexOptions.CultureInvariant)]
    private static partial Regex Cell();
}
