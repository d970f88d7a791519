using System.Globalization;
using System.Text;
using PlankFit.Draughting.Files;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Offsets;

namespace PlankFit.Pages.Sessions;

/// <summary>What is to be put into the table, or taken out of it.</summary>
/// <param name="Station">A station; else a row.</param>
/// <param name="Add">Put in; else taken out.</param>
/// <param name="At">The column that a station is to have or has, the line of a row or of the one that a new row is to follow; from 1.</param>
/// <param name="Was">The cells of that line, of a station of the head, as far as the page knows.</param>
/// <param name="Name">Of a new station, or the line of a new row.</param>
/// <param name="More">The position of a new station, or the measure of a new row.</param>
internal sealed record ShapeWish(
    bool Station,
    bool Add,
    int At,
    IReadOnlyList<string>? Was,
    string? Name,
    string? More
);

/// <summary>A cell of the table of offsets written anew, and the table that comes of it saved beside the old one.</summary>
internal static class TableMending
{
    /// <summary>No value of a table is so long, signs.</summary>
    private const int Longest = 200;

    private const string Offsets = "hull.offsets";

    /// <summary>So many of them nobody keeps.</summary>
    private const int MostCopies = 1000;

    /// <param name="line">From 1; <paramref name="column"/> likewise.</param>
    /// <param name="was">What stands in the cell as far as is known where it was typed.</param>
    /// <returns>Null where there is no such cell, it holds something else by now, or what was typed is no cell's value.</returns>
    public static TableInHand? With(
        TableInHand table,
        int line,
        int column,
        string was,
        string typed
    )
    {
        var cells = TableCells.Of(table.Text);
        int row = line - 1,
            at = column - 1;
        if (
            row < 0
            || row >= cells.Words.Length
            || cells.Words[row].IsEmpty
            || at < 0
            || at >= cells.Words[cells.Head].Length
            || typed.Length > Longest
            || typed.Any(char.IsControl)
            // A line that begins so is a comment.
            || (at == 0 && typed.TrimStart().StartsWith('#'))
        )
        {
            return null;
        }

        string there = at < cells.Words[row].Length ? cells.Words[row][at] : "";
        return there == was ? table with { Text = cells.With(row, at, typed.Trim()) } : null;
    }

    /// <summary>Whether a cell is that of the row and the station that the page shows it at: a row that another put in has moved all below it.</summary>
    /// <param name="names">Of its row the line and the measure, and its station's name; null where nothing is said.</param>
    public static bool IsNamed(
        TableInHand table,
        int line,
        int column,
        IReadOnlyList<string>? names
    )
    {
        if (names is null)
        {
            return true;
        }

        var cells = TableCells.Of(table.Text);
        string At(int row, int at) =>
            row >= 0 && row < cells.Words.Length && at >= 0 && at < cells.Words[row].Length
                ? cells.Words[row][at]
                : "";
        return names.SequenceEqual([At(line - 1, 0), At(line - 1, 1), At(cells.Head, column - 1)]);
    }

    /// <summary>A cell of a session's table of offsets anew, in the same history as the job's text.</summary>
    /// <param name="line">From 1; <paramref name="column"/> likewise.</param>
    /// <param name="was">What stands there as far as the page knows.</param>
    /// <returns>Null where there is no such cell, it holds something else by now, or what was typed is no cell's value.</returns>
    public static int? Mend(
        this JobSession session,
        int line,
        int column,
        string was,
        string typed,
        IReadOnlyList<string>? names = null
    ) =>
        session.Mend(
            table =>
                IsNamed(table, line, column, names) ? With(table, line, column, was, typed) : null,
            $"{(was.Length > 0 ? was : "nothing")} to {(typed.Length > 0 ? typed.Trim() : "nothing")}"
        );

    /// <summary>A station or a row more, or fewer.</summary>
    /// <returns>Null where there is no such place, something else stands there by now, or what was typed is no name.</returns>
    public static TableInHand? Shaped(TableInHand table, ShapeWish wish)
    {
        var cells = TableCells.Of(table.Text);
        int at = wish.At - 1,
            row = wish.Station ? cells.Head : at;
        if (
            row < 0
            || row >= cells.Words.Length
            || wish.Was is not { } was
            || !cells.Words[row].SequenceEqual(was)
        )
        {
            return null;
        }

        string name = wish.Name?.Trim() ?? "",
            more = wish.More?.Trim() ?? "";
        string? text = wish switch
        {
            { Station: true, Add: true } => TableShape.WithStation(cells, at, name, more),
            { Station: true } => TableShape.WithoutStation(cells, at),
            { Add: true } => TableShape.WithRow(cells, at, name, more),
            _ => TableShape.WithoutRow(cells, at),
        };
        return text is null ? null : table with { Text = text };
    }

    /// <summary>What undoing it takes back.</summary>
    public static string Said(ShapeWish wish) =>
        (wish.Station, wish.Add) switch
        {
            (true, true) => $"station {PlainText.Of(wish.Name ?? "")} put in",
            (true, false) =>
                $"station {PlainText.Of(wish.Was?.ElementAtOrDefault(wish.At - 1) ?? "")} taken out",
            (false, true) => $"row {PlainText.Of($"{wish.Name} {wish.More}".Trim())} put in",
            _ =>
                $"row {PlainText.Of(string.Join(' ', wish.Was?.Take(TableShape.FirstStation) ?? []).Trim())} taken out",
        };

    /// <summary>Writes a mended table under a name that is free, beside the job, which is to name it; one that is there already with the same text serves.</summary>
    /// <param name="jobPath">Beside which names are.</param>
    /// <returns>The name, as the job is to have it, and whether the file is a new one.</returns>
    /// <exception cref="OutputException">The disk refused.</exception>
    public static (string Name, bool IsNew) Save(string jobPath, TableInHand table)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(jobPath))!,
            of = Path.GetFileNameWithoutExtension(table.File),
            end = Path.GetExtension(table.File);
        byte[] bytes = Encoding.UTF8.GetBytes(table.Text);
        for (int i = 1; i <= MostCopies; i++)
        {
            string number = i == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $"-{i}"),
                name = $"{of}-mended{number}{end}",
                path = Path.Combine(folder, name);
            var there = new FileInfo(path);
            if (there.LinkTarget is null && !Path.Exists(path))
            {
                DurableFile.Write(path, bytes);
                return (name, true);
            }

            if (
                there is { LinkTarget: null, Exists: true }
                && there.Length == bytes.Length
                && File.ReadAllBytes(path).AsSpan().SequenceEqual(bytes)
            )
            {
                return (name, false);
            }
        }

        throw new OutputException(
            $"There are {MostCopies} mended copies of {table.File} already: take some away.",
            folder
        );
    }

    /// <summary>The job's text with that name as its table's; null where the text cannot be read.</summary>
    public static string? Named(string job, string name) => JobChange.Of(job, Offsets, name);

    /// <summary>The table as a job's text names it once it is saved; null where that names none.</summary>
    public static TableInHand? Saved(string job, TableInHand table) =>
        JobFields.Of(job).FirstOrDefault(f => f.Address == Offsets)?.Written is { } name
            ? table with
            {
                File = name,
            }
            : null;

    /// <summary>Whether a job's text names the table that was mended.</summary>
    public static bool Applies(string job, TableInHand? table) =>
        table is not null
        && JobFields.Of(job).Any(f => f.Address == Offsets && f.Written == table.File);
}
