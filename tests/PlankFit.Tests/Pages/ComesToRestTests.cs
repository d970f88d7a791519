using System.Diagnostics;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Playwright;
using PlankFit.App.Showing;
using PlankFit.Pages.Answers;
using PlankFit.Planking.Laying;
using PlankFit.Reading.Text;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Pages;

/// <summary>
/// Whatever happens to a job that is open, in whatever order, it comes to rest, and rests on the truth: what is shown is of the newest text, and is what is worked out anew by
/// the files as they stand and that text alone; what is said to be saved is what stands on the disk.
/// </summary>
public sealed class ComesToRestTests(Browser browser) : IClassFixture<Browser>
{
    /// <summary>At rest is what is so for good: it is looked at until it is so, and no longer than this, ms.</summary>
    private static int Patience => LongRuns.Of(30_000, 240_000);

    /// <summary>By jobs by chance as well, where long runs are asked for.</summary>
    private static int Bursts => LongRuns.Of(4, 15);

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task TheServerRestsOnTheTruth(int seed)
    {
        using var folder = new TempFolder();
        string job = Written(seed, folder);
        await using ServedJob served = await ServedJob.At(job);
        using var hand = new HandByChance(served.Address, job, seed);
        await Rests(served.Client, job, hand);
        var chance = new Random(seed);
        for (int burst = 0; burst < Bursts; burst++)
        {
            int many = 1 + chance.Next(20);
            for (int i = 0; i < many; i++)
            {
                await hand.One();
                if (chance.Next(4) == 0)
                {
                    await Task.Delay(chance.Next(60), ServedJob.Stop);
                }
            }

            hand.Done.Add("-");
            await Rests(served.Client, job, hand);
        }
    }

    public static TheoryData<int> Seeds => LongRuns.Asked ? [1, 2, 3, 4, 5, 6] : [1];

    /// <summary>The same before an open page, and its program killed and started again now and then.</summary>
    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    [InlineData(13)]
    public async Task ThePageRestsOnTheTruth(int seed)
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        using var folder = new TempFolder();
        string job = Written(seed, folder);
        int port = BuiltPage.FreePort();
        Process server = BuiltPage.Start(job, port);
        var address = new Uri((await server.StandardOutput.ReadLineAsync(ServedJob.Stop))!);
        using var client = new HttpClient { BaseAddress = address };
        using var hand = new HandByChance(address, job, seed);
        await using OpenPage open = await browser.Open(address, 1280, 900, solid: seed % 2 == 0);
        var chance = new Random(seed);
        try
        {
            await PageRests(open, await Rests(client, job, hand), hand);
            for (int burst = 0; burst < LongRuns.Of(0, 8); burst++)
            {
                int many = 1 + chance.Next(25);
                for (int i = 0; i < many; i++)
                {
                    await (chance.Next(3) == 0 ? Typed(open.Page, chance) : hand.One());
                }

                if (burst % 4 == 3)
                {
                    hand.Done.Add("killed");
                    await BuiltPage.Kill(server);
                    server.Dispose();
                    server = BuiltPage.Start(job, port);
                    await server.StandardOutput.ReadLineAsync(ServedJob.Stop);
                }

                hand.Done.Add("-");
                await PageRests(open, await Rests(client, job, hand), hand);
                if (Environment.GetEnvironmentVariable("PLANKFIT_SHOTS") is { } shots)
                {
                    await open.Page.ScreenshotAsync(
                        new() { Path = Path.Combine(shots, $"rest-{seed}-{burst}.png") }
                    );
                }
            }

            Assert.DoesNotContain(
                open.Faults,
                f =>
                    !f.Contains("ERR_", StringComparison.Ordinal)
                    && !f.Contains("409")
                    && !f.Contains("422")
            );
        }
        finally
        {
            await BuiltPage.Kill(server);
            server.Dispose();
        }
    }

    /// <summary>One of the demos, or a job by chance.</summary>
    private static string Written(int seed, TempFolder folder)
    {
        if (seed % 10 > 3)
        {
            return ChanceJob.Write(seed, folder.Path);
        }

        if (seed % 10 == 1)
        {
            return OneLayerTender.In(folder, "# nothing asked for");
        }

        foreach (
            string file in Directory.EnumerateFiles(
                DemoTables.Demo(seed % 10 == 2 ? "pilot-skiff" : "survey-launch")
            )
        )
        {
            File.Copy(file, folder.File(Path.GetFileName(file)));
        }

        return folder.File("job.toml");
    }

    /// <summary>By the hand at the page: a value typed and taken, stepped, undone, or a movement that nothing comes of.</summary>
    private static async Task Typed(IPage page, Random chance)
    {
        ILocator width = page.Locator("[data-address='layer[0].angle']").First;
        try
        {
            await width.FocusAsync(new() { Timeout = 500 });
            switch (chance.Next(4))
            {
                case 0:
                    await width.FillAsync($"{42 + chance.Next(8)}", new() { Timeout = 500 });
                    await page.Keyboard.PressAsync("Enter");
                    break;
                case 1:
                    for (int i = 0; i < 5; i++)
                    {
                        await page.Keyboard.PressAsync(
                            chance.Next(2) == 0 ? "ArrowUp" : "ArrowDown"
                        );
                    }

                    break;
                case 2:
                    await page.Keyboard.PressAsync("Control+z");
                    break;
                default:
                    await page.Keyboard.TypeAsync("1");
                    await page.Keyboard.PressAsync("Escape");
                    break;
            }
        }
        catch (Exception e) when (e is TimeoutException or PlaywrightException)
        {
            // No such field in a job that cannot be read, or the page is being loaded anew.
        }
    }

    /// <summary>Looks until all is at rest and true; the state, and the facts of what is laid, null where nothing could be.</summary>
    private static async Task<(JsonElement State, JsonElement? Facts)> Rests(
        HttpClient client,
        string job,
        HandByChance hand
    )
    {
        var began = Stopwatch.StartNew();
        while (true)
        {
            JsonElement state = await client.GetFromJsonAsync<JsonElement>(
                "job/1/state",
                ServedJob.Stop
            );
            (string? amiss, JsonElement? facts) = await Amiss(client, state, job);
            if (amiss is null)
            {
                // And still is, once those who watch files have had their say.
                await Task.Delay(100, ServedJob.Stop);
                JsonElement then = await client.GetFromJsonAsync<JsonElement>(
                    "job/1/state",
                    ServedJob.Stop
                );
                if (then.GetProperty("turn").GetInt32() == state.GetProperty("turn").GetInt32())
                {
                    hand.Planks = facts is { } its ? Planks(its) : hand.Planks;
                    return (state, facts);
                }
            }

            Assert.True(
                began.ElapsedMilliseconds < Patience,
                $"{amiss}\nafter\n{string.Join('\n', hand.Done)}"
            );
            await Task.Delay(50, ServedJob.Stop);
        }
    }

    private static string[] Planks(JsonElement facts) =>
        [.. facts.GetProperty("order").EnumerateArray().Select(p => p.GetString()!)];

    /// <summary>What is not so; null where all is at rest and true.</summary>
    private static async Task<(string? Amiss, JsonElement? Facts)> Amiss(
        HttpClient client,
        JsonElement state,
        string job
    )
    {
        int turn = state.GetProperty("turn").GetInt32();
        if (state.GetProperty("tried").GetInt32() != turn)
        {
            return (
                $"is not at rest: {turn} and {state.GetProperty("tried").GetInt32()} tried",
                null
            );
        }

        string text = state.GetProperty("text").GetString()!;
        bool isSaved = text == await File.ReadAllTextAsync(job, ServedJob.Stop);
        if (isSaved != state.GetProperty("saved").GetBoolean())
        {
            return ($"is {(isSaved ? "" : "not ")}saved, and says otherwise", null);
        }

        byte[] bytes = System.Text.Encoding.UTF8.GetBytes(text);
        var anew = ShownJob.Of(
            job,
            TextFile.Decode(bytes, "job.toml"),
            null,
            new Progress<PlanProgress>(),
            ServedJob.Stop
        );
        bool isLaid =
            state.GetProperty("laid") is { ValueKind: JsonValueKind.Number } laid
            && laid.GetInt32() == turn;
        if (isLaid != anew.Plan is not null)
        {
            return ($"is {(isLaid ? "" : "not ")}laid, and by itself is otherwise", null);
        }

        if (anew.Plan is not { } plan)
        {
            string[] faults = [.. FindingAnswers(anew)],
                told =

                [
                    .. state
                        .GetProperty("faults")
                        .EnumerateArray()
                        .Select(f => f.GetProperty("words").GetString()!),
                ];
            return (
                faults.Order().SequenceEqual(told.Order())
                    ? null
                    : $"other faults: {string.Join("; ", told)}",
                null
            );
        }

        using HttpResponseMessage answer = await client.GetAsync(
            $"job/1/facts/{turn}",
            ServedJob.Stop
        );
        if (answer.StatusCode != System.Net.HttpStatusCode.OK)
        {
            return ("has no facts", null);
        }

        string shown = await answer.Content.ReadAsStringAsync(ServedJob.Stop);
        JsonElement facts = JsonSerializer.Deserialize<JsonElement>(shown);
        JsonElement truth = JsonSerializer.SerializeToElement(
            FactsAnswer.Of(new(new(turn, plan), plan, anew.Findings, []) { Shown = anew }),
            JsonSerializerOptions.Web
        );
        string[] other =
        [
            .. truth
                .EnumerateObject()
                .Where(p => p.Name != "said")
                .Where(p => !JsonElement.DeepEquals(p.Value, facts.GetProperty(p.Name)))
                .Select(p => p.Name),
        ];
        return (other.Length == 0 ? null : $"other {string.Join(", ", other)}", facts);
    }

    private static IEnumerable<string> FindingAnswers(ShownJob anew) =>
        anew.Findings.Select(f => FindingAnswer.Of(f).Words);

    /// <summary>The page shows that, and nothing of it is grey.</summary>
    private static async Task PageRests(
        OpenPage open,
        (JsonElement State, JsonElement? Facts) truth,
        HandByChance hand
    )
    {
        IPage page = open.Page;
        string[] planks = truth.Facts is { } facts ? Planks(facts) : [];
        string saved = truth.State.GetProperty("saved").GetBoolean() ? "Saved" : "Save";
        string? summary = truth.Facts?.GetProperty("summary")[0].GetString();
        string angle = truth
            .State.GetProperty("fields")
            .EnumerateArray()
            .Where(f => f.GetProperty("address").GetString() == "layer[0].angle")
            .Select(f => f.GetProperty("written").GetString() ?? "")
            .SingleOrDefault("");
        string told = "";
        var began = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                told = await page.EvaluateAsync<string>(
                    """
                    ([planks, saved, summary, angle, faults, laid]) => {
                      const all = (s) => [...document.querySelectorAll(s)];
                      const body = document.body.classList;
                      const field = document.querySelector("[data-address='layer[0].angle']");
                      const sheet = document.querySelector(".sheet");
                      return [
                        body.contains("behind") ? "grey" : "",
                        body.contains("lost") ? "lost" : "",
                        planks.length > 0 && all("[role=option]").map((c) => c.dataset.plank).sort().join() !== [...planks].sort().join() ? "other planks in the run" : "",
                        planks.length > 0 && sheet.dataset.turn !== undefined && sheet.dataset.turn !== String(laid) ? `bodies of ${sheet.dataset.turn}` : "",
                        planks.length > 0 && sheet.dataset.turn === undefined && all(".sheet g[class]").map((g) => g.getAttribute("class")).sort().join() !== [...planks].sort().join() ? "other planks in the picture" : "",
                        summary !== null && !document.querySelector(".found").textContent.includes(summary) ? "another summary" : "",
                        all("#doing button.main").some((b) => b.textContent !== saved) ? "saved or not" : "",
                        field !== null && field.value !== angle ? `angle ${field.value} for ${angle}` : "",
                        (all("#trouble p").length > 0) !== faults ? "faults or none" : "",
                      ].filter(Boolean).join("; ");
                    }
                    """,
                    new object?[]
                    {
                        planks,
                        saved,
                        summary,
                        angle,
                        truth.State.GetProperty("faults").GetArrayLength() > 0,
                        truth.State.GetProperty("turn").GetInt32(),
                    }
                );
            }
            catch (PlaywrightException e)
            {
                // It is being loaded anew.
                told = e.Message;
            }

            if (told.Length == 0)
            {
                return;
            }

            Assert.True(
                began.ElapsedMilliseconds < Patience,
                $"{told}\nafter\n{string.Join('\n', hand.Done)}"
            );
            await Task.Delay(100, ServedJob.Stop);
        }
    }
}
