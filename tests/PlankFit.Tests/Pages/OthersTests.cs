using System.Net;
using System.Text.Json;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>Other values tried from the page: what the server answers, keeps and refuses.</summary>
public sealed class OthersTests
{
    /// <summary>Begun, told of, and done: by the news, not by a clock.</summary>
    private static async Task<JsonElement> Done(ServedJob served, object wish)
    {
        using Stream news = await served.Client.GetStreamAsync("job/1/news", ServedJob.Stop);
        using var lines = new StreamReader(news);
        using HttpResponseMessage begun = await served.Post("job/1/others", wish);
        Assert.Equal(HttpStatusCode.NoContent, begun.StatusCode);
        JsonElement now = await served.Json("job/1/others");
        while (now.GetProperty("isBusy").GetBoolean())
        {
            string? line = await lines.ReadLineAsync(ServedJob.Stop);
            Assert.NotNull(line);
            if (line == "event: others")
            {
                now = await served.Json("job/1/others");
            }
        }

        return now;
    }

    private static int Number(JsonElement layout) => layout.GetProperty("number").GetInt32();

    /// <summary>Tried, looked at, kept, taken as one change that undo takes back, and kept beside what is tried next.</summary>
    [Fact]
    public async Task TriedKeptTakenAndTakenBack()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        string before = (await served.State()).GetProperty("text").GetString()!;
        JsonElement now = await Done(served, new { width = "80,110" });
        // Held against each other by something else nothing is laid again.
        now = await served.Json("job/1/others?by=planks,speed");
        Assert.Equal(3, now.GetProperty("tried").GetInt32());
        JsonElement best = now.GetProperty("layouts")
            .EnumerateArray()
            .Single(l => l.GetProperty("isUnbeaten").GetBoolean() && Number(l) > 0);
        int search = best.GetProperty("search").GetInt32();
        string chart = await served.Text($"job/1/others/{search}/chart");
        Assert.Contains($"layout-{Number(best)}", chart, StringComparison.Ordinal);
        string other = await served.Text(
            $"job/1/others/{search}/chart?by=planks&along=bend&up=drift"
        );
        Assert.Contains("worst bend", other, StringComparison.Ordinal);
        string picture = await served.Text($"job/1/others/{search}/{Number(best)}");
        Assert.StartsWith("<?xml", picture, StringComparison.Ordinal);
        var which = new
        {
            search,
            number = Number(best),
            keep = true,
        };
        using HttpResponseMessage kept = await served.Post("job/1/others/keep", which);
        Assert.Equal(HttpStatusCode.NoContent, kept.StatusCode);
        using HttpResponseMessage taken = await served.Post("job/1/others/take", which);
        JsonElement state = await served.Tried(await ServedJob.Turn(taken));
        Assert.Equal(
            before.Replace("width = 100", "width = 110", StringComparison.Ordinal),
            state.GetProperty("text").GetString()
        );
        Assert.Contains("width 110", state.GetProperty("undo").GetString());
        using HttpResponseMessage undone = await served.Post("job/1/wish", new { undo = true });
        Assert.Equal(
            before,
            (await served.Tried(await ServedJob.Turn(undone))).GetProperty("text").GetString()
        );
        now = await Done(served, new { angle = "50" });
        JsonElement there = Assert.Single(now.GetProperty("kept").EnumerateArray());
        Assert.Equal(search, there.GetProperty("search").GetInt32());
        Assert.Equal(picture, await served.Text($"job/1/others/{search}/{Number(best)}"));
    }

    /// <summary>A wrong value is told with its option; nothing is laid.</summary>
    [Fact]
    public async Task AWrongValueIsTold()
    {
        await using ServedJob served = await ServedJob.Small();
        JsonElement now = await Done(served, new { width = "0..100" });
        Assert.Equal(0, now.GetProperty("tried").GetInt32());
        Assert.Contains(
            "width 0:",
            Assert.Single(now.GetProperty("told").EnumerateArray()).GetString()
        );
    }

    [Fact]
    public async Task StoppedWhatIsFoundStays()
    {
        await using ServedJob served = await ServedJob.Small();
        using Stream news = await served.Client.GetStreamAsync("job/1/news", ServedJob.Stop);
        using var lines = new StreamReader(news);
        using HttpResponseMessage begun = await served.Post(
            "job/1/others",
            new { angle = "30..60:0.4", width = "70..120:5" }
        );
        using HttpResponseMessage another = await served.Post("job/1/others", new { angle = "50" });
        Assert.Equal(HttpStatusCode.Conflict, another.StatusCode);
        JsonElement now = await served.Json("job/1/others");
        while (now.GetProperty("tried").GetInt32() < 2)
        {
            Assert.NotNull(await lines.ReadLineAsync(ServedJob.Stop));
            now = await served.Json("job/1/others");
        }

        using HttpResponseMessage stop = await served.Post("job/1/others/stop", new { });
        while (now.GetProperty("isBusy").GetBoolean())
        {
            Assert.NotNull(await lines.ReadLineAsync(ServedJob.Stop));
            now = await served.Json("job/1/others");
        }

        Assert.InRange(now.GetProperty("tried").GetInt32(), 2, 836);
        Assert.Equal(1 + (76 * 11), now.GetProperty("asked").GetInt32());
        Assert.StartsWith("Stopped after ", now.GetProperty("head").GetString());
    }

    /// <summary>What a browser sends names no file: neither in a range nor as a layer, nor in what is not asked for.</summary>
    [Fact]
    public async Task NothingThatABrowserAsksForNamesAFile()
    {
        const string secret = "nobody else is to read this";
        using var elsewhere = new TempFolder();
        string path = elsewhere.File("secret.toml");
        await File.WriteAllTextAsync(path, secret, ServedJob.Stop);
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        foreach (
            object wish in new object[]
            {
                new { width = path },
                new { width = "100", layers = new[] { path } },
                new { width = "100", others = new[] { path } },
                new { heads = "../" + path },
                new { master = path },
            }
        )
        {
            JsonElement now = await Done(served, wish);
            Assert.DoesNotContain(secret, now.ToString(), StringComparison.Ordinal);
            Assert.DoesNotContain("secret.toml cannot", now.ToString(), StringComparison.Ordinal);
        }

        // A text that names a file outside the folder is refused here as well, before it is opened.
        await served.Change("hull.offsets", path);
        JsonElement refused = await Done(served, new { width = "100" });
        Assert.Contains("not in the job's folder", refused.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("job/1/others/7/3")]
    [InlineData("job/1/others/7/chart")]
    [InlineData("job/9/others")]
    public async Task WhatIsNotThereIsNotGiven(string path)
    {
        await using ServedJob served = await ServedJob.Small();
        using HttpResponseMessage answer = await served.Get(path);
        Assert.Contains(
            answer.StatusCode,
            new[] { HttpStatusCode.NoContent, HttpStatusCode.NotFound }
        );
    }

    [Fact]
    public async Task MoreThanAnybodyTypesIsRefused()
    {
        await using ServedJob served = await ServedJob.Small();
        using HttpResponseMessage answer = await served.Post(
            "job/1/others",
            new { angle = new string('4', 1000) }
        );
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }
}
