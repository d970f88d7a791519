using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace PlankFit.Tests.Pages;

/// <summary>
/// Whatever may happen to a job that is open, by chance and by its seed alone: it is changed, well and badly, undone, saved, its planks are marked, notes come, and another
/// program writes its job and its table, whole at once or over what stands there. Nothing waits for anything.
/// </summary>
/// <param name="address">Of the server.</param>
/// <param name="jobPath">The job file, that other programs change.</param>
internal sealed partial class HandByChance(Uri address, string jobPath, int seed) : IDisposable
{
    private readonly Random chance = new(seed);
    private readonly HttpClient client = new()
    {
        BaseAddress = new(address, "job/1/"),
        DefaultRequestHeaders =
        {
            { "X-PlankFit", "1" },
            { "Origin", address.GetLeftPart(UriPartial.Authority) },
        },
    };
    private int notes;

    /// <summary>All that was done, for who has to do it once more.</summary>
    public List<string> Done { get; } = [];

    /// <summary>Planks that may be marked.</summary>
    public IReadOnlyList<string> Planks { get; set; } = ["S1-05"];

    [GeneratedRegex(@"^width = .*$", RegexOptions.Multiline)]
    private static partial Regex Widths { get; }

    [GeneratedRegex(@"^angle = .*$", RegexOptions.Multiline)]
    private static partial Regex Angles { get; }

    /// <summary>A width that is not too far from what planks have, in the words of any job.</summary>
    private string Width => $"{(80 + chance.Next(60)).ToString(CultureInfo.InvariantCulture)} mm";

    /// <summary>One thing that happens.</summary>
    public Task One() =>
        chance.Next(100) switch
        {
            < 30 => Wish(
                new
                {
                    address = "layer[0].width",
                    typed = Width,
                    gesture = $"hand {Done.Count / 4}",
                }
            ),
            < 42 => Wish(
                new
                {
                    address = "layer[0].angle",
                    typed = $"{42 + chance.Next(8)}",
                    gesture = "",
                }
            ),
            < 47 => Wish(
                new
                {
                    address = "layer[0].width",
                    typed = "0",
                    gesture = "",
                }
            ),
            < 60 => Wish(new { undo = true }),
            < 67 => Wish(new { redo = true }),
            < 76 => Save(),
            < 82 => Ask(
                "sawn",
                new { plank = Planks[chance.Next(Planks.Count)], forget = chance.Next(3) == 0 }
            ),
            < 87 => Ask("notes", Note()),
            < 94 => Written(jobPath, Job),
            _ => Written(Path.Combine(Path.GetDirectoryName(jobPath)!, "offsets.csv"), Table),
        };

    public void Dispose() => client.Dispose();

    private object Note() =>
        new
        {
            notes = new[]
            {
                new
                {
                    client = $"hand{seed}",
                    n = ++notes,
                    plank = Planks[chance.Next(Planks.Count)],
                    field = "note",
                    value = $"note {notes}",
                    seen = 0,
                    at = "2026-05-03 14:02",
                },
            },
        };

    private string Job(string text) =>
        chance.Next(2) == 0
            ? Widths.Replace(text, $"width = \"{Width}\"", 1)
            : Angles.Replace(text, $"angle = {42 + chance.Next(8)}", 1) + "# by another hand\n";

    /// <summary>A line of its own more or less, which tells nothing and makes another file of it.</summary>
    private static string Table(string text) =>
        text.EndsWith("# by another hand\n", StringComparison.Ordinal)
            ? text[..^"# by another hand\n".Length]
            : text.TrimEnd('\n') + "\n# by another hand\n";

    /// <summary>By another program: whole at once, over what stands there, or in two halves, as editors do it.</summary>
    private async Task Written(string path, Func<string, string> changed)
    {
        string text = changed(await File.ReadAllTextAsync(path, ServedJob.Stop));
        int how = chance.Next(3);
        Done.Add($"{Path.GetFileName(path)} written {how}");
        if (how == 0)
        {
            string beside = path + ".new";
            await File.WriteAllTextAsync(beside, text, ServedJob.Stop);
            File.Move(beside, path, overwrite: true);
        }
        else if (how == 1)
        {
            await File.WriteAllTextAsync(path, text, ServedJob.Stop);
        }
        else
        {
            await using var into = new StreamWriter(path);
            await into.WriteAsync(text[..(text.Length / 2)]);
            await into.FlushAsync(ServedJob.Stop);
            await Task.Delay(chance.Next(10), ServedJob.Stop);
            await into.WriteAsync(text[(text.Length / 2)..]);
        }
    }

    private Task Wish(object wish) => Ask("wish", wish);

    /// <summary>Where another program's stands there, that is looked at, and replaced or left.</summary>
    private async Task Save()
    {
        JsonElement told = await Ask("save", new { });
        if (
            told.TryGetProperty("hash", out JsonElement hash)
            && hash.ValueKind == JsonValueKind.String
            && chance.Next(2) == 0
        )
        {
            await Ask("save", new { over = hash.GetString() });
        }
    }

    private async Task<JsonElement> Ask(string path, object body)
    {
        using HttpResponseMessage answer = await client.PostAsJsonAsync(path, body, ServedJob.Stop);
        Done.Add($"{path} {body}: {(int)answer.StatusCode}");
        Assert.True((int)answer.StatusCode < 500 || path == "notes", Done[^1]);
        return await answer.Content.ReadFromJsonAsync<JsonElement>(ServedJob.Stop);
    }
}
