using System.Collections.Immutable;
using System.Text.RegularExpressions;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Units;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.AsBuilt;

/// <summary>measured.csv: what, where, side, value; one row a measurement. All faults at once, with line and column.</summary>
public static partial class MeasuredText
{
    /// <summary>What the first line of the file says.</summary>
    internal static readonly string[] Columns = ["what", "where", "side", "value"];

    /// <summary>Whether what stands there begins as such a file does, or there is nothing yet.</summary>
    public static bool IsOne(string text) =>
        CsvRows.Read(Remark().Replace(text, ""), "", []) is var rows
        && (rows.IsEmpty || IsHead(rows[0]));

    /// <param name="file">How messages name the file.</param>
    /// <param name="keelLayers">Names that a keel half-width may give.</param>
    /// <param name="plankLayers">How many layers of planks there are.</param>
    public static (AsBuiltSpec Spec, ImmutableArray<Finding> Findings) Read(
        string text,
        string file,
        (LengthUnit Written, LengthUnit Shown) units,
        OffsetTable table,
        ImmutableArray<string> keelLayers,
        int plankLayers,
        MeasuredBottom? bottom = null
    )
    {
        if (FileLook.Mistaken(text, FileForm.Measured, file) is { } mistaken)
        {
            return (AsBuiltSpec.None, [new(Severity.Error, file, mistaken)]);
        }

        List<Finding> findings = [];
        ImmutableArray<CsvRow> rows = CsvRows.Read(Remark().Replace(text, ""), file, findings);
        var reader = new MeasuredRows(file, units.Written, table, keelLayers, plankLayers, findings)
        {
            Tape = new(table, bottom?.Panel),
            Shown = units.Shown,
            Taped = bottom is { IsTrusted: true } of ? new(table, of.Panel, units) : null,
        };
        if (rows.IsEmpty)
        {
            findings.Add(
                new(
                    Severity.Error,
                    file,
                    "the file is empty: it begins with the line what,where,side,value and has one measurement a line"
                )
            );
            return (AsBuiltSpec.None, [.. findings]);
        }

        if (!IsHead(rows[0]))
        {
            findings.Add(
                new(
                    Severity.Error,
                    FormattableString.Invariant($"{file}, line {rows[0].Line}"),
                    $"{Quoted.Of(string.Join(',', rows[0].Cells))}: the first line must be what,where,side,value"
                )
            );
            return (AsBuiltSpec.None, [.. findings]);
        }

        if (rows.Length - 1 > Bounds.Rows)
        {
            findings.Add(
                new(
                    Severity.Error,
                    FormattableString.Invariant($"{file}, line {rows[Bounds.Rows + 1].Line}"),
                    Bounds.Beyond(rows.Length - 1, Bounds.Rows, "measurements")
                )
            );
            return (AsBuiltSpec.None, [.. findings]);
        }

        foreach (CsvRow row in rows.Skip(1))
        {
            reader.Take(row);
        }

        return (reader.Spec, InOrder.Of(findings));
    }

    private static bool IsHead(CsvRow row) =>
        row.Cells.SequenceEqual(Columns, StringComparer.OrdinalIgnoreCase);

    /// <summary>What follows a blank and a # to the end of its line.</summary>
    [GeneratedRegex(@"[ \t]+#[^\r\n]*", RegexOptions.CultureInvariant)]
    private static partial Regex Remark();
}
