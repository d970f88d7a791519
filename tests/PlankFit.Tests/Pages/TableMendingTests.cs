using System.Net;
using System.Text.Json;
using PlankFit.Pages.Sessions;
using PlankFit.Reading.Offsets;
using static PlankFit.Tests.Pages.ServedTable;

namespace PlankFit.Tests.Pages;

/// <summary>The table of offsets mended on the page: laid at once, undone with everything else, saved as a new table beside the old one.</summary>
public sealed class TableMendingTests
{
    /// <summary>Other lay-outs are laid to the table as it is mended, not as it lies on the disk, where nothing can be laid to it.</summary>
    [Fact]
    public async Task OtherLayoutsGoByTheMendedTable()
    {
        (ServedJob served, int line, int column, string was, string slip) = await Spoiled();
        await using (served)
        {
            await served.Tried(await Mend(served, line, column, slip, was));
            async Task<bool> IsLaid()
            {
                using HttpResponseMessage begun = await served.Post(
                    "job/1/others",
                    new { width = "90" }
                );
                Assert.True(begun.IsSuccessStatusCode);
                using Stream news = await served.Client.GetStreamAsync(
                    "job/1/news",
                    ServedJob.Stop
                );
                using var lines = new StreamReader(news);
                JsonElement now = await served.Json("job/1/others");
                while (now.GetProperty("isBusy").GetBoolean())
                {
                    Assert.NotNull(await lines.ReadLineAsync(ServedJob.Stop));
                    now = await served.Json("job/1/others");
                }

                return now.GetProperty("layouts")
                    .EnumerateArray()
                    .Any(l => l.GetProperty("number").GetInt32() == 0);
            }

            Assert.True(await IsLaid());
            using HttpResponseMessage undone = await served.Post("job/1/wish", new { undo = true });
            await served.Tried(await ServedJob.Turn(undone));
            // So far out of fair nothing is laid.
            Assert.False(await IsLaid());
        }
    }

    /// <summary>Steps that nobody waits between: a mend that was undone does not come back with the next one, and one right after saving is taken or refused, never lost.</summary>
    [Fact]
    public async Task StepsWithoutWaitingKeepTheirOrder()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        var cells = TableCells.Of(File.ReadAllText(TablePath(served)));
        string station = cells.Words[cells.Head][4],
            next = cells.Words[cells.Head][5];
        (int row, int column) = cells.Find("chine", "height", station)!.Value;
        int other = cells.Find("chine", "height", next)!.Value.Column;
        string was = cells.Words[row][column],
            wasNext = cells.Words[row][other];
        await served.Tried(await Mend(served, row + 1, column + 1, was, was + ".4"));
        using (HttpResponseMessage undone = await served.Post("job/1/wish", new { undo = true }))
        {
            Assert.Equal(HttpStatusCode.OK, undone.StatusCode);
        }

        int turn = await Mend(served, row + 1, other + 1, wasNext, wasNext + ".3");
        JsonElement table = await served.Json("job/1/table");
        Assert.Equal(was, Cell(table, row + 1, column + 1));
        Assert.Equal(wasNext + ".3", Cell(table, row + 1, other + 1));
        await served.Tried(turn);
        using HttpResponseMessage saved = await served.Post("job/1/save", new { });
        Assert.Equal(HttpStatusCode.OK, saved.StatusCode);
        turn = await Mend(served, row + 1, column + 1, was, was + ".2");
        await served.Tried(turn);
        table = await served.Json("job/1/table");
        Assert.Equal(was + ".2", Cell(table, row + 1, column + 1));
        Assert.Equal(wasNext + ".3", Cell(table, row + 1, other + 1));
        Assert.True(table.GetProperty("isMended").GetBoolean());
    }

    /// <summary>What was probably meant is told in the table's own notation at its cell; taken, the doubt is gone; undone, it is back. The file stays as it was.</summary>
    [Fact]
    public async Task WhatWasMeantIsTakenAndUndone()
    {
        (ServedJob served, int line, int column, string was, string slip) = await Spoiled();
        await using ServedJob _ = served;
        string before = File.ReadAllText(TablePath(served));
        JsonElement table = await served.Json("job/1/table");
        JsonElement meant = Assert.Single(
            table.GetProperty("meant").EnumerateArray(),
            m => m.GetProperty("line").GetInt32() == line
        );
        Assert.Equal(column, meant.GetProperty("column").GetInt32());
        Assert.Equal(was, meant.GetProperty("value").GetString());
        Assert.Contains(
            table.GetProperty("doubts").EnumerateArray(),
            d =>
                d.GetProperty("line").GetInt32() == line
                && d.GetProperty("column").GetInt32() == column
        );

        await served.Tried(await Mend(served, line, column, slip, was));
        table = await served.Json("job/1/table");
        Assert.True(table.GetProperty("isMended").GetBoolean());
        Assert.Equal(was, Cell(table, line, column));
        Assert.DoesNotContain(
            table.GetProperty("doubts").EnumerateArray(),
            d =>
                d.GetProperty("line").GetInt32() == line
                && d.GetProperty("column").GetInt32() == column
        );
        JsonElement state = await served.State();
        Assert.False(state.GetProperty("saved").GetBoolean());
        Assert.NotEqual(JsonValueKind.Null, state.GetProperty("laid").ValueKind);
        using (
            HttpResponseMessage lines = await served.Get(
                $"job/1/lines/{state.GetProperty("turn").GetInt32()}"
            )
        )
        {
            Assert.Equal("image/svg+xml", lines.Content.Headers.ContentType!.MediaType);
        }

        using HttpResponseMessage undone = await served.Post("job/1/wish", new { undo = true });
        await served.Tried(await ServedJob.Turn(undone));
        table = await served.Json("job/1/table");
        Assert.False(table.GetProperty("isMended").GetBoolean());
        Assert.Equal(slip, Cell(table, line, column));
        using HttpResponseMessage redone = await served.Post("job/1/wish", new { redo = true });
        await served.Tried(await ServedJob.Turn(redone));
        Assert.Equal(was, Cell(await served.Json("job/1/table"), line, column));
        Assert.Equal(before, File.ReadAllText(TablePath(served)));
    }

    /// <summary>Saved as a new table that the job names; the old one stays to the last sign, one of that name too, and the command line lays what the page showed.</summary>
    [Fact]
    public async Task ItIsSavedAsANewTable()
    {
        (ServedJob served, int line, int column, string was, string slip) = await Spoiled();
        await using ServedJob _ = served;
        string folder = Path.GetDirectoryName(served.JobPath)!,
            old = File.ReadAllText(TablePath(served));
        File.WriteAllText(Path.Combine(folder, "offsets-mended.csv"), "theirs");
        int turn = await Mend(served, line, column, slip, was);
        JsonElement seen = await served.Tried(turn);
        string card = await served.Text($"job/1/skins/{seen.GetProperty("laid").GetInt32()}");
        using HttpResponseMessage saved = await served.Post("job/1/save", new { });
        Assert.Equal(HttpStatusCode.OK, saved.StatusCode);
        Assert.Contains(
            "offsets-mended-2.csv",
            (await ServedJob.Read(saved)).GetProperty("message").GetString(),
            StringComparison.Ordinal
        );
        Assert.Equal(old, File.ReadAllText(TablePath(served)));
        Assert.Equal("theirs", File.ReadAllText(Path.Combine(folder, "offsets-mended.csv")));
        Assert.Matches(@"offsets\s*=\s*""offsets-mended-2\.csv""", served.OnDisk);
        Assert.Equal(
            TableCells.Of(old).With(line - 1, column - 1, was),
            File.ReadAllText(Path.Combine(folder, "offsets-mended-2.csv"))
        );
        JsonElement state = await served.State();
        state = await served.Tried(state.GetProperty("turn").GetInt32());
        Assert.True(state.GetProperty("saved").GetBoolean());
        Assert.False((await served.Json("job/1/table")).GetProperty("isMended").GetBoolean());
        Assert.Equal(
            card.Split("order")[1],
            (await served.Text($"job/1/skins/{state.GetProperty("laid").GetInt32()}")).Split(
                "order"
            )[1]
        );
        PlankFit.Reading.Jobs.ReadResult read = PlankFit.Reading.Jobs.JobReader.Read(
            served.JobPath
        );
        Assert.False(read.HasFaults);

        // Undone after it was saved and saved again, the same copy serves.
        using HttpResponseMessage undone = await served.Post("job/1/wish", new { undo = true });
        await served.Tried(await ServedJob.Turn(undone));
        Assert.False((await served.State()).GetProperty("saved").GetBoolean());
        using HttpResponseMessage again = await served.Post("job/1/save", new { });
        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        Assert.False(File.Exists(Path.Combine(folder, "offsets-mended-3.csv")));
    }

    /// <summary>Where the job on the disk is not the one that was read, neither is written, and no new table is left.</summary>
    [Fact]
    public async Task AJobThatChangedMeanwhileIsAskedAboutAndNoTableIsLeft()
    {
        (ServedJob served, int line, int column, string was, string slip) = await Spoiled();
        await using ServedJob _ = served;
        await served.Tried(await Mend(served, line, column, slip, was));
        string theirs = served.OnDisk + "# theirs\n";
        File.WriteAllText(served.JobPath, theirs);
        using HttpResponseMessage refused = await served.Post("job/1/save", new { });
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        JsonElement told = await ServedJob.Read(refused);
        Assert.Equal(theirs, told.GetProperty("theirs").GetString());
        Assert.Equal(theirs, served.OnDisk);
        Assert.Empty(Directory.GetFiles(Path.GetDirectoryName(served.JobPath)!, "*mended*"));
        using HttpResponseMessage over = await served.Post(
            "job/1/save",
            new { over = told.GetProperty("hash").GetString() }
        );
        Assert.Equal(HttpStatusCode.OK, over.StatusCode);
        Assert.Single(Directory.GetFiles(Path.GetDirectoryName(served.JobPath)!, "*mended*"));
    }

    /// <summary>A cell that is not there, holds something else by now, or a value that is more than a cell's.</summary>
    [Fact]
    public async Task WhatIsNoCellsValueIsRefused()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        JsonElement table = await served.Json("job/1/table");
        JsonElement row = table.GetProperty("rows")[2];
        int line = row.GetProperty("line").GetInt32();
        string was = row.GetProperty("cells")[2].GetString()!;
        foreach (
            (int Line, int Column, string? Was, string? Typed) wish in new (
                int,
                int,
                string?,
                string?
            )[]
            {
                (line, 3, was + "0", "1"),
                (0, 3, was, "1"),
                (-1, 3, was, "1"),
                (int.MaxValue, 3, was, "1"),
                (int.MinValue, int.MinValue, was, "1"),
                (line, 0, was, "1"),
                (line, 999, "", "1"),
                (line, 3, was, "1\n2,3"),
                (line, 3, was, "1\0"),
                (line, 3, was, new string('1', 300)),
                (line, 1, table.GetProperty("rows")[2].GetProperty("cells")[0].GetString()!, "#1"),
                (line, 3, null, "1"),
                (line, 3, was, null),
            }
        )
        {
            using HttpResponseMessage answer = await served.Post(
                "job/1/table",
                new
                {
                    wish.Line,
                    wish.Column,
                    wish.Was,
                    wish.Typed,
                }
            );
            Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        }

        Assert.True((await served.State()).GetProperty("saved").GetBoolean());
    }

    /// <summary>A value with the table's own separator, quotes or a hash stays one cell, and reads back as it was typed.</summary>
    [Theory]
    [InlineData("1,5")]
    [InlineData("5'-4 3/4\"")]
    [InlineData("\"")]
    [InlineData("<b>")]
    [InlineData("")]
    public void ACellReadsBackAsItWasTyped(string typed)
    {
        const string text =
            "# a comment\r\nline,measure,0,1,2\r\n,position,0,1\r\nchine,height,\"3\",4,5\r\n";
        foreach ((int row, int column) in new[] { (1, 2), (2, 4), (3, 0), (3, 2), (3, 4) })
        {
            string mended = TableCells.Of(text).With(row, column, typed);
            var cells = TableCells.Of(mended);
            Assert.Equal(5, cells.Lines.Length);
            Assert.Equal(typed, cells.Words[row][column].Replace('\u2033', '"'));
            Assert.Equal(
                TableCells
                    .Of(text)
                    .Words.Where((_, i) => i != row)
                    .Select(w => string.Join('|', w)),
                cells.Words.Where((_, i) => i != row).Select(w => string.Join('|', w))
            );
            Assert.Equal(5, mended.Split("\r\n").Length);
        }
    }

    [Fact]
    public void AnotherFilesTableIsNotMended()
    {
        const string job = "[hull]\noffsets = \"other.csv\"\n";
        Assert.False(TableMending.Applies(job, new("offsets.csv", "")));
        Assert.True(TableMending.Applies(job, new("other.csv", "")));
    }
}
