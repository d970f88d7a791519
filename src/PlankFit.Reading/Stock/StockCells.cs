using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Reading.Lengths;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Stock;

/// <summary>The cells of one row of a stock file by their columns' names, and what is wrong with them.</summary>
internal sealed class StockCells(
    string file,
    LengthUnit units,
    ImmutableDictionary<string, int> heads,
    CsvRow row,
    List<Finding> findings
)
{
    private const double LongestMm = 30_000;

    public string File => file;

    public int Line => row.Line;

    public string Where => FormattableString.Invariant($"{file}, line {row.Line}");

    /// <summary>Whether a fault of this row was told.</summary>
    public bool AreFaulty { get; private set; }

    /// <summary>Tells of more cells than the first line names.</summary>
    public void CountAsTheHead()
    {
        int named = heads.Values.Max() + 1;
        if (row.Cells.Skip(named).Any(c => c.Length > 0))
        {
            Fault(
                "",
                string.Join(',', row.Cells),
                $"the row has {row.Cells.Length} cells and the first line names {named}; a cell with commas in it stands in quotes"
            );
        }
    }

    /// <summary>What is written in a column; nothing where the file or the row lacks it.</summary>
    public string Of(string column) =>
        heads.TryGetValue(column, out int c) && c < row.Cells.Length ? row.Cells[c] : "";

    /// <summary>A length or width greater than nothing, mm.</summary>
    public double Size(string column)
    {
        double mm = Length(column, Of(column)) ?? 0;
        if (!AreFaulty && !(mm > 0))
        {
            Fault(column, Of(column), "must be greater than 0");
        }
        else if (mm > LongestMm)
        {
            Fault(column, Of(column), "is more than 30 m");
        }

        return mm;
    }

    /// <summary>A length in the job's units or its own, mm; null where it is none, which is said.</summary>
    public double? Length(string column, string text)
    {
        LengthReading length = LengthNotation.Read(text, units);
        if (length.Fault is { } fault)
        {
            Fault(column, text, $"{fault}; {LengthNotation.AcceptedInList(units)}");
            return null;
        }

        return length.Mm;
    }

    /// <summary>A text that the builder chose; null where there is none, or where it will not do, which is said.</summary>
    public string? Named(string column)
    {
        string text = Of(column);
        if (Name.Fault(text) is { } fault)
        {
            Fault(column, text, fault);
            return null;
        }

        return text.Length > 0 ? text : null;
    }

    /// <summary>Tells what is wrong with a cell; with the row where it names no column.</summary>
    public void Fault(string column, string written, string message)
    {
        AreFaulty = true;
        findings.Add(
            new(
                Severity.Error,
                heads.TryGetValue(column, out int c)
                    ? FormattableString.Invariant($"{Where}, column {c + 1} ({column})")
                    : Where,
                $"{Quoted.Of(written)}: {message}"
            )
        );
    }
}
