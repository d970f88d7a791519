using System.Net;
using System.Text.Json;
using PlankFit.App.Noting;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.ReadingsTests;

namespace PlankFit.Tests.Pages;

/// <summary>What was typed into the blanks of the check sheet on its way into the file of what was measured, and out of it.</summary>
public sealed class PutReadingsTests
{
    /// <summary>What holds is put into the file and what was taken back goes out of it, in one step; while a text is not laid nothing is written, to whichever file it names.</summary>
    [Fact]
    public async Task PutByWhatIsLaid()
    {
        await using ServedJob served = await ServedJob.Small(text =>
            text + "\n[trust]\n[as-built]\nmeasured = \"measured.csv\"\n"
        );
        string folder = Path.GetDirectoryName(served.JobPath)!,
            stock = Path.Combine(folder, "stock.csv"),
            measured = Path.Combine(folder, "measured.csv");
        const string Head = "what,where,side,value\n";
        await File.WriteAllTextAsync(stock, "length,width,count\n4000,150,20\n", ServedJob.Stop);
        await File.WriteAllTextAsync(
            measured,
            $"{Head}girth,3,starboard,300    # page {ProgressJournal.MarkOf("a.1", 1)}\n",
            ServedJob.Stop
        );
        JsonElement state = await served.Tried(1);
        int turn = state.GetProperty("laid").GetInt32();
        JsonElement other = Blanks(await served.Json($"job/1/taping/{turn}"))
            .First(b =>
                b.GetProperty("takenUp").GetBoolean()
                && !Of(b, "name").StartsWith("girth", StringComparison.Ordinal)
            );
        double should = other.GetProperty("shouldMm").GetDouble();
        const string Girth = "girth | 3 | starboard | 1";
        using HttpResponseMessage a = await Type(served, "a.1", 1, Girth, "300");
        using HttpResponseMessage b = await Type(served, "a.1", 2, Girth, "");
        JsonElement back = await served.Json($"job/1/readings/{turn}");
        Assert.Equal((0, 1), ToDo(back));
        using HttpResponseMessage c = await Type(
            served,
            "a.1",
            3,
            Of(other, "name"),
            Mm(should),
            should
        );
        Assert.Equal((1, 1), ToDo(await served.Json($"job/1/readings/{turn}")));
        await Put(served);
        string there = await File.ReadAllTextAsync(measured, ServedJob.Stop);
        string[] lines = there.Trim().Split('\n');
        Assert.Equal(2, lines.Length);
        Assert.EndsWith(
            $",{Mm(should)}    # page {ProgressJournal.MarkOf("a.1", 3)}",
            lines[1],
            StringComparison.Ordinal
        );
        // The unit of the file, or its name, is another by a text that is not laid.
        foreach (
            (string from, string to) in new[]
            {
                ("units = \"mm\"", "units = \"cm\""),
                ("measured.csv", "stock.csv"),
            }
        )
        {
            string text = Of(state, "text").Replace(from, to, StringComparison.Ordinal);
            Assert.NotEqual(Of(state, "text"), text);
            using HttpResponseMessage named = await served.Post("job/1/wish", new { text });
            using HttpResponseMessage d = await Type(
                served,
                "a.1",
                4 + from.Length,
                Of(other, "name"),
                Mm(should + 1) + " mm",
                should
            );
            using HttpResponseMessage none = await served.Post("job/1/readings/put", new { });
            Assert.Equal(HttpStatusCode.Conflict, none.StatusCode);
        }

        Assert.Equal(there, await File.ReadAllTextAsync(measured, ServedJob.Stop));
        Assert.EndsWith("4000,150,20\n", await File.ReadAllTextAsync(stock, ServedJob.Stop));
    }

    /// <summary>While planks are being laid nothing is put anywhere: that is said, and not that the job is to be mended.</summary>
    [Fact]
    public async Task NothingIsPutWhilePlanksAreBeingLaid()
    {
        // Where more is asked for than by default, as in CI.
        if (!LongRuns.More)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small(text => text + "\n[trust]\n");
        JsonElement state = await served.Tried(1);
        bool wasTold = false;
        // It is over in a moment: so often it does not happen that none is met.
        for (int i = 0; i < 40 && !wasTold; i++)
        {
            string text = $"{Of(state, "text")}\n# {i}\n";
            using HttpResponseMessage wish = await served.Post("job/1/wish", new { text });
            using HttpResponseMessage put = await served.Post("job/1/readings/put", new { });
            wasTold =
                put.StatusCode == HttpStatusCode.Conflict
                && (await ServedJob.Read(put))
                    .GetProperty("words")[0]
                    .GetString()!
                    .StartsWith("The planks are being laid", StringComparison.Ordinal);
        }

        Assert.True(wasTold);
        await Settled(served);
    }

    /// <summary>A file that is none of what was measured is not written, though it has the mark of a reading that was taken back and its job is refused for it.</summary>
    [Fact]
    public async Task AFileOfAnotherHeadStaysAsItIs()
    {
        await using ServedJob served = await ServedJob.Small(text => text + "\n[trust]\n");
        string racks = Path.Combine(Path.GetDirectoryName(served.JobPath)!, "racks.csv"),
            there =
                $"length,width,count\n4000,150,20    # page {ProgressJournal.MarkOf("a.1", 1)}\n";
        await File.WriteAllTextAsync(racks, there, ServedJob.Stop);
        JsonElement state = await served.Tried(1);
        const string Girth = "girth | 3 | starboard | 1";
        using HttpResponseMessage a = await Type(served, "a.1", 1, Girth, "300 mm");
        using HttpResponseMessage b = await Type(served, "a.1", 2, Girth, "");
        string text = Of(state, "text") + "\n[as-built]\nmeasured = \"racks.csv\"\n";
        using HttpResponseMessage wish = await served.Post("job/1/wish", new { text });
        Assert.NotEmpty((await Settled(served)).GetProperty("faults").EnumerateArray());
        using HttpResponseMessage put = await served.Post("job/1/readings/put", new { });
        Assert.Equal(HttpStatusCode.Conflict, put.StatusCode);
        Assert.Contains(
            "does not begin with the line what,where,side,value",
            (await ServedJob.Read(put)).GetProperty("words")[0].GetString()
        );
        Assert.Equal(there, await File.ReadAllTextAsync(racks, ServedJob.Stop));
    }

    private static (int Put, int Out) ToDo(JsonElement readings) =>
        (readings.GetProperty("toPut").GetInt32(), readings.GetProperty("toTakeOut").GetInt32());

    /// <summary>
    /// With [trust]: a reading is put into the file by the planks of the text that names it, and by none before; read once, its seam stands twice on the sheet, and either row takes
    /// the second reading; taken back it goes out of the file.
    /// </summary>
    [Fact]
    public async Task PutAndTakenOut()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await Trusted();
        string folder = Path.GetDirectoryName(served.JobPath)!,
            stock = Path.Combine(folder, "stock.csv"),
            measured = Path.Combine(folder, "measured.csv");
        await File.WriteAllTextAsync(stock, "length,width,count\n4000,150,20\n", ServedJob.Stop);
        JsonElement state = await served.Tried(1);
        JsonElement seam = Blanks(await served.Json("job/1/taping/1"))
            .First(b =>
                Of(b, "name").StartsWith("seam length", StringComparison.Ordinal)
                && b.GetProperty("takenUp").GetBoolean()
            );
        (string name, double should) = (Of(seam, "name"), seam.GetProperty("shouldMm").GetDouble());
        using HttpResponseMessage typed = await Type(
            served,
            "a.1",
            1,
            name,
            Mm(should + 3),
            should
        );
        string text = Of(state, "text") + "\n[as-built]\nmeasured = \"stock.csv\"\n";
        using HttpResponseMessage named = await served.Post("job/1/wish", new { text });
        for (int i = 0; i < 2; i++)
        {
            // Before it is laid, and once it is refused.
            using HttpResponseMessage none = await served.Post("job/1/readings/put", new { });
            Assert.Equal(HttpStatusCode.Conflict, none.StatusCode);
            Assert.NotEmpty((await Settled(served)).GetProperty("faults").EnumerateArray());
        }

        Assert.EndsWith("4000,150,20\n", await File.ReadAllTextAsync(stock, ServedJob.Stop));
        using HttpResponseMessage undo = await served.Post("job/1/wish", new { undo = true });
        await Settled(served);
        await Put(served);
        state = await Settled(served);
        Assert.Empty(state.GetProperty("faults").EnumerateArray());
        Assert.Contains("# page", await File.ReadAllTextAsync(measured, ServedJob.Stop));
        int turn = state.GetProperty("laid").GetInt32();
        JsonElement[] twice =
        [
            .. Blanks(await served.Json($"job/1/taping/{turn}")).Where(b => Of(b, "name") == name),
        ];
        double[] shoulds = [.. twice.Select(b => b.GetProperty("shouldMm").GetDouble())];
        Assert.True(shoulds.Max() - shoulds.Min() > 0.5, string.Join(", ", shoulds));
        for (int i = 0; i < shoulds.Length; i++)
        {
            using HttpResponseMessage second = await Type(
                served,
                "a.1",
                2 + i,
                name[..^1] + "2",
                Mm(shoulds[i]),
                shoulds[i]
            );
            JsonElement read = await served.Json($"job/1/readings/{turn}");
            Assert.Equal("within", Of(read.GetProperty("readings")[1], "verdict"));
            Assert.Equal((1, 0), ToDo(read));
        }

        using HttpResponseMessage a = await Type(served, "a.1", 8, name[..^1] + "2", "");
        using HttpResponseMessage b = await Type(served, "a.1", 9, name, "");
        JsonElement back = await served.Json($"job/1/readings/{turn}");
        Assert.Equal((0, 1), ToDo(back));
        // Even of a text that is refused, by planks of which nothing could be put there.
        text = Of(await served.State(), "text") + "\n[none-such]\n";
        using HttpResponseMessage refused = await served.Post("job/1/wish", new { text });
        Assert.NotEmpty((await Settled(served)).GetProperty("faults").EnumerateArray());
        await Put(served);
        Assert.Equal(
            "what,where,side,value\n",
            await File.ReadAllTextAsync(measured, ServedJob.Stop)
        );
    }
}
