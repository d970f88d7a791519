using System.Net;
using System.Net.Http.Json;
using System.Text.Json;

namespace PlankFit.Tests.Pages;

/// <summary>One of many at a job: it follows the news as a page does, and changes what comes to it by chance.</summary>
/// <param name="text">The job's, as it was at first.</param>
internal sealed class SoakingHand(Uri address, int number, string text) : IDisposable
{
    private readonly Random chance = new(number + 1);
    private readonly CancellationTokenSource over = CancellationTokenSource.CreateLinkedTokenSource(
        ServedJob.Stop
    );
    private readonly HttpClient client = new()
    {
        BaseAddress = new(address, "job/1/"),
        DefaultRequestHeaders =
        {
            { "X-PlankFit", "1" },
            { "Origin", address.GetLeftPart(UriPartial.Authority) },
        },
    };
    private readonly string name = $"hand{number}";
    private string[] planks = [];
    private long newest;

    /// <summary>By what was asked for and how it was answered, how often.</summary>
    public Dictionary<string, int> Answers { get; } = [];

    public List<(string Client, long N, string Value)> Noted { get; } = [];

    public async Task<JsonElement> Json(string path) =>
        await client.GetFromJsonAsync<JsonElement>(path, ServedJob.Stop);

    /// <summary>The state once the newest text is laid.</summary>
    public async Task<JsonElement> Settled()
    {
        using Stream news = await client.GetStreamAsync("news", ServedJob.Stop);
        using var lines = new StreamReader(news);
        while (await lines.ReadLineAsync(ServedJob.Stop) is { } line)
        {
            if (
                line.StartsWith("data:", StringComparison.Ordinal)
                && await Json("state") is var state
                && state.GetProperty("turn").GetInt32() == state.GetProperty("tried").GetInt32()
            )
            {
                await Look(state.GetProperty("laid").GetInt32());
                return state;
            }
        }

        throw new InvalidOperationException("the news ended");
    }

    public void Leave() => over.Cancel();

    /// <returns>How much it heard.</returns>
    public async Task<int> Listen()
    {
        int heard = 0;
        try
        {
            using Stream news = await client.GetStreamAsync("news", over.Token);
            using var lines = new StreamReader(news);
            while (await lines.ReadLineAsync(over.Token) is not null)
            {
                heard++;
            }
        }
        catch (OperationCanceledException) when (over.IsCancellationRequested)
        {
            // The end of the test.
        }

        return heard;
    }

    public async Task Change(int times)
    {
        for (int i = 0; i < times; i++)
        {
            await One(i);
            if (i % 10 == 9)
            {
                JsonElement state = await Json("state");
                await Look(state.GetProperty("laid").GetInt32());
            }
        }
    }

    /// <summary>Planks that are on the record while all else is changed: the others lie quiet, so that what is shown is what is saved.</summary>
    public async Task Saw(int number)
    {
        await Ask("save", new { }, HttpStatusCode.OK);
        foreach (string plank in planks.Where((_, i) => i % 5 == 0).Take(number).ToArray())
        {
            await Ask("sawn", new { plank }, HttpStatusCode.OK);
            await Settled();
        }
    }

    private Task One(int i) =>
        chance.Next(100) switch
        {
            < 40 => Wish(
                new
                {
                    address = "layer[0].width",
                    typed = $"{90 + chance.Next(40)}",
                    gesture = $"{name} {i / 5}",
                }
            ),
            < 50 => Wish(
                new
                {
                    address = "layer[0].width",
                    typed = $"{4 + (chance.Next(8) / 8.0)}",
                    units = "ft",
                }
            ),
            < 60 => Wish(new { address = "layer[0].angle", typed = $"{40 + chance.Next(10)}" }),
            < 68 => Wish(new { undo = true }),
            < 72 => Wish(new { redo = true }),
            < 75 => Wish(new { text = $"{text}# {name}, {i}\n" }),
            < 79 => Cell(),
            < 81 => Ask("save", new { }, HttpStatusCode.OK, HttpStatusCode.Conflict),
            < 82 => Ask(
                "sawn",
                new { plank = Plank(), forget = chance.Next(2) == 0 },
                HttpStatusCode.OK,
                HttpStatusCode.Conflict
            ),
            < 90 => Note(
                "state",
                chance.Next(3) switch
                {
                    0 => "fitted",
                    1 => "glued",
                    _ => "",
                }
            ),
            _ => Note("note", $"{name} was here {i}"),
        };

    private string Plank() => planks.Length == 0 ? "S1-05" : planks[chance.Next(planks.Length)];

    private Task Wish(object wish) => Ask("wish", wish, HttpStatusCode.OK);

    /// <summary>The chine at the transom, as wide as the table has it or a millimetre wider: one of the two stands there, and whoever is too late is told.</summary>
    private Task Cell()
    {
        string[] values = chance.Next(2) == 0 ? ["610", "611"] : ["611", "610"];
        return Ask(
            "table",
            new
            {
                line = 8,
                column = 12,
                was = values[0],
                typed = values[1],
            },
            HttpStatusCode.OK,
            HttpStatusCode.Conflict
        );
    }

    /// <summary>Every third goes twice, as where its answer was lost.</summary>
    private async Task Note(string field, string value)
    {
        long n = Noted.Count + 1;
        object batch = new
        {
            notes = new[]
            {
                new
                {
                    client = name,
                    n,
                    plank = Plank(),
                    field,
                    value,
                    seen = newest,
                    at = "2026-05-03 14:02",
                },
            },
        };
        Noted.Add((name, n, value));
        await Ask("notes", batch, HttpStatusCode.OK);
        if (n % 3 == 0)
        {
            await Ask("notes", batch, HttpStatusCode.OK);
        }
    }

    private async Task Ask(string path, object body, params HttpStatusCode[] will)
    {
        using HttpResponseMessage answer = await client.PostAsJsonAsync(path, body, ServedJob.Stop);
        string told = $"{path} {(int)answer.StatusCode}";
        Assert.True(
            will.Contains(answer.StatusCode),
            $"{told}: {await answer.Content.ReadAsStringAsync(ServedJob.Stop)}"
        );
        Answers[told] = Answers.GetValueOrDefault(told) + 1;
    }

    /// <summary>What a page fetches of a turn: all of it, or nothing where another is shown by now.</summary>
    private async Task Look(int turn)
    {
        await Got($"planks/{turn}");
        await Got($"skins/{turn}");
        await Got($"masters/{turn}");
        await Got($"picture/{turn}?turned=30&tilted=20&upside=false");
        await Got($"card/{turn}/{Plank()}?units=ft");
        await Got($"rooms/{turn}/keel");
        await Got($"rooms/{turn}/check/0/0");
        newest = (await Json("notes")).GetProperty("newest").GetInt64();
        if (await Got($"facts/{turn}") is { } facts)
        {
            using var read = JsonDocument.Parse(facts);
            planks =
            [
                .. read
                    .RootElement.GetProperty("order")
                    .EnumerateArray()
                    .Select(p => p.GetString()!),
            ];
        }
    }

    /// <returns>Null where there is nothing of it any more.</returns>
    private async Task<string?> Got(string path)
    {
        using HttpResponseMessage answer = await client.GetAsync(path, ServedJob.Stop);
        Assert.True(
            answer.IsSuccessStatusCode || answer.StatusCode == HttpStatusCode.NotFound,
            $"{path}: {(int)answer.StatusCode}"
        );
        return answer.StatusCode == HttpStatusCode.OK
            ? await answer.Content.ReadAsStringAsync(ServedJob.Stop)
            : null;
    }

    public void Dispose()
    {
        over.Dispose();
        client.Dispose();
    }
}
