using System.Globalization;
using System.Net;
using System.Text.Json;
using PlankFit.App.Noting;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>What is typed into the blanks of the check sheet: judged at once, kept beside the job, put into the file of what was measured where that is asked for, once.</summary>
public sealed class ReadingsTests
{
    internal static Task<ServedJob> Trusted() => ServedJob.Small(text => text + "\n[trust]\n");

    internal static async Task<HttpResponseMessage> Type(
        ServedJob served,
        string client,
        long n,
        string blank,
        string typed,
        double? should = null,
        string? units = null,
        string? job = null
    ) =>
        await served.Post(
            "job/1/notes",
            new
            {
                notes = new[]
                {
                    new
                    {
                        client,
                        n,
                        plank = "",
                        field = blank,
                        value = typed,
                        seen = 0,
                        at = "2026-05-03 14:02",
                        units,
                        shouldMm = should,
                        job,
                    },
                },
            }
        );

    internal static JsonElement[] Blanks(JsonElement sheet) =>
        [
            .. sheet
                .GetProperty("groups")
                .EnumerateArray()
                .SelectMany(g => g.GetProperty("blanks").EnumerateArray()),
        ];

    internal static string Of(JsonElement element, string name) =>
        element.GetProperty(name).GetString()!;

    internal static string Mm(double mm) =>
        Math.Round(mm, 1).ToString(CultureInfo.InvariantCulture);

    /// <summary>
    /// Without [trust]: within and beyond, in mm and in feet and inches, in two browsers; nothing is written but the journal, and what is no length or no blank is refused whole.
    /// </summary>
    [Fact]
    public async Task WhatIsTypedIsJudgedAndKept()
    {
        await using ServedJob served = await ServedJob.Small();
        const string Early = "d | S1-07 | starboard | 1";
        // What waited for the server is held up until it is known what a bare number is in, and not refused.
        using (HttpResponseMessage early = await Type(served, "a.1", 1, Early, "1491"))
        {
            Assert.Equal(HttpStatusCode.ServiceUnavailable, early.StatusCode);
            Assert.True((await ServedJob.Read(early)).GetProperty("isHeldUp").GetBoolean());
        }

        await served.Tried(1);
        // Of another hull it goes into no journal of this one, and stays with the browser.
        string id = Of(await served.State(), "job");
        using (
            HttpResponseMessage others = await Type(
                served,
                "a.1",
                1,
                Early,
                "1493 mm",
                job: new string('0', id.Length)
            )
        )
        {
            Assert.Equal(HttpStatusCode.Conflict, others.StatusCode);
            Assert.True((await ServedJob.Read(others)).GetProperty("isHeldUp").GetBoolean());
        }

        string folder = Path.GetDirectoryName(served.JobPath)!;
        JsonElement sheet = await served.Json("job/1/taping/1");
        Assert.Equal(
            ["bare numbers are mm", "bare numbers are inches"],
            new[] { Of(sheet, "bare"), Of(await served.Json("job/1/taping/1?units=ft"), "bare") }
        );
        JsonElement seam = Blanks(sheet)
            .First(b => Of(b, "name").StartsWith("seam length", StringComparison.Ordinal));
        double should = seam.GetProperty("shouldMm").GetDouble();
        string name = Of(seam, "name");
        using HttpResponseMessage a = await Type(
            served,
            "a.1",
            1,
            name,
            Mm(should + 1),
            should,
            job: id
        );
        using HttpResponseMessage b = await Type(served, "b.1", 1, name, Mm(should + 5), should);
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (a.StatusCode, b.StatusCode));
        JsonElement[] read =
        [
            .. (await served.Json("job/1/readings/1?units=ft"))
                .GetProperty("readings")
                .EnumerateArray(),
        ];
        Assert.Equal(["within", "beyond"], read.Select(r => Of(r, "verdict")));
        Assert.All(read, r => Assert.Contains('"', Of(r, "text")));
        Assert.Equal(name[..^1] + "2", Of(read[1], "name"));
        foreach (
            (string blank, string typed) in new[]
            {
                (name, "=1+1"),
                (name, "<img src=x onerror=alert(1)>"),
                (name, "1e999"),
                (name, new string('1', 5000)),
                ("../../etc/passwd", "1"),
                ("state", "1"),
                (name + "\n", "1"),
            }
        )
        {
            using HttpResponseMessage refused = await Type(served, "c.1", 1, blank, typed);
            Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        }

        using HttpResponseMessage put = await served.Post("job/1/readings/put", new { });
        Assert.Equal(HttpStatusCode.Conflict, put.StatusCode);
        Assert.Equal(
            ["done-so-far.jsonl", "job.toml", "offsets.csv"],
            Directory.GetFiles(folder).Select(Path.GetFileName).Where(f => f![0] != '.').Order()
        );
    }

    internal static async Task<JsonElement> Settled(ServedJob served)
    {
        JsonElement state = await served.State();
        while (state.GetProperty("tried").GetInt32() < state.GetProperty("turn").GetInt32())
        {
            state = await served.Tried(state.GetProperty("turn").GetInt32());
        }

        return state;
    }

    /// <summary>
    /// With [trust]: what is asked for is put into measured.csv once, the job's text names it, and the plan goes by it as a file on the disk would have it; what is read anew stands in
    /// its own place, and a crash between the two writes nothing twice.
    /// </summary>
    [Fact]
    public async Task PutIntoTheFileOnce()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await Trusted();
        await served.Tried(1);
        string measured = Path.Combine(Path.GetDirectoryName(served.JobPath)!, "measured.csv");
        JsonElement sheet = await served.Json("job/1/taping/1");
        Assert.True(sheet.GetProperty("trusted").GetBoolean());
        JsonElement[] first =
        [
            .. sheet.GetProperty("groups")[0].GetProperty("blanks").EnumerateArray(),
        ];
        Assert.NotEmpty(first);
        (string name, double should) = (
            Of(first[0], "name"),
            first[0].GetProperty("shouldMm").GetDouble()
        );
        string again = name[..^1] + "2";
        using HttpResponseMessage a = await Type(served, "a.1", 1, name, Mm(should + 2), should);
        using HttpResponseMessage b = await Type(served, "a.1", 2, again, Mm(should + 2.5), should);
        // No diagonal adjusts a hull: it is judged, and stays in the journal.
        JsonElement diagonal = Blanks(sheet)
            .First(x => Of(x, "name").StartsWith("d |", StringComparison.Ordinal));
        using HttpResponseMessage c = await Type(served, "a.1", 3, Of(diagonal, "name"), "1000");
        Assert.Equal(2, (await served.Json("job/1/readings/1")).GetProperty("toPut").GetInt32());
        Assert.False(File.Exists(measured));
        JsonElement put = await Put(served);
        Assert.True(put.GetProperty("done").GetBoolean());
        JsonElement state = await served.Tried(2);
        Assert.Empty(state.GetProperty("faults").EnumerateArray());
        Assert.Contains("measured = \"measured.csv\"", Of(state, "text"), StringComparison.Ordinal);
        Assert.DoesNotContain("measured", served.OnDisk, StringComparison.Ordinal);
        string there = await File.ReadAllTextAsync(measured, ServedJob.Stop);
        Assert.Equal(3, there.Trim().Split('\n').Length);
        // The crash: the file is there, and the job does not name it.
        using (HttpResponseMessage undo = await served.Post("job/1/wish", new { undo = true }))
        {
            await served.Tried(await ServedJob.Turn(undo));
        }

        await Put(served);
        Assert.Equal(there, await File.ReadAllTextAsync(measured, ServedJob.Stop));
        using (HttpResponseMessage saved = await served.Post("job/1/save", new { }))
        {
            Assert.Equal(HttpStatusCode.OK, saved.StatusCode);
        }

        // As the command line reads it.
        Job job = Planned(served);
        Assert.Equal(
            [should + 2, should + 2.5],
            job.AsBuilt.Readings.Select(r => r.Mm),
            (x, y) => Math.Abs(x - y) < 0.051
        );
        // Another hand's row stays, and what was read anew stands for what it was.
        await File.AppendAllTextAsync(
            measured,
            there.Split('\n')[1].Split("    #")[0] + "\n",
            ServedJob.Stop
        );
        // Taped to the marks of what is laid now.
        int laid = (await Settled(served)).GetProperty("laid").GetInt32();
        double now = Blanks(await served.Json($"job/1/taping/{laid}"))
            .First(x => Of(x, "name") == name)
            .GetProperty("shouldMm")
            .GetDouble();
        using HttpResponseMessage d = await Type(served, "a.1", 4, again, Mm(should + 1), now);
        await Put(served);
        await Put(served);
        Assert.Equal(3, Planned(served).AsBuilt.Readings.Length);
        Assert.Equal(
            1,
            Planned(served).AsBuilt.Readings.Count(r => Math.Abs(r.Mm - should - 1) < 0.051)
        );
        using HttpResponseMessage e = await Type(served, "a.1", 5, again, "");
        await Put(served);
        Assert.Equal(2, Planned(served).AsBuilt.Readings.Length);
    }

    private static Job Planned(ServedJob served)
    {
        ReadResult read = JobReader.Read(served.JobPath);
        Assert.NotNull(read.Job);
        return read.Job;
    }

    internal static async Task<JsonElement> Put(ServedJob served)
    {
        // A file that was written is laid anew.
        await Settled(served);
        using HttpResponseMessage answer = await served.Post("job/1/readings/put", new { });
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await ServedJob.Read(answer);
    }

    /// <summary>A file that the job names outside of its folder is not written, nor one of another's under the usual name.</summary>
    [Fact]
    public async Task NoOtherFileIsWritten()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await Trusted();
        string folder = Path.GetDirectoryName(served.JobPath)!,
            others = Path.Combine(folder, "measured.csv");
        await File.WriteAllTextAsync(others, "somebody's own\n", ServedJob.Stop);
        JsonElement state = await served.Tried(1);
        int turn = state.GetProperty("laid").GetInt32();
        JsonElement first = Blanks(await served.Json($"job/1/taping/{turn}"))[0];
        using HttpResponseMessage typed = await Type(
            served,
            "a.1",
            1,
            Of(first, "name"),
            Mm(first.GetProperty("shouldMm").GetDouble())
        );
        await Put(served);
        Assert.Equal("somebody's own\n", await File.ReadAllTextAsync(others, ServedJob.Stop));
        Assert.True(File.Exists(Path.Combine(folder, "measured-2.csv")));
        string outside = Path.Combine(
            Path.GetTempPath(),
            $"plankfit-outside-{Guid.NewGuid():N}.csv"
        );
        string text = Of(await served.State(), "text")
            .Replace("measured-2.csv", outside, StringComparison.Ordinal);
        using HttpResponseMessage named = await served.Post("job/1/wish", new { text });
        using HttpResponseMessage put = await served.Post("job/1/readings/put", new { });
        Assert.Equal(HttpStatusCode.Conflict, put.StatusCode);
        Assert.False(File.Exists(outside));
        Assert.Equal(
            ProgressJournal.FileName,
            Path.GetFileName(Directory.GetFiles(folder, "*.jsonl").Single())
        );
    }
}
