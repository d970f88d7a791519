using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Reading.Lengths;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Offsets;

/// <summary>A row of numbers: which line and measure, one value a station, null where the cell is empty or wrong.</summary>
/// <param name="Written">False for each cell that stands empty, so that a wrong one is not taken for unknown.</param>
internal sealed record OffsetCells(
    string Line,
    string Measure,
    int FileLine,
    ImmutableArray<double?> Mm,
    ImmutableArray<bool> Written
);

/// <summary>The rows below the head.</summary>
internal static class OffsetRows
{
    public const string Height = "height";
    public const string HalfBreadth = "half-breadth";
    public const string Position = "position";

    private static readonly string[] Measures = [Height, HalfBreadth, Position];

    public static List<OffsetCells> Read(
        IEnumerable<CsvRow> rows,
        OffsetHead head,
        LengthUnit units,
        string file,
        List<Finding> findings
    )
    {
        var read = new List<OffsetCells>();
        var firstAt = new Dictionary<(string, string), int>();
        foreach (CsvRow row in rows)
        {
            string where = FormattableString.Invariant($"{file}, line {row.Line}");
            if (Named(row, where, findings) is not { } measure)
            {
                continue;
            }

            string line = row.Cells[0];
            if (Name.Fault(line) is { } fault)
            {
                findings.Add(new(Severity.Error, where, $"line {Quoted.Of(line)}: {fault}"));
                continue;
            }

            string shown = line.Length == 0 ? Position : $"{line}, {measure}";
            if (!firstAt.TryAdd((line, measure), row.Line))
            {
                string first = firstAt[(line, measure)].ToString(CultureInfo.InvariantCulture);
                findings.Add(
                    new(Severity.Error, where, $"{shown} is given twice, first on line {first}")
                );
                continue;
            }

            if (!WidthFits(row, head, where, shown, findings))
            {
                continue;
            }

            read.Add(Cells(row, measure, shown, head, units, where, findings));
        }

        return read;
    }

    /// <summary>Where a cell stands, for people: line, column and the station that heads it.</summary>
    public static string Cell(string file, int line, int station, string name) =>
        FormattableString.Invariant($"{file}, line {line}, column {station + 3} (station {name})");

    private static string? Named(CsvRow row, string where, List<Finding> findings)
    {
        string measure = row.Cells.Length > 1 ? row.Cells[1].ToLowerInvariant() : "";
        if (!Measures.Contains(measure))
        {
            string? near = NearestName.Of(measure, Measures);
            findings.Add(
                new(
                    Severity.Error,
                    where,
                    $"measure {Quoted.Of(row.Cells.Length > 1 ? row.Cells[1] : "")} is not known"
                        + (near is null ? "" : $" (did you mean \"{near}\"?)")
                        + "; accepted in the second column: height, half-breadth or position"
                )
            );
            return null;
        }

        if (row.Cells[0].Length == 0 && measure != Position)
        {
            findings.Add(
                new(
                    Severity.Error,
                    where,
                    $"a row of {measure} without the name of its line in the first column"
                )
            );
            return null;
        }

        return measure;
    }

    private static bool WidthFits(
        CsvRow row,
        OffsetHead head,
        string where,
        string shown,
        List<Finding> findings
    )
    {
        bool spare = row.Cells.Skip(head.Width).Any(c => c.Length > 0);
        if (row.Cells.Length >= head.Width && !spare)
        {
            return true;
        }

        findings.Add(
            new(
                Severity.Error,
                where,
                FormattableString.Invariant(
                    $"{shown}: {row.Cells.Length} cells where the head has {head.Width}: each row has a cell for every station, empty where the table has no value"
                )
            )
        );
        return false;
    }

    private static OffsetCells Cells(
        CsvRow row,
        string measure,
        string shown,
        OffsetHead head,
        LengthUnit units,
        string where,
        List<Finding> findings
    )
    {
        double?[] values = new double?[head.Columns.Length];
        bool[] written = new bool[head.Columns.Length];
        for (int i = 0; i < values.Length; i++)
        {
            string cell = row.Cells[i + 2];
            written[i] = cell.Length > 0;
            if (!written[i])
            {
                continue;
            }

            LengthReading reading = LengthNotation.ReadCell(cell, units);
            string? fault = reading.Ok
                ? measure == HalfBreadth && reading.Mm < 0
                    ? "is negative: a half-breadth goes outboard from the centreline, 0 or more"
                    : null
                : $"{reading.Fault}; {LengthNotation.AcceptedInCell(units)}";
            if (fault is null)
            {
                values[i] = reading.Mm;
                continue;
            }

            string asWritten = Quoted.Of(cell.Replace(CsvLines.InchMark, '"'));
            findings.Add(
                new(
                    Severity.Error,
                    FormattableString.Invariant(
                        $"{where}, column {i + 3} (station {head.Columns[i]})"
                    ),
                    $"{shown}: {asWritten} {fault}"
                )
            );
        }

        return new(row.Cells[0], measure, row.Line, [.. values], [.. written]);
    }
}
