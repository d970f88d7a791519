using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Offsets;

/// <summary>A table of offsets as read, with the file's lines of its rows, so that later checks can say where a value stands.</summary>
/// <param name="FileLines">By line and measure, the line of the file.</param>
/// <param name="ReversedFromMm">Where positions grow forward in the files: x = this minus the position. Null where they grow aft and x is the position.</param>
/// <param name="RowNames">The line names of all rows, of those too that were refused.</param>
/// <param name="Columns">For each station of the table, its column in the file, counted from 0 at the first station.</param>
public sealed record OffsetsReading(
    OffsetTable Table,
    IReadOnlyDictionary<(string Line, string Measure), int> FileLines,
    double? ReversedFromMm,
    ImmutableHashSet<string> RowNames,
    ImmutableArray<int> Columns
);

/// <summary>The text of offsets.csv to a table.</summary>
public static class OffsetsText
{
    /// <summary>
    /// Never throws for what the text holds. Where positions grow forward, x = (greatest position of a station) - position, so that the foremost
    /// station stands at 0 and x grows aft; lines with positions of their own and the job's positions are turned by the same rule.
    /// </summary>
    /// <returns>The table, without what is faulty in it; null where its stations cannot be told.</returns>
    public static (OffsetsReading? Reading, ImmutableArray<Finding> Findings) Read(
        string text,
        string file,
        LengthUnit units,
        bool forward
    )
    {
        List<Finding> findings = [];
        if (FileLook.Mistaken(text, FileForm.Offsets, file) is { } mistaken)
        {
            return (null, [new(Severity.Error, file, mistaken)]);
        }

        ImmutableArray<CsvRow> rows = CsvRows.Read(text, file, findings);
        if (rows.IsEmpty)
        {
            findings.Add(
                new(
                    Severity.Error,
                    file,
                    "the table is empty: it begins with the line line,measure and the names of the stations"
                )
            );
            return (null, InOrder.Of(findings));
        }

        if (rows.Length - 1 > Bounds.OffsetRows)
        {
            findings.Add(
                new(
                    Severity.Error,
                    FormattableString.Invariant($"{file}, line {rows[Bounds.OffsetRows + 1].Line}"),
                    Bounds.Beyond(
                        rows.Length - 1,
                        Bounds.OffsetRows,
                        "rows in the table of offsets"
                    )
                )
            );
            return (null, InOrder.Of(findings));
        }

        if (OffsetHead.Read(rows[0], file, findings) is not { } head)
        {
            return (null, InOrder.Of(findings));
        }

        List<OffsetCells> cells = OffsetRows.Read(rows.Skip(1), head, units, file, findings);
        ImmutableArray<double>? positions = StationRow.Read(
            cells.Find(c => c.Line.Length == 0),
            head,
            forward,
            file,
            findings
        );
        if (rows.Length > 1 && cells.All(c => c.Line.Length == 0) && findings.Count == 0)
        {
            findings.Add(new(Severity.Error, file, "the table has stations but no lines"));
        }

        ImmutableHashSet<string> names =
        [
            .. rows.Skip(1).Select(r => r.Cells[0]).Where(n => n.Length > 0),
        ];
        return (
            positions is { } known ? Build(head, known, cells, names, forward) : null,
            InOrder.Of(findings)
        );
    }

    private static OffsetsReading Build(
        OffsetHead head,
        ImmutableArray<double> positions,
        List<OffsetCells> cells,
        ImmutableHashSet<string> names,
        bool forward
    )
    {
        double? from = forward ? positions.Max() : null;
        int[] order = [.. Enumerable.Range(0, positions.Length)];
        if (forward && positions[0] < positions[^1])
        {
            Array.Reverse(order);
        }

        double Turned(double mm) => from is { } f ? f - mm : mm;
        ImmutableArray<Station> stations =
        [
            .. order.Select(i => new Station(head.Columns[i], Turned(positions[i]))),
        ];

        var rows = cells.ToDictionary(c => (c.Line, c.Measure));
        ImmutableArray<double?> Row(string line, string measure) =>
            rows.TryGetValue((line, measure), out OffsetCells? row)
                ? [.. order.Select(i => row.Mm[i])]
                : [.. order.Select(_ => (double?)null)];

        ImmutableArray<OffsetLine> lines =
        [
            .. cells
                .Where(c => c.Line.Length > 0)
                .Select(c => c.Line)
                .Distinct()
                .Select(name => new OffsetLine(
                    name,
                    [.. Row(name, OffsetRows.Position).Select(p => p is { } mm ? Turned(mm) : p)],
                    Row(name, OffsetRows.Height),
                    Row(name, OffsetRows.HalfBreadth)
                )),
        ];
        return new(
            new(stations, lines),
            rows.ToDictionary(r => r.Key, r => r.Value.FileLine),
            from,
            names,
            [.. order]
        );
    }
}
