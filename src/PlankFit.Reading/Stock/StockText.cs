using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Stock;

/// <summary>
/// stock.csv: a board or a count of equal boards a row, in columns of any order known by their heads. A yard's list has the same form, and no count means as many as
/// are wanted. All faults at once, with line and column.
/// </summary>
public static class StockText
{
    internal static readonly ImmutableArray<string> Columns =
    [
        "board",
        "kind",
        "count",
        "length",
        "width",
        "thickness",
        "species",
        "grade",
        "price",
        "ends",
        "faults",
        "grain",
    ];

    private static readonly string[] Needed = ["board", "length", "width", "thickness"];

    /// <param name="file">How messages name the file.</param>
    /// <param name="onHand">The rack's; a yard's otherwise.</param>
    /// <param name="seen">Names of boards read before, with the place of each; those of this file are added.</param>
    public static (ImmutableArray<StockBoard> Boards, ImmutableArray<Finding> Findings) Read(
        string text,
        string file,
        LengthUnit units,
        NestSpec spec,
        bool onHand,
        IDictionary<string, string> seen
    )
    {
        if (FileLook.Mistaken(text, FileForm.Boards, file) is { } mistaken)
        {
            return ([], [new(Severity.Error, file, mistaken)]);
        }

        List<Finding> findings = [];
        ImmutableArray<CsvRow> rows = CsvRows.Read(text, file, findings);
        if (rows.IsEmpty)
        {
            findings.Add(
                new(
                    Severity.Error,
                    file,
                    "the file is empty: its first line names the columns, board,count,length,width,thickness and others, and each further line is a board"
                )
            );
            return ([], [.. findings]);
        }

        if (rows.Length - 1 > Bounds.Rows)
        {
            findings.Add(
                new(
                    Severity.Error,
                    FormattableString.Invariant($"{file}, line {rows[Bounds.Rows + 1].Line}"),
                    Bounds.Beyond(rows.Length - 1, Bounds.Rows, "rows of boards")
                )
            );
            return ([], [.. findings]);
        }

        ImmutableDictionary<string, int>? heads = Heads(rows[0], file, findings);
        ImmutableArray<StockBoard>.Builder boards = ImmutableArray.CreateBuilder<StockBoard>();
        if (heads is not null)
        {
            foreach (CsvRow row in rows.Skip(1))
            {
                var cells = new StockCells(file, units, heads, row, findings);
                if (new StockRow(cells, units, spec, onHand, seen).Read() is { } board)
                {
                    boards.Add(board);
                }
            }
        }

        return (boards.ToImmutable(), InOrder.Of(findings));
    }

    /// <summary>Where each column is; null where one that is needed is missing.</summary>
    private static ImmutableDictionary<string, int>? Heads(
        CsvRow head,
        string file,
        List<Finding> findings
    )
    {
        ImmutableDictionary<string, int>.Builder at = ImmutableDictionary.CreateBuilder<
            string,
            int
        >();
        for (int c = 0; c < head.Cells.Length; c++)
        {
            string name = head.Cells[c].ToLowerInvariant();
            if (name.Length == 0)
            {
                continue;
            }

            string where = FormattableString.Invariant($"{file}, line {head.Line}, column {c + 1}");
            if (!Columns.Contains(name))
            {
                string? near = NearestName.Of(name, Columns);
                findings.Add(
                    new(
                        Severity.Error,
                        where,
                        $"{Quoted.Of(head.Cells[c])}: no such column"
                            + (near is null ? "" : $"; did you mean {Quoted.Of(near)}?")
                            + $" Accepted: {string.Join(", ", Columns)}"
                    )
                );
            }
            else if (!at.TryAdd(name, c))
            {
                findings.Add(
                    new(Severity.Error, where, $"{Quoted.Of(name)}: the column is there twice")
                );
            }
        }

        string[] missing = [.. Needed.Where(n => !at.ContainsKey(n))];
        if (missing.Length > 0)
        {
            findings.Add(
                new(
                    Severity.Error,
                    FormattableString.Invariant($"{file}, line {head.Line}"),
                    $"the first line must name the columns; {string.Join(", ", missing)} {(missing.Length == 1 ? "is" : "are")} missing"
                )
            );
            return null;
        }

        return at.ToImmutable();
    }
}
