using System.Net;
using System.Text.Json;
using PlankFit.Pages.Sessions;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>A job that is open here while other pages and other programs write its files: what is said to be saved is what stands there.</summary>
public sealed class TwoProgramsTests
{
    private const string Width = "layer[0].width",
        Another = "# by another hand\n";

    /// <summary>Nothing is saved where another program wrote something else there, though it is undone to what was read; and no plank of that job is marked by a card of this one.</summary>
    [Fact]
    public async Task UndoneToWhatWasReadIsNotSavedWhereTheFileIsAnothersByNow()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        JsonElement facts = await served.Json("job/1/facts/1");
        int row = facts
            .GetProperty("order")
            .EnumerateArray()
            .Select(p => p.GetString())
            .ToList()
            .IndexOf("S1-09");
        JsonElement shape = facts.GetProperty("shapes")[row];
        await served.Tried(await served.Change(Width, "95"));
        File.WriteAllText(
            served.JobPath,
            served.OnDisk.Replace("width = 100", "width = 90", StringComparison.Ordinal) + Another
        );
        await Task.Delay(300, ServedJob.Stop);
        using HttpResponseMessage undone = await served.Post("job/1/wish", new { undo = true });
        using HttpResponseMessage marked = await served.Post(
            "job/1/sawn",
            new { plank = "S1-09", shape }
        );
        Assert.Equal(HttpStatusCode.Conflict, marked.StatusCode);
        Assert.Empty(JobReader.Read(served.JobPath).Job!.AsBuilt.Sawn);
        if (
            (await served.State())
                .GetProperty("text")
                .GetString()!
                .EndsWith(Another, StringComparison.Ordinal)
        )
        {
            // A busy machine told of the other program only after the undoing: then there was nothing unsaved, and its text is taken over.
            return;
        }

        await Settles(served, s => !s.GetProperty("saved").GetBoolean());
        // Saving asks, and shows what stands there; taken, it is as if it had been read.
        using HttpResponseMessage refused = await served.Post("job/1/save", new { });
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        JsonElement told = await ServedJob.Read(refused);
        Assert.EndsWith(Another, told.GetProperty("theirs").GetString()!, StringComparison.Ordinal);
        using HttpResponseMessage saved = await served.Post(
            "job/1/save",
            new { over = told.GetProperty("hash").GetString() }
        );
        Assert.Equal(HttpStatusCode.OK, saved.StatusCode);
        Assert.DoesNotContain(Another, served.OnDisk, StringComparison.Ordinal);
        await Settles(served, s => s.GetProperty("saved").GetBoolean());
    }

    /// <summary>Who saves tells every other page of it: on its bench no plank could be marked as sawn before.</summary>
    [Fact]
    public async Task WhatIsSavedInOnePageIsToldToTheOthers()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        await served.Tried(await served.Change(Width, "95"));
        using var over = CancellationTokenSource.CreateLinkedTokenSource(ServedJob.Stop);
        over.CancelAfter(TimeSpan.FromSeconds(5));
        using Stream news = await served.Client.GetStreamAsync("job/1/news", over.Token);
        using var lines = new StreamReader(news);
        bool isSaved = false;
        try
        {
            while (!isSaved && await lines.ReadLineAsync(over.Token) is { } line)
            {
                if (line.StartsWith("data:", StringComparison.Ordinal))
                {
                    isSaved = (await served.State()).GetProperty("saved").GetBoolean();
                    if (!isSaved)
                    {
                        using HttpResponseMessage saved = await served.Post("job/1/save", new { });
                    }
                }
            }
        }
        catch (OperationCanceledException) when (!ServedJob.Stop.IsCancellationRequested)
        {
            // Nobody told it.
        }

        Assert.True(isSaved);
    }

    /// <summary>What is undone while it is being saved stays undone: it was taken for another program's change, and came back.</summary>
    [Fact]
    public async Task WhatIsUndoneWhileItIsSavedStaysUndone()
    {
        using var folder = new TempFolder();
        // Nothing that takes long to lay.
        string path = folder.File("job.toml");
        File.WriteAllText(path, "a = 1\n");
        await using var session = new JobSession(path);
        for (int i = 0; i < LongRuns.Of(40, 400); i++)
        {
            string before = session.Now.History.Present.Text;
            session.Rewrite($"a = {i}\n# {i}\n");
            Task<SaveAnswer> saved = Task.Run(() => session.Save(null), ServedJob.Stop);
            while (File.ReadAllText(path) == before)
            {
                Thread.SpinWait(20);
            }

            session.Undo();
            Assert.True((await saved).Saved);
            Thread.Sleep(5);
            Assert.Equal(before, session.Now.History.Present.Text);
            Assert.False(session.Now.IsSaved);
            session.Redo();
            Assert.True(session.Now.IsSaved);
        }
    }

    /// <summary>Whatever another program writes while a job is being opened is seen: as it was read, or as a change of it.</summary>
    [Fact]
    public async Task WhatIsWrittenWhileAJobIsOpenedIsSeen()
    {
        using var folder = new TempFolder();
        string path = folder.File("job.toml");
        for (int i = 0; i < LongRuns.Of(60, 400); i++)
        {
            File.WriteAllText(path, "a = 1\n");
            string other = $"a = {i}\n# by another hand\n";
            using var go = new Barrier(2);
            var written = Task.Run(
                () =>
                {
                    go.SignalAndWait(ServedJob.Stop);
                    Thread.SpinWait(i % 50 * 1000);
                    File.WriteAllText(path, other);
                },
                ServedJob.Stop
            );
            go.SignalAndWait(ServedJob.Stop);
            await using var session = new JobSession(path);
            await written;
            Assert.True(
                SpinWait.SpinUntil(() => session.Now.History.Present.Text == other, 2000),
                $"opening {i}"
            );
        }
    }

    /// <summary>A note that is taken while the job is laid for the first time, as a browser sends those that waited for the server: the plan goes by it when all is at rest.</summary>
    [Fact]
    public async Task WhatIsNotedWhileTheJobIsLaidIsPlannedBy()
    {
        await using ServedJob served = await ServedJob.Of("pilot-skiff", GluedSkiff.Added);
        using Stream news = await served.Client.GetStreamAsync("job/1/news", ServedJob.Stop);
        using var lines = new StreamReader(news);
        while (await lines.ReadLineAsync(ServedJob.Stop) is { } line && line != "event: planks") { }

        using HttpResponseMessage noted = await served.Post(
            "job/1/notes",
            new
            {
                notes = new[]
                {
                    new
                    {
                        client = "a",
                        n = 1,
                        plank = GluedSkiff.Parts[0],
                        field = "state",
                        value = "laid 2026-05-03 14:00",
                        seen = 0,
                        at = "2026-05-03 18:00",
                    },
                },
            }
        );
        Assert.Equal(HttpStatusCode.OK, noted.StatusCode);
        await served.Tried((await served.State()).GetProperty("turn").GetInt32());
        int turn = (await served.State()).GetProperty("laid").GetInt32();
        JsonElement laying = await served.Json($"job/1/laying/{turn}");
        Assert.NotEqual("", laying.GetProperty("parts")[0].GetProperty("laid").GetString());
    }

    private static async Task Settles(ServedJob served, Func<JsonElement, bool> holds)
    {
        for (int i = 0; i < 100 && !holds(await served.State()); i++)
        {
            await Task.Delay(50, ServedJob.Stop);
        }

        Assert.True(holds(await served.State()));
    }
}
