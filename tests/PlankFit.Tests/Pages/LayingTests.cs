using System.Globalization;
using System.Net;
using System.Text.Json;
using PlankFit.App.Noting;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Export.Glue;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Laying;
using PlankFit.Reading.Glue;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>Cloth, coats, fairing and fillets are marked as laid with their hour, and the rest is planned from there on, as where progress.csv says so.</summary>
public sealed class LayingTests
{
    private static string[] Parts => GluedSkiff.Parts;

    private static object Note(
        int n,
        string part,
        string value,
        int seen = 0,
        string client = "a"
    ) =>
        new
        {
            client,
            n,
            plank = part,
            field = "state",
            value,
            seen,
            at = "2026-05-03 18:00",
        };

    private static async Task<JsonElement> Marked(ServedJob served, params object[] notes)
    {
        using HttpResponseMessage answer = await served.Post("job/1/notes", new { notes });
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        JsonElement told = await ServedJob.Read(answer);
        await served.Tried((await served.State()).GetProperty("turn").GetInt32());
        return told;
    }

    private static async Task<Dictionary<string, JsonElement>> Read(ServedJob served)
    {
        int turn = (await served.State()).GetProperty("laid").GetInt32();
        JsonElement read = await served.Json($"job/1/laying/{turn}");
        JsonElement[] parts = [.. read.GetProperty("parts").EnumerateArray()];
        Assert.Equal(Parts, parts.Select(p => p.GetProperty("name").GetString()));
        return parts.ToDictionary(p => p.GetProperty("name").GetString()!);
    }

    private static GluePlan Planned(string job)
    {
        var planned = PlannedJob.From(
            job,
            new Progress<PlanProgress>(),
            new Timings(),
            ServedJob.Stop
        );
        return planned.Plan!.Glue!;
    }

    /// <summary>Each part has its time by the plan until it is laid; the page's plan and the command line's go on from it by the same batches as from progress.csv; taken back it is planned again.</summary>
    [Fact]
    public async Task TheRestIsPlannedFromWhatIsMarked()
    {
        await using ServedJob served = await ServedJob.Of("pilot-skiff", GluedSkiff.Added);
        await served.Tried(1);
        Dictionary<string, JsonElement> before = await Read(served);
        Assert.All(
            before.Values,
            p =>
                Assert.StartsWith(
                    "day ",
                    p.GetProperty("planned").GetString(),
                    StringComparison.Ordinal
                )
        );
        Assert.All(before.Values, p => Assert.Equal("", p.GetProperty("laid").GetString()));

        await Marked(
            served,
            Note(1, Parts[0], "laid 2026-05-03 10:05"),
            Note(2, Parts[1], "laid 2026-05-03 11:20"),
            Note(3, Parts[2], "laid 2026-05-04 09:10")
        );
        Dictionary<string, JsonElement> now = await Read(served);
        Assert.Equal("day 1, 10:05", now[Parts[0]].GetProperty("laid").GetString());
        Assert.Equal("day 1, 11:20", now[Parts[1]].GetProperty("laid").GetString());
        Assert.Equal("day 2, 09:10", now[Parts[2]].GetProperty("laid").GetString());
        Assert.All(Parts.Take(3), p => Assert.Equal("", now[p].GetProperty("planned").GetString()));

        // Another's program, with the journal held by the page; and by a file that says the same.
        GluePlan byNotes = Planned(served.JobPath);
        string file = Path.Combine(Path.GetDirectoryName(served.JobPath)!, ProgressText.UsualName);
        await File.WriteAllTextAsync(
            file,
            $"id,done-at\n{Parts[0]},\"day 1, 10:05\"\n{Parts[1]},\"day 1, 11:20\"\n{Parts[2]},\"day 2, 09:10\"\n",
            ServedJob.Stop
        );
        GluePlan byFile = Planned(served.JobPath);
        File.Delete(file);
        Assert.NotEmpty(byNotes.Batches);
        Assert.Equal(Spans(byFile), Spans(byNotes));
        Assert.DoesNotContain(byNotes.Findings, f => f.Where == ProgressText.UsualName);
        foreach (string part in Parts.Skip(3))
        {
            GlueBatch[] batches = [.. Of(byNotes, part)];
            Assert.Equal(
                $"{GlueWords.When(batches[0].MixAt)} to {GlueWords.When(batches.Max(b => b.Clocks.DownAt))}",
                now[part].GetProperty("planned").GetString()
            );
        }

        // An hour that is put right moves what bonds to it; taken back it is to be laid once more.
        await Marked(served, Note(4, Parts[2], "laid 2026-05-05 09:10", 3));
        Assert.Equal(
            "day 3, 09:10",
            (await Read(served))[Parts[2]].GetProperty("laid").GetString()
        );
        Assert.NotEqual(Spans(byNotes), Spans(Planned(served.JobPath)));
        await Marked(served, Note(5, Parts[2], "", 4));
        JsonElement back = (await Read(served))[Parts[2]];
        Assert.Equal("", back.GetProperty("laid").GetString());
        Assert.NotEqual("", back.GetProperty("planned").GetString());
    }

    private static (string, double, double)[] Spans(GluePlan plan) =>
        [.. plan.Batches.Select(b => ($"{b.Layer} {b.Side} {b.Course}", b.MixAt, b.Grams))];

    private static IEnumerable<GlueBatch> Of(GluePlan plan, string part) =>
        plan
            .Stages.Where(s =>
                part.Contains(" coat ", StringComparison.Ordinal)
                    ? part.Contains(
                        string.Create(CultureInfo.InvariantCulture, $" coat {s.Coat} "),
                        StringComparison.Ordinal
                    )
                    : part.StartsWith(s.Layer, StringComparison.Ordinal)
            )
            .SelectMany(s => s.Batches)
            .Where(b => part.EndsWith(b.Side.ToString(), StringComparison.OrdinalIgnoreCase))
            .OrderBy(b => b.MixAt);

    /// <summary>Two hands that did not know of one another are told, the newer holds, and none is there twice; what is no part, or no hour, is refused and keeps nothing.</summary>
    [Fact]
    public async Task TwoHandsAreToldAndNoneIsThereTwice()
    {
        await using ServedJob served = await ServedJob.Of("pilot-skiff", GluedSkiff.Added);
        await served.Tried(1);
        object first = Note(1, Parts[0], "laid 2026-05-03 10:05");
        await Marked(served, first);
        await Marked(served, first);
        JsonElement told = await Marked(
            served,
            Note(1, Parts[0], "laid 2026-05-03 10:30", client: "b")
        );
        Assert.Contains(
            $"{Parts[0]}: its state was \"laid 2026-05-03 10:05\", noted by another",
            Assert.Single(told.GetProperty("told").EnumerateArray()).GetString(),
            StringComparison.Ordinal
        );
        Assert.Equal(
            "day 1, 10:30",
            (await Read(served))[Parts[0]].GetProperty("laid").GetString()
        );
        foreach (
            object wrong in new[]
            {
                Note(9, Parts[1], "laid"),
                Note(9, Parts[1], "laid 2026-02-30 10:00"),
                Note(9, Parts[1], "fitted"),
                Note(9, "outside cloth", "laid 2026-05-03 10:05"),
                Note(9, " port", "laid 2026-05-03 10:05"),
                Note(9, "S1-05", "laid 2026-05-03 10:05"),
            }
        )
        {
            using HttpResponseMessage answer = await served.Post(
                "job/1/notes",
                new { notes = new[] { wrong } }
            );
            Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        }

        Assert.Equal(
            2,
            (
                await File.ReadAllLinesAsync(
                    Path.Combine(Path.GetDirectoryName(served.JobPath)!, ProgressJournal.FileName),
                    ServedJob.Stop
                )
            ).Length
        );
        // Of another name by now: nothing is planned by it, and that is told.
        await Marked(served, Note(2, "inside cloth port", "laid 2026-05-03 10:05"));
        int turn = (await served.State()).GetProperty("laid").GetInt32();
        Assert.Contains(
            (await served.Json($"job/1/facts/{turn}")).GetProperty("findings").EnumerateArray(),
            f =>
                f.GetProperty("words")
                    .GetString()!
                    .Contains("inside cloth port: laid by it", StringComparison.Ordinal)
        );
    }
}
