using System.Globalization;
using System.Net;
using System.Text.Json;
using PlankFit.App.Showing;
using PlankFit.Draughting.Svg;
using PlankFit.Export.Solids;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Pages;

/// <summary>A job is changed over the wire, and what is shown of it is what the program makes of the same file.</summary>
public sealed class JobSessionTests : IAsyncLifetime
{
    private const string Width = "layer[0].width";

    private ServedJob served = null!;

    public async ValueTask InitializeAsync() => served = await ServedJob.Small();

    public ValueTask DisposeAsync() => served.DisposeAsync();

    /// <summary>The picture's bytes are those of the same job planned by itself, and the planks those of its list.</summary>
    [Fact]
    public async Task WhatIsShownIsWhatIsPlanned()
    {
        JsonElement state = await served.Tried(1);
        Assert.Equal(1, state.GetProperty("laid").GetInt32());
        BottomPlan plan = BottomPlanner
            .Plan(JobReader.Read(served.JobPath).Job!, stop: ServedJob.Stop)
            .Plan!;
        Assert.Equal(PackedSolids.Of(PlanSolids.Of(plan)), await served.Bytes("job/1/planks/1"));
        JsonElement facts = await served.Json("job/1/facts/1");
        Assert.Equal(plan.Job.Revision, facts.GetProperty("revision").GetString());
        Assert.Equal(
            plan.AllPlankLayers.Sum(l => l.Layer.Starboard.Length + l.Layer.Port.Length),
            facts.GetProperty("order").GetArrayLength()
        );
        JsonElement skins = await served.Json("job/1/skins/1");
        Assert.Equal(facts.GetProperty("order").ToString(), skins.GetProperty("order").ToString());
        Assert.Equal(facts.GetProperty("runs").ToString(), skins.GetProperty("runs").ToString());
        Assert.Equal(
            facts.GetProperty("order").EnumerateArray().Select(o => o.GetString()),
            facts.GetProperty("planks").EnumerateArray().Select(r => r[0].GetString())
        );
    }

    /// <summary>The card is the very drawing that is written to disk, of the job as it is now.</summary>
    [Fact]
    public async Task ACardIsTheOneThatIsWritten()
    {
        int turn = await served.Change(Width, "95");
        await served.Tried(turn);
        byte[] shown = await served.Bytes($"job/1/card/{turn}/S1-03");
        await Saved();
        BottomPlan plan = BottomPlanner
            .Plan(JobReader.Read(served.JobPath).Job!, stop: ServedJob.Stop)
            .Plan!;
        using var written = new MemoryStream();
        SvgWriter.Write(written, ShownPlank.Card(plan, plan.Find("S1-03")!));
        Assert.Equal(written.ToArray(), shown);
        Assert.StartsWith(
            "S1-03",
            await served.Text($"job/1/story/{turn}/s1-03"),
            StringComparison.Ordinal
        );
    }

    /// <summary>A narrower plank makes more of them, which is said; undone, the text is that of before to the last sign, and so is the picture.</summary>
    [Fact]
    public async Task AChangeIsLaidSaidAndUndone()
    {
        JsonElement first = await served.Tried(1);
        string text = first.GetProperty("text").GetString()!;
        byte[] picture = await served.Bytes("job/1/planks/1");
        int turn = await served.Change(Width, "80");
        JsonElement changed = await served.Tried(turn);
        Assert.Contains(
            (await served.Json($"job/1/facts/{turn}")).GetProperty("said").EnumerateArray(),
            s => s.GetString()!.EndsWith("planks more", StringComparison.Ordinal)
        );
        Assert.False(changed.GetProperty("saved").GetBoolean());
        Assert.Equal("width of inner to 80", changed.GetProperty("undo").GetString());
        using HttpResponseMessage undone = await served.Post("job/1/wish", new { undo = true });
        int back = await ServedJob.Turn(undone);
        JsonElement again = await served.Tried(back);
        Assert.Equal(text, again.GetProperty("text").GetString());
        Assert.True(again.GetProperty("saved").GetBoolean());
        Assert.Equal(picture, await served.Bytes($"job/1/planks/{back}"));
        using HttpResponseMessage redone = await served.Post("job/1/wish", new { redo = true });
        int forth = await ServedJob.Turn(redone);
        Assert.Equal(
            changed.GetProperty("text").GetString(),
            (await served.Tried(forth)).GetProperty("text").GetString()
        );
    }

    /// <summary>While the hand moves there are many texts and one step; the newest is laid in the end.</summary>
    [Fact]
    public async Task OneMovementIsOneStep()
    {
        string text = (await served.Tried(1)).GetProperty("text").GetString()!;
        int turn = 0;
        for (int width = 84; width <= 110; width++)
        {
            turn = await served.Change(Width, $"{width}", "drag 1");
        }

        JsonElement state = await served.Tried(turn);
        Assert.Equal(turn, state.GetProperty("laid").GetInt32());
        Assert.Contains("110", state.GetProperty("undo").GetString()!, StringComparison.Ordinal);
        using HttpResponseMessage undone = await served.Post("job/1/wish", new { undo = true });
        Assert.Equal(text, (await served.State()).GetProperty("text").GetString());
    }

    /// <summary>A bad text keeps the picture that there was and says the fault with its line; a good one after it takes the fault away.</summary>
    [Fact]
    public async Task ABadTextKeepsTheLastGoodPicture()
    {
        await served.Tried(1);
        int bad = await served.Change(Width, "0");
        JsonElement state = await served.Tried(bad);
        Assert.Equal(1, state.GetProperty("laid").GetInt32());
        Assert.Contains(
            "line ",
            state.GetProperty("faults")[0].GetProperty("words").GetString()!,
            StringComparison.Ordinal
        );
        Assert.NotEmpty(await served.Bytes("job/1/planks/1"));
        using HttpResponseMessage broken = await served.Post(
            "job/1/wish",
            new { text = "[[[layer" }
        );
        int turn = await ServedJob.Turn(broken);
        Assert.Equal(1, (await served.Tried(turn)).GetProperty("laid").GetInt32());
        using HttpResponseMessage one = await served.Post("job/1/wish", new { undo = true });
        using HttpResponseMessage two = await served.Post("job/1/wish", new { undo = true });
        JsonElement good = await served.Tried(turn + 2);
        Assert.Equal(turn + 2, good.GetProperty("laid").GetInt32());
        Assert.Empty(good.GetProperty("faults").EnumerateArray());
    }

    /// <summary>What is no value is refused, and nothing changes.</summary>
    [Fact]
    public async Task WhatIsNoValueIsRefused()
    {
        int turn = (await served.State()).GetProperty("turn").GetInt32();
        foreach (
            object wish in new object[]
            {
                new { address = "layer[7].width", typed = "1" },
                new { address = "nowhere", typed = "1" },
                new { },
            }
        )
        {
            using HttpResponseMessage answer = await served.Post("job/1/wish", wish);
            Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        }

        Assert.Equal(turn, (await served.State()).GetProperty("turn").GetInt32());
    }

    /// <summary>Saved, the file is the text with its comments; changed by somebody else meanwhile, it is shown and asked about first, and nothing is lost unseen.</summary>
    [Fact]
    public async Task SavingAsksWhereTheFileHasChanged()
    {
        string before = served.OnDisk;
        await served.Change(Width, "95");
        await Saved();
        Assert.Equal((await served.State()).GetProperty("text").GetString(), served.OnDisk);
        Assert.Equal(
            before.Split('\n').Count(l => l.Contains('#')),
            served.OnDisk.Split('\n').Count(l => l.Contains('#'))
        );
        await served.Change(Width, "96");
        File.AppendAllText(served.JobPath, "# by another hand\n");
        using HttpResponseMessage asked = await served.Post("job/1/save", new { });
        Assert.Equal(HttpStatusCode.Conflict, asked.StatusCode);
        JsonElement answer = await ServedJob.Read(asked);
        Assert.Contains(
            "# by another hand",
            answer.GetProperty("theirs").GetString()!,
            StringComparison.Ordinal
        );
        Assert.Contains("# by another hand", served.OnDisk, StringComparison.Ordinal);
        string hash = answer.GetProperty("hash").GetString()!;
        File.AppendAllText(served.JobPath, "# and once more\n");
        using HttpResponseMessage again = await served.Post("job/1/save", new { over = hash });
        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
        hash = (await ServedJob.Read(again)).GetProperty("hash").GetString()!;
        using HttpResponseMessage over = await served.Post("job/1/save", new { over = hash });
        Assert.Equal(HttpStatusCode.OK, over.StatusCode);
        Assert.DoesNotContain("# by another hand", served.OnDisk, StringComparison.Ordinal);
        Assert.True((await served.State()).GetProperty("saved").GetBoolean());
    }

    /// <summary>A turn that is not shown any more, or not yet, has nothing to give, so that no page shows one for another.</summary>
    [Fact]
    public async Task AnotherTurnGivesNothing()
    {
        await served.Tried(1);
        foreach (string what in new[] { "planks/2", "facts/0", "card/2/S1-03", "story/0/S1-03" })
        {
            using HttpResponseMessage answer = await served.Get($"job/1/{what}");
            Assert.Equal(HttpStatusCode.NoContent, answer.StatusCode);
            Assert.Empty(await answer.Content.ReadAsByteArrayAsync(ServedJob.Stop));
        }

        using HttpResponseMessage none = await served.Get("job/1/card/1/S9-99");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    /// <summary>A misread half-breadth is doubted at its very cell; the rows are those of the file, by its line numbers.</summary>
    [Fact]
    public async Task ADoubtStandsAtItsCell()
    {
        string table = Path.Combine(Path.GetDirectoryName(served.JobPath)!, "offsets.csv");
        string[] lines = File.ReadAllLines(table);
        int row = Array.FindIndex(
            lines,
            l => l.StartsWith("chine,half-breadth", StringComparison.Ordinal)
        );
        string[] cells = lines[row].Split(',');
        cells[6] = (decimal.Parse(cells[6], CultureInfo.InvariantCulture) + 60).ToString(
            CultureInfo.InvariantCulture
        );
        lines[row] = string.Join(',', cells);
        File.WriteAllLines(table, lines);
        await served.Tried(await served.Change(Width, "95"));
        JsonElement shown = await served.Json("job/1/table");
        JsonElement doubt = shown
            .GetProperty("doubts")
            .EnumerateArray()
            .First(d =>
                d.GetProperty("line").GetInt32() == row + 1
                && d.GetProperty("column").GetInt32() == 7
            );
        Assert.Contains(
            "half-breadth",
            doubt.GetProperty("words").GetString()!,
            StringComparison.Ordinal
        );
        JsonElement read = shown
            .GetProperty("rows")
            .EnumerateArray()
            .Single(r => r.GetProperty("line").GetInt32() == row + 1);
        Assert.Equal(cells[6], read.GetProperty("cells")[6].GetString());
    }

    /// <summary>The files are those of the command line, word for word where they are text, and all of them are in the zip.</summary>
    [Fact]
    public async Task PapersAreThoseOfTheCommandLine()
    {
        await served.Tried(1);
        using HttpResponseMessage begun = await served.Post("job/1/papers", new { });
        Assert.Equal(HttpStatusCode.OK, begun.StatusCode);
        JsonElement tray = await Tray();
        string[] names =
        [
            .. tray.GetProperty("names").EnumerateArray().Select(n => n.GetString()!),
        ];
        Assert.Contains("bench-book.pdf", names);
        int list = Array.IndexOf(names, "tables/plank-list.csv");
        string csv = await served.Text($"job/1/papers/1/{list}");
        JsonElement facts = await served.Json("job/1/facts/1");
        Assert.All(
            facts.GetProperty("order").EnumerateArray(),
            p => Assert.Contains(p.GetString()!, csv, StringComparison.Ordinal)
        );
        using var zip = new System.IO.Compression.ZipArchive(
            new MemoryStream(await served.Bytes("job/1/papers/1/all"))
        );
        Assert.Equal(names, zip.Entries.Select(e => e.FullName));
        Assert.All(zip.Entries, e => Assert.True(e.Length > 0));
    }

    private async Task<JsonElement> Tray()
    {
        using Stream news = await served.Client.GetStreamAsync("job/1/news", ServedJob.Stop);
        using var lines = new StreamReader(news);
        while (await lines.ReadLineAsync(ServedJob.Stop) is not null)
        {
            JsonElement tray = await served.Json("job/1/papers");
            if (tray.GetProperty("turn").ValueKind == JsonValueKind.Number)
            {
                return tray;
            }
        }

        throw new InvalidOperationException("the news ended");
    }

    private async Task Saved()
    {
        using HttpResponseMessage saved = await served.Post("job/1/save", new { });
        Assert.Equal(HttpStatusCode.OK, saved.StatusCode);
    }
}
