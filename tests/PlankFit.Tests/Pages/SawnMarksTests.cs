using System.Net;
using System.Text.Json;
using PlankFit.Pages.Sessions;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Pages;

/// <summary>What is sawn is marked on the page and stands on the one record that the command line has too.</summary>
public sealed class SawnMarksTests
{
    /// <summary>A plank that is marked is fixed for the page and for whoever reads the job; what is changed then re-lays the rest alone, and taken off the record it is free again.</summary>
    [Fact]
    public async Task AMarkedPlankStaysAsItIs()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        using HttpResponseMessage marked = await served.Post("job/1/sawn", new { plank = "S1-09" });
        Assert.Equal(HttpStatusCode.OK, marked.StatusCode);
        BottomPlan read = BottomPlanner
            .Plan(JobReader.Read(served.JobPath).Job!, stop: ServedJob.Stop)
            .Plan!;
        Assert.True(read.Find("S1-09")!.IsSawn);
        JsonElement facts = await Facts(served, "S1-09");
        string length = Cell(facts, "S1-09", "net length");
        await served.Tried(await served.Change("layer[0].width", "90"));
        facts = await Facts(served, "S1-09");
        Assert.Equal(length, Cell(facts, "S1-09", "net length"));
        // Not while the job on the disk is another than the one that is shown.
        using HttpResponseMessage unsaved = await served.Post(
            "job/1/sawn",
            new { plank = "S1-11" }
        );
        Assert.Equal(HttpStatusCode.Conflict, unsaved.StatusCode);
        using HttpResponseMessage undone = await served.Post("job/1/wish", new { undo = true });
        using HttpResponseMessage off = await served.Post(
            "job/1/sawn",
            new { plank = "S1-09", forget = true }
        );
        Assert.Equal(HttpStatusCode.OK, off.StatusCode);
        Assert.Empty(JobReader.Read(served.JobPath).Job!.AsBuilt.Sawn);
    }

    /// <summary>A mark that was made out of reach goes by what its card showed and not by the turn: it is taken once the plank is that one again, and never for another.</summary>
    [Fact]
    public async Task AMarkThatComesLateIsOfThePlankOfItsCard()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        JsonElement facts = await served.Json("job/1/facts/1");
        int at = facts
            .GetProperty("order")
            .EnumerateArray()
            .Select(p => p.GetString())
            .ToList()
            .IndexOf("S1-09");
        double[] shape =
        [
            .. facts.GetProperty("shapes")[at].EnumerateArray().Select(v => v.GetDouble()),
        ];
        async Task<HttpStatusCode> Sent(double[] card)
        {
            using HttpResponseMessage answer = await served.Post(
                "job/1/sawn",
                new
                {
                    plank = "S1-09",
                    forget = false,
                    shape = card,
                }
            );
            return answer.StatusCode;
        }

        // Another width, saved: the plank of that name is another.
        await served.Tried(await served.Change("layer[0].width", "97"));
        using HttpResponseMessage saved = await served.Post("job/1/save", new { });
        Assert.Equal(HttpStatusCode.Conflict, await Sent(shape));
        Assert.Empty(JobReader.Read(served.JobPath).Job!.AsBuilt.Sawn);
        await served.Tried(await served.Change("layer[0].width", "100"));
        using HttpResponseMessage again = await served.Post("job/1/save", new { });
        Assert.Equal(HttpStatusCode.Conflict, await Sent([]));
        for (int i = 0; i < shape.Length; i++)
        {
            Assert.Equal(
                HttpStatusCode.Conflict,
                await Sent([.. shape.Select((v, k) => k == i ? v + 0.2 : v)])
            );
        }

        Assert.Empty(JobReader.Read(served.JobPath).Job!.AsBuilt.Sawn);
        Assert.Equal(HttpStatusCode.OK, await Sent(shape));
        Assert.Equal(HttpStatusCode.OK, await Sent(shape));
        Assert.Equal(
            "S1-09",
            Assert.Single(JobReader.Read(served.JobPath).Job!.AsBuilt.Sawn).Id.ToString()
        );
    }

    /// <summary>A card that was drawn before the planks were laid again marks nothing; taking a plank off the record asks for no card, since what it was sawn by stands there.</summary>
    [Fact]
    public async Task AnOldCardForgetsAndMarksNothing()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        (HttpStatusCode, string) good = await Marked(served, new { plank = "S1-09", turn = 1 });
        Assert.Equal(HttpStatusCode.OK, good.Item1);
        await Facts(served, "S1-09");
        (HttpStatusCode status, string words) = await Marked(
            served,
            new { plank = "S1-11", turn = 1 }
        );
        Assert.Equal(HttpStatusCode.Conflict, status);
        Assert.Contains("laid again since this card was drawn", words, StringComparison.Ordinal);
        Assert.Equal(
            "S1-09",
            Assert.Single(JobReader.Read(served.JobPath).Job!.AsBuilt.Sawn).Id.ToString()
        );
        (status, words) = await Marked(
            served,
            new
            {
                plank = "S1-09",
                forget = true,
                turn = 1,
                shape = new double[] { 1, 2, 3 },
            }
        );
        Assert.True(status == HttpStatusCode.OK, words);
        Assert.Empty(JobReader.Read(served.JobPath).Job!.AsBuilt.Sawn);
    }

    /// <summary>While what is shown has a fault the picture is of an earlier text: nothing is marked by it, and nothing taken off, until it is mended.</summary>
    [Fact]
    public async Task NothingIsMarkedWhileTheJobHasFaults()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        Assert.Equal(HttpStatusCode.OK, (await Marked(served, new { plank = "S1-09" })).Item1);
        string good = served.OnDisk;
        File.WriteAllText(
            served.JobPath,
            good.Replace("width = 100", "width = 0", StringComparison.Ordinal)
        );
        await Until(served, s => s.GetProperty("faults").GetArrayLength() > 0);
        foreach (bool forget in new[] { false, true })
        {
            (HttpStatusCode status, string words) = await Marked(
                served,
                new { plank = forget ? "S1-09" : "S1-11", forget }
            );
            Assert.Equal(HttpStatusCode.Conflict, status);
            Assert.Contains("mend it first", words, StringComparison.Ordinal);
        }

        File.WriteAllText(served.JobPath, good);
        await Until(served, s => s.GetProperty("faults").GetArrayLength() == 0);
        Assert.Equal(
            "S1-09",
            Assert.Single(JobReader.Read(served.JobPath).Job!.AsBuilt.Sawn).Id.ToString()
        );
        Assert.Equal(HttpStatusCode.OK, (await Marked(served, new { plank = "S1-11" })).Item1);
    }

    private static async Task<(HttpStatusCode, string)> Marked(ServedJob served, object mark)
    {
        using HttpResponseMessage answer = await served.Post("job/1/sawn", mark);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(ServedJob.Stop));
    }

    /// <summary>Two browsers that mark at once lose nothing and write nothing twice.</summary>
    [Fact]
    public async Task TwoAtOnceLoseNothing()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        string[] planks = ["S1-05", "S1-06", "S1-05", "P1-06"];
        HttpResponseMessage[] answers = await Task.WhenAll(
            planks.Select(plank => served.Post("job/1/sawn", new { plank }))
        );
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.OK, a.StatusCode));
        Assert.Equal(
            planks.Distinct().Order(StringComparer.Ordinal),
            JobReader
                .Read(served.JobPath)
                .Job!.AsBuilt.Sawn.Select(s => s.Id.ToString())
                .Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task WhatIsNoPlankIsNotMarked()
    {
        await using ServedJob served = await ServedJob.Small();
        foreach (string plank in new[] { "S1-99", "S1-05..S1-09", "../x", "" })
        {
            using HttpResponseMessage answer = await served.Post("job/1/sawn", new { plank });
            Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        }

        Assert.Empty(JobReader.Read(served.JobPath).Job!.AsBuilt.Sawn);
    }

    /// <summary>The table changed in another program is laid at once; so is the job where nothing is unsaved; where something is, saving asks.</summary>
    [Fact]
    public async Task WhatAnotherProgramChangesIsFollowed()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        string offsets = Path.Combine(Path.GetDirectoryName(served.JobPath)!, "offsets.csv");
        File.WriteAllText(offsets, "nothing" + File.ReadAllText(offsets));
        JsonElement state = await Until(served, s => s.GetProperty("faults").GetArrayLength() > 0);
        Assert.Contains(
            "offsets.csv",
            state.GetProperty("faults")[0].GetProperty("words").GetString()!,
            StringComparison.Ordinal
        );
        File.WriteAllText(offsets, File.ReadAllText(offsets)["nothing".Length..]);
        await Until(served, s => s.GetProperty("faults").GetArrayLength() == 0);
        File.WriteAllText(served.JobPath, served.OnDisk + "# by another hand\n");
        state = await Until(
            served,
            s =>
                s.GetProperty("text")
                    .GetString()!
                    .Contains("# by another hand", StringComparison.Ordinal)
        );
        Assert.True(state.GetProperty("saved").GetBoolean());
    }

    /// <summary>Only what a job can name is listened to, and nothing that is half written.</summary>
    [Fact]
    public void HiddenFilesAreNotListenedTo()
    {
        using var folder = new Support.TempFolder();
        using var heard = new SemaphoreSlim(0);
        List<string> names = [];
        using var watch = new FolderWatch(
            folder.Path,
            name =>
            {
                lock (names)
                {
                    names.Add(name!);
                }

                heard.Release();
            }
        );
        File.WriteAllText(folder.File(".offsets.csv.writing"), "1");
        File.WriteAllText(folder.File("bench-book.pdf"), "1");
        File.WriteAllText(folder.File("offsets.csv"), "1");
        heard.Wait(ServedJob.Stop);
        lock (names)
        {
            Assert.All(names, n => Assert.Equal("offsets.csv", n));
        }
    }

    private static async Task<JsonElement> Facts(ServedJob served, string sawn)
    {
        JsonElement facts = default;
        await Until(
            served,
            async s =>
            {
                using HttpResponseMessage answer = await served.Get(
                    $"job/1/facts/{s.GetProperty("laid").GetInt32()}"
                );
                if (answer.StatusCode != HttpStatusCode.OK)
                {
                    return false;
                }

                facts = await ServedJob.Read(answer);
                return facts.GetProperty("done").TryGetProperty(sawn, out _);
            }
        );
        return facts;
    }

    private static string Cell(JsonElement facts, string plank, string column)
    {
        int at = facts
            .GetProperty("columns")
            .EnumerateArray()
            .Select(c => c.GetString())
            .ToList()
            .IndexOf(column);
        return facts
            .GetProperty("planks")
            .EnumerateArray()
            .Single(r => r[0].GetString() == plank)[at]
            .GetString()!;
    }

    private static Task<JsonElement> Until(ServedJob served, Func<JsonElement, bool> holds) =>
        Until(served, s => Task.FromResult(holds(s)));

    /// <summary>The state once that holds of it: looked at whenever there is news.</summary>
    private static async Task<JsonElement> Until(
        ServedJob served,
        Func<JsonElement, Task<bool>> holds
    )
    {
        using Stream news = await served.Client.GetStreamAsync("job/1/news", ServedJob.Stop);
        using var lines = new StreamReader(news);
        while (await lines.ReadLineAsync(ServedJob.Stop) is not null)
        {
            JsonElement state = await served.State();
            if (await holds(state))
            {
                return state;
            }
        }

        throw new InvalidOperationException("the news ended");
    }
}
