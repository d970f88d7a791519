using System.Collections.Immutable;
using System.Net;
using System.Text.Json;
using PlankFit.Pages.Guarding;
using PlankFit.Pages.Serving;
using PlankFit.Pages.Sessions;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>What a browser may make the server read, remember and write down.</summary>
public sealed class OutsideTests
{
    private const string Secret = "nobody else is to read this";

    /// <summary>A text that names a file of this computer that is not in the job's folder is refused before it is opened; nothing of it is told.</summary>
    [Theory]
    [InlineData("{0}")]
    [InlineData("../{1}/secret.csv")]
    [InlineData("sub/../../{1}/secret.csv")]
    public async Task NoTextFromABrowserReadsOutsideTheFolder(string named)
    {
        using var elsewhere = new TempFolder();
        string secret = elsewhere.File("secret.csv");
        await File.WriteAllTextAsync(secret, Secret + ",1,2\n", ServedJob.Stop);
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        string typed = named
            .Replace("{0}", secret, StringComparison.Ordinal)
            .Replace("{1}", Path.GetFileName(elsewhere.Path), StringComparison.Ordinal);
        int turn = await served.Change("hull.offsets", typed);
        JsonElement state = await served.Tried(turn);
        Assert.Contains("not in the job's folder", state.ToString(), StringComparison.Ordinal);
        foreach (string path in new[] { "job/1/table", "job/1/state" })
        {
            using HttpResponseMessage answer = await served.Get(path);
            Assert.DoesNotContain(
                Secret,
                await answer.Content.ReadAsStringAsync(ServedJob.Stop),
                StringComparison.Ordinal
            );
        }
    }

    /// <summary>Nor is such a name saved: whoever opened the file after would take it for its builder's own.</summary>
    [Fact]
    public async Task SuchANameIsNotSaved()
    {
        using var elsewhere = new TempFolder();
        string secret = elsewhere.File("secret.csv");
        await File.WriteAllTextAsync(secret, Secret + ",1,2\n", ServedJob.Stop);
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        string before = served.OnDisk;
        await served.Tried(await served.Change("hull.offsets", secret));
        using HttpResponseMessage answer = await served.Post("job/1/save", new { });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains(
            "not in the job's folder",
            (await ServedJob.Read(answer)).GetProperty("message").GetString()
        );
        Assert.Equal(before, served.OnDisk);
    }

    /// <summary>What the builder wrote into the file himself is read, wherever it lies: a demo's table is that of the demo beside it.</summary>
    [Fact]
    public async Task WhatTheFileNamedWhenItWasOpenedIsRead()
    {
        using var elsewhere = new TempFolder();
        string table = elsewhere.File("offsets.csv");
        await using ServedJob served = await ServedJob.Small(job =>
        {
            string folder = DemoTables.Demo("tender");
            File.Copy(Path.Combine(folder, "offsets.csv"), table);
            return System.Text.RegularExpressions.Regex.Replace(
                job,
                "offsets *= *\"[^\"]*\"",
                $"offsets = \"{table}\""
            );
        });
        JsonElement state = await served.Tried(1);
        Assert.DoesNotContain(
            "not in the job's folder",
            state.ToString(),
            StringComparison.Ordinal
        );
        Assert.NotEqual(JsonValueKind.Null, state.GetProperty("laid").ValueKind);
    }

    /// <summary>Marked from a card of planks that have been laid again since, nothing is written down.</summary>
    [Fact]
    public async Task AStaleCardMarksNothing()
    {
        await using ServedJob served = await ServedJob.Small();
        int first = (await served.Tried(1)).GetProperty("laid").GetInt32();
        await served.Tried(await served.Change("layer[0].width", "90"));
        using HttpResponseMessage saved = await served.Post("job/1/save", new { });
        using HttpResponseMessage stale = await served.Post(
            "job/1/sawn",
            new { plank = "S1-09", turn = first }
        );
        Assert.Equal(HttpStatusCode.Conflict, stale.StatusCode);
        Assert.Contains(
            "laid again",
            await stale.Content.ReadAsStringAsync(ServedJob.Stop),
            StringComparison.Ordinal
        );
        int now = (await served.State()).GetProperty("laid").GetInt32();
        using HttpResponseMessage fresh = await served.Post(
            "job/1/sawn",
            new { plank = "S1-09", turn = now }
        );
        Assert.Equal(HttpStatusCode.OK, fresh.StatusCode);
    }

    /// <summary>After three codes that were guessed at thirty times each the door stays shut, also for the right one; the terminal is told once.</summary>
    [Fact]
    public void TheDoorStaysShutAfterThreeCodes()
    {
        List<string?> told = [];
        var door = new Door(IPAddress.Loopback, told.Add);
        door.Begin();
        Microsoft.AspNetCore.Http.DefaultHttpContext From(int address) =>
            new() { Connection = { RemoteIpAddress = new IPAddress([10, 0, 0, (byte)address]) } };
        for (int i = 0; i < Door.MostRounds * Door.MostInAll; i++)
        {
            Assert.False(door.Enter(From(1 + (i / Door.MostFromOne)), "x"));
        }

        Assert.Equal(Door.MostRounds + 1, told.Count);
        Assert.All(told.SkipLast(1), Assert.NotNull);
        Assert.Null(told[^1]);
        Assert.False(door.Enter(From(200), told[^2]));
        Assert.Equal(Door.MostRounds + 1, told.Count);
        Assert.Contains(
            "SHUT: 90 wrong codes",
            ShopNetwork.Shut("http://192.168.0.7:1/"),
            StringComparison.Ordinal
        );
    }

    /// <summary>Texts to come back to are kept as far as there is room for them, the newest always.</summary>
    [Fact]
    public void UndoHasItsBound()
    {
        string big = new('#', 1_000_000);
        var history = History.Of("0");
        for (int i = 1; i <= 40; i++)
        {
            history = history.With(big + i, "", "");
        }

        int kept = history.Past.Count();
        Assert.InRange(kept, 10, 17);
        Assert.Equal(big + "39", history.Undone().Present.Text);
        Assert.Equal(kept - 1, history.Undone().Past.Count());
        ImmutableArray<string> small = [.. Enumerable.Range(0, 3000).Select(i => $"{i}")];
        Assert.Equal(
            2999,
            small.Skip(1).Aggregate(History.Of(small[0]), (h, t) => h.With(t, "", "")).Past.Count()
        );
    }
}
