using System.Net;
using System.Text.Json;
using PlankFit.Reading.Offsets;

namespace PlankFit.Tests.Pages;

/// <summary>A served job's table of offsets: where it lies, a slip in it, a cell written anew, a cell as the page has it.</summary>
internal static class ServedTable
{
    public static string TablePath(ServedJob served) =>
        Path.Combine(Path.GetDirectoryName(served.JobPath)!, "offsets.csv");

    /// <summary>Two figures of the chine's height exchanged, in the copy's own table.</summary>
    public static async Task<(
        ServedJob Served,
        int Line,
        int Column,
        string Was,
        string Slip
    )> Spoiled()
    {
        ServedJob served = await ServedJob.Small();
        string text = File.ReadAllText(TablePath(served));
        var cells = TableCells.Of(text);
        string station = cells.Words[cells.Head][6];
        (int row, int column) = cells.Find("chine", "height", station)!.Value;
        string was = cells.Words[row][column],
            slip = $"{was[0]}{was[2]}{was[1]}{was[3..]}";
        Assert.NotEqual(was, slip);
        File.WriteAllText(TablePath(served), cells.With(row, column, slip));
        // What the server was told of by the folder, or reads when it is asked first.
        await served.Tried((await served.State()).GetProperty("turn").GetInt32());
        return (served, row + 1, column + 1, was, slip);
    }

    public static async Task<int> Mend(
        ServedJob served,
        int line,
        int column,
        string was,
        string typed
    )
    {
        using HttpResponseMessage answer = await served.Post(
            "job/1/table",
            new
            {
                line,
                column,
                was,
                typed,
            }
        );
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await ServedJob.Turn(answer);
    }

    public static string Cell(JsonElement table, int line, int column) =>
        table
            .GetProperty("rows")
            .EnumerateArray()
            .Single(r => r.GetProperty("line").GetInt32() == line)
            .GetProperty("cells")[column - 1]
            .GetString()!;
}
