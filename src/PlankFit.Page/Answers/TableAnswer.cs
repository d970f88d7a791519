using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.Export.Words;
using PlankFit.Pages.Sessions;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Offsets;
using PlankFit.Reading.Text;

namespace PlankFit.Pages.Answers;

/// <summary>Something that is doubted of one cell of the table.</summary>
/// <param name="Line">Of the file, from 1.</param>
/// <param name="Column">From 1.</param>
internal sealed record DoubtAnswer(int Line, int Column, string Words);

/// <param name="Line">Of the file, from 1.</param>
internal sealed record RowAnswer(int Line, ImmutableArray<string> Cells);

/// <summary>The table of offsets as it stands in its file, and what is doubted of it.</summary>
internal sealed partial record TableAnswer(
    string File,
    ImmutableArray<RowAnswer> Rows,
    ImmutableArray<DoubtAnswer> Doubts
)
{
    /// <summary>Null where no job has named a table that can be read.</summary>
    public static TableAnswer? Of(Seen seen)
    {
        if (seen.OffsetsPath is not { } path)
        {
            return null;
        }

        string file = Path.GetFileName(path);
        return TextFile.Read(path, file).Text is { } text
            ? Of(file, TableCells.Of(text), seen.Faults.Concat(seen.Good?.Findings ?? []))
            : null;
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
