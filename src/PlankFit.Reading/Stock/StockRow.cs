using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Stock;

/// <summary>One row of a stock file to a board, with every fault of its cells.</summary>
internal sealed class StockRow(
    StockCells cells,
    LengthUnit units,
    NestSpec spec,
    bool onHand,
    IDictionary<string, string> seen
)
{
    private const int MostOfOne = 10_000;

    public StockBoard? Read()
    {
        cells.CountAsTheHead();
        string id = Name();
        StockKind kind = Kind();
        double length = cells.Size("length"),
            width = cells.Size("width"),
            thickness = cells.Size("thickness");
        (double marked, double other) = Ends();
        bool across = Grain(kind);
        if (!cells.AreFaulty && marked + other >= length)
        {
            cells.Fault(
                "ends",
                cells.Of("ends"),
                "nothing of the board's length is left between its ends"
            );
        }

        ImmutableArray<BoardFault> faults = cells.AreFaulty ? [] : Faults(length, width);
        string? species = cells.Named("species");
        string? grade = Grade();
        int? count = Count();
        decimal? price = Price();
        return cells.AreFaulty
            ? null
            : new(
                id,
                kind,
                new(length, width, thickness),
                new(species, grade),
                new(price, count, onHand),
                new(marked, other, faults),
                new(cells.File, cells.Line)
            )
            {
                GrainAcross = across,
            };
    }

    private string Name()
    {
        string id = cells.Of("board");
        if (id.Length == 0)
        {
            cells.Fault("board", id, "give the board a name, as it is marked: B-04");
        }
        else if (id.Length > 24 || id.Any(c => !(char.IsAsciiLetterOrDigit(c) || c is '-' or '_')))
        {
            cells.Fault(
                "board",
                id,
                "a board's name has letters, digits, - and _, no more than 24: it also names files"
            );
        }
        else if (!seen.TryAdd(id.ToUpperInvariant(), cells.Where))
        {
            cells.Fault(
                "board",
                id,
                $"is the name of the board in {seen[id.ToUpperInvariant()]} already"
            );
        }

        return id;
    }

    private StockKind Kind()
    {
        switch (cells.Of("kind").ToLowerInvariant())
        {
            case "" or "board":
                return StockKind.Board;
            case "sheet":
                return StockKind.Sheet;
            default:
                cells.Fault(
                    "kind",
                    cells.Of("kind"),
                    "accepted: board or sheet, or nothing for a board"
                );
                return StockKind.Board;
        }
    }

    private bool Grain(StockKind kind)
    {
        switch (cells.Of("grain").ToLowerInvariant())
        {
            case "" or "along":
                return false;
            case "across" when kind == StockKind.Sheet:
                return true;
            case "across":
                cells.Fault(
                    "grain",
                    cells.Of("grain"),
                    "a board's grain runs along it; only a sheet's may run across"
                );
                return false;
            default:
                cells.Fault(
                    "grain",
                    cells.Of("grain"),
                    "accepted: along or across the length, sheets only"
                );
                return false;
        }
    }

    /// <summary>40/0: unusable at the marked end and at the other; one figure for both.</summary>
    private (double, double) Ends()
    {
        string cell = cells.Of("ends");
        if (cell.Length == 0)
        {
            return (0, 0);
        }

        ImmutableArray<string> ends = BoardStretches.Ends(cell, units);
        if (ends.Length != 2)
        {
            cells.Fault(
                "ends",
                cell,
                "accepted: one length for both ends, or two with a stroke between, marked end first: 40/0"
            );
            return (0, 0);
        }

        double marked = cells.Length("ends", ends[0]) ?? 0,
            other = cells.Length("ends", ends[1]) ?? 0;
        if (marked < 0 || other < 0)
        {
            cells.Fault("ends", cell, "must not be less than 0");
        }

        return (marked, other);
    }

    private ImmutableArray<BoardFault> Faults(double length, double width)
    {
        ImmutableArray<BoardFault>.Builder faults = ImmutableArray.CreateBuilder<BoardFault>();
        foreach (
            string text in cells
                .Of("faults")
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
                cells.Fault("faults", text, wrong!);
            }
        }

        return faults.ToImmutable();
    }

    private string? Grade()
    {
        string? grade = cells.Named("grade");
        if (
            grade is not null
            && !spec.Grades.IsEmpty
            && !spec.Grades.Contains(grade, StringComparer.OrdinalIgnoreCase)
        )
        {
            cells.Fault(
                "grade",
                grade,
                $"is none of the job's grades; there is {string.Join(", ", spec.Grades.Select(Quoted.Of))}"
            );
        }

        return grade;
    }

    private int? Count()
    {
        string cell = cells.Of("count");
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

        cells.Fault(
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
        string cell = cells.Of("price");
        if (cell.Length == 0)
        {
            if (spec.Objective == NestObjective.Cost)
            {
                cells.Fault(
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

        cells.Fault(
            "price",
            cell,
            "accepted: a number with a point for decimals, in your own money"
        );
        return null;
    }
}
