using System.Globalization;
using System.Net;
using System.Text.Json;
using PlankFit.Pages.Sessions;
using PlankFit.Reading.Offsets;
using static PlankFit.Tests.Pages.ServedTable;

namespace PlankFit.Tests.Pages;

/// <summary>Stations and rows put into the table of offsets on the page and taken out of it, and cells that moved by it.</summary>
public sealed class TableShapingTests
{
    /// <summary>A station put in between two and a row taken out: laid at once, undone, refused where the table is another by now, saved as a new table.</summary>
    [Fact]
    public async Task StationsAndRowsArePutInAndTakenOut()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        string before = File.ReadAllText(TablePath(served));
        var cells = TableCells.Of(before);
        string[] head = [.. cells.Words[cells.Head]];
        (int positions, _) = cells.Find("", "position", head[4])!.Value;
        double Position(int column) =>
            double.Parse(cells.Words[positions][column], CultureInfo.InvariantCulture);
        string between = ((Position(3) + Position(4)) / 2).ToString(CultureInfo.InvariantCulture);
        Task<HttpResponseMessage> Shape(
            bool station,
            bool add,
            int at,
            string[] was,
            string name,
            string more
        ) =>
            served.Post(
                "job/1/table/shape",
                new
                {
                    station,
                    add,
                    at,
                    was,
                    name,
                    more,
                }
            );

        using HttpResponseMessage put = await Shape(true, true, 5, head, "between", between);
        JsonElement state = await served.Tried(await ServedJob.Turn(put));
        Assert.Empty(state.GetProperty("faults").EnumerateArray());
        Assert.Contains(
            "station between put in",
            state.GetProperty("undo").GetString()!,
            StringComparison.Ordinal
        );
        Assert.Equal(before, File.ReadAllText(TablePath(served)));
        // By a page that has not seen it; in no place; with no name.
        foreach (
            (int at, string[] was, string name) in new[]
            {
                (5, head, "other"),
                (99, [.. head[..4], "between", .. head[4..]], "other"),
                (5, [.. head[..4], "between", .. head[4..]], " "),
            }
        )
        {
            using HttpResponseMessage refused = await Shape(true, true, at, was, name, "");
            Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        }

        using (HttpResponseMessage saved = await served.Post("job/1/save", new { }))
        {
            Assert.Equal(HttpStatusCode.OK, saved.StatusCode);
        }

        string mended = Path.Combine(Path.GetDirectoryName(served.JobPath)!, "offsets-mended.csv");
        Assert.Equal("between", TableCells.Of(File.ReadAllText(mended)).Words[cells.Head][4]);
        string[] row = [.. TableCells.Of(File.ReadAllText(mended)).Words[^2]];
        using HttpResponseMessage taken = await Shape(
            false,
            false,
            TableCells.Of(File.ReadAllText(mended)).Words.Length - 1,
            row,
            "",
            ""
        );
        int turn = await ServedJob.Turn(taken);
        await served.Tried(turn);
        using HttpResponseMessage undone = await served.Post("job/1/wish", new { undo = true });
        state = await served.Tried(await ServedJob.Turn(undone));
        Assert.Empty(state.GetProperty("faults").EnumerateArray());
    }

    /// <summary>A cell is that of the row and the station at which it was shown: where another page put in a row above, the empty cell that lies there now is not taken for it.</summary>
    [Fact]
    public void ACellIsThatOfItsRow()
    {
        TableInHand table = new(
            "offsets.csv",
            "line,measure,0,1\nkeel edge,height,10,\nchine,height,20,\n"
        );
        Assert.True(TableMending.IsNamed(table, 2, 4, ["keel edge", "height", "1"]));
        Assert.True(TableMending.IsNamed(table, 2, 4, null));
        Assert.False(TableMending.IsNamed(table, 3, 4, ["keel edge", "height", "1"]));
        Assert.False(TableMending.IsNamed(table, 2, 3, ["keel edge", "height", "1"]));
        Assert.False(TableMending.IsNamed(table, 9, 4, ["keel edge", "height", "1"]));
    }
}
