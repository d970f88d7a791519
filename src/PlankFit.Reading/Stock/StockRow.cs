using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>One row of a stock file to a board, with every fault of its cells.</summary>
internal sealed class StockRow(
    string file,
    LengthUnit units,
    NestSpec spec,
    bool onHand,
    ImmutableDictionary<string, int> heads,
    IDictionary<string, string> seen,
    List<Finding> findings
)
{
    private const double LongestMm = 30_000;
    private const int MostOfOne = 10_000;

    private CsvRow row = new(0, []);
    private bool faulty;

    public StockBoard? Read(CsvRow next)
    {
        (row, faulty) = (next, false);
        if (
            next.Cells.Length > heads.Values.Max() + 1
            && next.Cells.Skip(heads.Values.Max() + 1).Any(c => c.Length > 0)
        )
        {
            Fault(
                "",
                string.Join(',', next.Cells),
                $"the row has {next.Cells.Length} cells and the first line names {heads.Values.Max() + 1}; a cell with commas in it stands in quotes"
            );
        }

        string id = Name();
        StockKind kind = Kind();
        double length = Size("length"),
            width = Size("width"),
            thickness = Size("thickness");
        (double marked, double other) = Ends();
        bool across = Grain(kind);
        if (!faulty && marked + other >= length)
        {
            Fault("ends", Cell("ends"), "nothing of the board's length is left between its ends");
        }

        ImmutableArray<BoardFault> faults = faulty ? [] : Faults(length, width);
        string? species = Named("species");
        string? grade = Grade();
        int? count = Count();
        decimal? price = Price();
        return faulty
            ? null
            : new(
                id,
                kind,
                length,
                width,
                thickness,
                species,
                grade,
                price,
                count,
                onHand,
                marked,
                other,
                faults,
                file,
                row.Line
            )
            {
                GrainAcross = across,
            };
    }

    private string Name()
    {
        string id = Cell("board");
        string where = FormattableString.Invariant($"{file}, line {row.Line}");
        if (id.Length == 0)
        {
            Fault("board", id, "give the board a name, as it is marked: B-04");
        }
        else if (id.Length > 24 || id.Any(c => !(char.IsAsciiLetterOrDigit(c) || c is '-' or '_')))
        {
            Fault(
                "board",
                id,
                "a board's name has letters, digits, - and _, no more than 24: it also names files"
            );
        }
        else if (!seen.TryAdd(id.ToUpperInvariant(), where))
        {
            Fault(
                "board",
                id,
                $"is the name of the board in {seen[id.ToUpperInvariant()]} already"
            );
        }

        return id;
    }

    private StockKind Kind()
    {
        switch (Cell("kind").ToLowerInvariant())
        {
            case "" or "board":
                return StockKind.Board;
            case "sheet":
                return StockKind.Sheet;
            default:
                Fault("kind", Cell("kind"), "accepted: board or sheet, or nothing for a board");
                return StockKind.Board;
        }
    }

    private bool Grain(StockKind kind)
    {
        switch (Cell("grain").ToLowerInvariant())
        {
            case "" or "along":
                return false;
            case "across" when kind == StockKind.Sheet:
                return true;
            case "across":
                Fault(
                    "grain",
                    Cell("grain"),
                    "a board's grain runs along it; only a sheet's may run across"
                );
                return false;
            default:
                Fault("grain", Cell("grain"), "accepted: along or across the length, sheets only");
                return false;
        }
    }

    private double Size(string column)
    {
        double mm = Length(column, Cell(column)) ?? 0;
        if (!faulty && !(mm > 0))
        {
            Fault(column, Cell(column), "must be greater than 0");
        }
        else if (mm > LongestMm)
        {
            Fault(column, Cell(column), "is more than 30 m");
        }

        return mm;
    }

    /// <summary>40/0: unusable at the marked end and at the other; one figure for both.</summary>
    private (double, double) Ends()
    {
        string cell = Cell("ends");
        if (cell.Length == 0)
        {
            return (0, 0);
        }

        ImmutableArray<string> ends = BoardStretches.Ends(cell, units);
        if (ends.Length != 2)
        {
            Fault(
                "ends",
                cell,
                "accepted: one length for both ends, or two with a stroke between, marked end first: 40/0"
            );
            return (0, 0);
        }

        double marked = Length("ends", ends[0]) ?? 0,
            other = Length("ends", ends[1]) ?? 0;
        if (marked < 0 || other < 0)
        {
            Fault("ends", cell, "must not be less than 0");
        }

        return (marked, other);
    }

    private ImmutableArray<BoardFault> Faults(double length, double width)
    {
        var faults = ImmutableArray.CreateBuilder<BoardFault>();
        foreach (
            string text in Cell("faults")
                .Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        )
        {
            (BoardFault? fault, string? wrong) = BoardStretches.Fault(text, length, width, units);
            if (fault is not null)
            {
                faults.Add(fault);
            }
            else
            {
                Fault("faults", text, wrong!);
            }
        }

        return faults.ToImmutable();
    }

    /// <summary>A text that the builder chose; null where there is none, or where it will not do, which is said.</summary>
    private string? Named(string column)
    {
        string text = Cell(column);
        if (Reading.Name.Fault(text) is { } fault)
        {
            Fault(column, text, fault);
            return null;
        }

        return text.Length > 0 ? text : null;
    }

    private string? Grade()
    {
        string? grade = Named("grade");
        if (
            grade is not null
            && !spec.Grades.IsEmpty
            && !spec.Grades.Contains(grade, StringComparer.OrdinalIgnoreCase)
        )
        {
            Fault(
                "grade",
                grade,
                $"is none of the job's grades; there is {string.Join(", ", spec.Grades.Select(Quoted.Of))}"
            );
        }

        return grade;
    }

    private int? Count()
    {
        string cell = Cell("count");
        if (cell.Length == 0)
        {
            return onHand ? 1 : null;
        }

        if (
            int.TryParse(cell, NumberStyles.None, CultureInfo.InvariantCulture, out int count)
            && count is > 0 and <= MostOfOne
        )
        {
            return count;
        }

        Fault(
            "count",
            cell,
            onHand
                ? "accepted: a whole number from 1 to 10000, or nothing for one"
                : "accepted: a whole number from 1 to 10000, or nothing for as many as are wanted"
        );
        return null;
    }

    private decimal? Price()
    {
        string cell = Cell("price");
        if (cell.Length == 0)
        {
            if (spec.Objective == NestObjective.Cost)
            {
                Fault(
                    "price",
                    cell,
                    "the job asks for the least cost, and this board has no price: give one, 0 for a board that costs nothing more, or ask for the least area"
                );
            }

            return null;
        }

        if (
            decimal.TryParse(
                cell,
                NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out decimal price
            )
            && price < 10_000_000
        )
        {
            return price;
        }

        Fault("price", cell, "accepted: a number with a point for decimals, in your own money");
        return null;
    }

    private double? Length(string column, string text)
    {
        LengthReading length = LengthNotation.ReadCell(text, units);
        if (length.Fault is { } fault)
        {
            Fault(column, text, $"{fault}; {LengthNotation.AcceptedInCell(units)}");
            return null;
        }

        return length.Mm;
    }

    private string Cell(string column) =>
        heads.TryGetValue(column, out int c) && c < row.Cells.Length ? row.Cells[c] : "";

    private void Fault(string column, string written, string message)
    {
        faulty = true;
        string where = FormattableString.Invariant($"{file}, line {row.Line}");
        findings.Add(
            new(
                Severity.Error,
                heads.TryGetValue(column, out int c)
                    ? FormattableString.Invariant($"{where}, column {c + 1} ({column})")
                    : where,
                $"{Quoted.Of(written)}: {message}"
            )
        );
    }
}
