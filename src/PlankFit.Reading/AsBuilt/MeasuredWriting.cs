using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.Planking.Units;
using PlankFit.Reading.Lengths;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.AsBuilt;

/// <summary>
/// Rows put into the text of measured.csv, each with a remark that says which reading it is. What is there already is not put there twice, what was read anew takes the
/// place of what it was before, and every other line stays as it is to the last sign.
/// </summary>
public static partial class MeasuredWriting
{
    private const string Signs = "=+-@\t\r\n";

    /// <summary>A file with nothing in it yet.</summary>
    public static readonly string Empty = string.Join(',', MeasuredText.Columns) + "\n";

    /// <param name="entries">What is to stand there too.</param>
    /// <param name="superseded">Of a mark in the file: whether its reading was taken back or read anew, so that its row goes.</param>
    public static string With(
        string text,
        IReadOnlyList<MeasuredEntry> entries,
        Func<string, bool> superseded
    )
    {
        HashSet<string> there = [.. Marks(text)];
        string newLine = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n",
            kept = string.Concat(
                Line()
                    .Matches(text)
                    .Select(m => m.Value)
                    .Where(l => MarkOf(l) is not { } mark || !superseded(mark))
            );
        string[] head = [.. CsvLines.Split(kept).Where(l => !string.IsNullOrWhiteSpace(l)).Take(1)];
        if (head.Length == 0)
        {
            kept += kept.Length > 0 && !kept.EndsWith('\n') ? newLine : "";
            kept += Empty.Replace("\n", newLine, StringComparison.Ordinal);
        }

        char separator = head is [{ } first] ? CsvLines.Separator(first) : ',';
        string added = string.Concat(
            entries
                .Where(e => there.Add(e.Mark))
                .Select(e => $"{Row(e.Cells, separator)}    # page {e.Mark}{newLine}")
        );
        return added.Length == 0 || kept.EndsWith('\n') ? kept + added : kept + newLine + added;
    }

    /// <summary>The marks of the rows that were put there.</summary>
    public static IEnumerable<string> Marks(string text) =>
        Line().Matches(text).Select(m => MarkOf(m.Value)).OfType<string>();

    /// <summary>Whether nothing stands there but rows with such marks.</summary>
    public static bool IsAllOf(string text, Func<string, bool> known) =>
        CsvLines.Split(text).Where(l => !string.IsNullOrWhiteSpace(l)).ToArray()
            is [var head, .. var rows]
        && head.Trim() == Empty.Trim()
        && rows.All(r => MarkOf(r) is { } mark && known(mark));

    /// <summary>A length with its own unit as a cell of a file of that unit has it: a bare number where that says the same, and <c>in</c> for inches.</summary>
    public static string Value(string length, LengthUnit written) =>
        LengthUnits.IsMetric(written) && LengthNotation.Read(length, written) is { Ok: true } read
            ? NumberText.Trimmed(read.Mm / LengthUnits.MmPer(written), 6)
            // Without quotes: a spreadsheet that saves the file would not double them with a remark behind.
            : length.Replace("\"", " in", StringComparison.Ordinal);

    /// <summary>A name with a blank and a # in it would be cut off there as a remark is: no row can hold it.</summary>
    public static bool Holds(MeasuredEntry entry) =>
        !entry.Cells.Any(c => c.Contains('#', StringComparison.Ordinal) || c.Any(char.IsControl));

    private static string Row(ImmutableArray<string> cells, char separator) =>
        string.Join(separator, cells.Select(c => Cell(c, separator)));

    /// <summary>As our own lists have it: a text that a spreadsheet would take for a formula has an apostrophe before it.</summary>
    private static string Cell(string cell, char separator)
    {
        string guarded =
            cell.Length > 0
            && Signs.Contains(cell[0], StringComparison.Ordinal)
            && !double.TryParse(
                cell,
                NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out _
            )
                ? "'" + cell
                : cell;
        return guarded.AsSpan().IndexOfAny([separator, '"', ',']) < 0
            ? guarded
            : $"\"{guarded.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }

    private static string? MarkOf(string line) =>
        Put().Match(line) is { Success: true } put ? put.Groups[1].Value : null;

    [GeneratedRegex(@"[^\n]*\n|[^\n]+\z", RegexOptions.CultureInvariant)]
    private static partial Regex Line();

    [GeneratedRegex(@"# page ([0-9a-f]{12})\b", RegexOptions.CultureInvariant)]
    private static partial Regex Put();
}
