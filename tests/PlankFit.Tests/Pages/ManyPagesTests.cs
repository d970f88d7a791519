using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Playwright;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>Many at one job: ten browsers follow each other, and ten thousand changes leave nothing behind (CsCheck_Iter=10000; the long run makes fewer).</summary>
public sealed class ManyPagesTests(Browser browser, ITestOutputHelper output)
    : IClassFixture<Browser>
{
    private const int Pages = 10;

    /// <summary>More than this is not kept of changes that are over, bytes.</summary>
    private const long MostGrowth = 100_000_000;

    /// <summary>Ten browsers apart, each with its own lines to the server: one changes a width and all have the new planks; each notes something and all have it.</summary>
    [Fact]
    public async Task TenBrowsersFollowEachOther()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        List<OpenPage> open = [];
        try
        {
            for (int i = 0; i < Pages; i++)
            {
                open.Add(await browser.Open(served.Address, 900));
                await open[i].Laid();
            }

            int before = await open[0].Planks();
            int turn = await served.Change("layer[0].width", "80");
            await served.Tried(turn);
            JsonElement facts = await served.Json($"job/1/facts/{turn}");
            int after = facts.GetProperty("order").GetArrayLength();
            Assert.NotEqual(before, after);
            foreach (OpenPage page in open)
            {
                await Assertions.Expect(page.Cells).ToHaveCountAsync(after);
            }

            string[] planks =
            [
                .. facts
                    .GetProperty("order")
                    .EnumerateArray()
                    .Take(Pages)
                    .Select(p => p.GetString()!),
            ];
            foreach ((OpenPage page, string plank) in open.Zip(planks))
            {
                await page.Page.EvaluateAsync($"location.hash = 'bench/{plank}'");
                await page.Page.Locator("#note-note").FillAsync($"mind the knot in {plank}");
                await page.Page.Keyboard.PressAsync("Enter");
            }

            foreach ((OpenPage page, string plank) in open.Zip(planks.Reverse()))
            {
                await page.Page.EvaluateAsync($"location.hash = 'bench/{plank}'");
                await Assertions
                    .Expect(page.Page.Locator("#note-note"))
                    .ToHaveValueAsync($"mind the knot in {plank}");
            }

            Assert.All(open, page => Assert.Empty(page.Faults));
        }
        finally
        {
            foreach (OpenPage page in open)
            {
                await page.DisposeAsync();
            }
        }
    }

    /// <summary>
    /// Changes one after the other as fast as they are taken, ten listening: each is taken, the last is laid, and the program, by itself, holds no more memory than after
    /// the first quarter of them.
    /// </summary>
    [Fact]
    public async Task ChangesLeaveNothingBehind()
    {
        int changes = LongRuns.Of(0, 500);
        if (changes == 0)
        {
            return;
        }

        using var folder = new TempFolder();
        string job = OneLayerTender.In(folder, "# nothing asked for");
        using Process server = BuiltPage.Start(job, BuiltPage.FreePort());
        var address = new Uri((await server.StandardOutput.ReadLineAsync(ServedJob.Stop))!);
        using var client = new HttpClient { BaseAddress = new(address, "job/1/") };
        client.DefaultRequestHeaders.Add("X-PlankFit", "1");
        client.DefaultRequestHeaders.Add("Origin", address.GetLeftPart(UriPartial.Authority));
        using var over = CancellationTokenSource.CreateLinkedTokenSource(ServedJob.Stop);
        Task<int>[] listeners =
        [
            .. Enumerable.Range(0, Pages).Select(_ => Task.Run(() => Heard(client, over.Token))),
        ];
        long baseline = 0;
        for (int i = 0; i < changes; i++)
        {
            using HttpResponseMessage answer = await client.PostAsJsonAsync(
                "wish",
                new
                {
                    address = "layer[0].width",
                    typed = $"{90 + (i % 21)}",
                    gesture = $"hand {i / 7}",
                },
                ServedJob.Stop
            );
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            if (i % 10 == 9)
            {
                JsonElement now = await Laid(client);
                string turn = now.GetProperty("laid").GetRawText();
                await client.GetStringAsync($"facts/{turn}", ServedJob.Stop);
                await client.GetByteArrayAsync($"planks/{turn}", ServedJob.Stop);
            }

            if (i == changes / 4)
            {
                baseline = Held(server);
            }
        }

        JsonElement state = await Laid(client);
        Assert.Empty(state.GetProperty("faults").EnumerateArray());
        Assert.Equal(state.GetProperty("turn").GetInt32(), state.GetProperty("laid").GetInt32());
        long grown = Held(server) - baseline;
        output.WriteLine(
            FormattableString.Invariant(
                $"{changes} changes: from {baseline / 1e6:0} MB by {grown / 1e6:0} MB"
            )
        );
        Assert.InRange(grown, long.MinValue, MostGrowth);
        await over.CancelAsync();
        Assert.All(await Task.WhenAll(listeners), heard => Assert.True(heard > 0));
        await BuiltPage.Kill(server);
    }

    /// <summary>The state once the newest text is laid.</summary>
    private static async Task<JsonElement> Laid(HttpClient client)
    {
        using Stream news = await client.GetStreamAsync("news", ServedJob.Stop);
        using var lines = new StreamReader(news);
        while (await lines.ReadLineAsync(ServedJob.Stop) is { } line)
        {
            if (
                line.StartsWith("data:", StringComparison.Ordinal)
                && await client.GetFromJsonAsync<JsonElement>("state", ServedJob.Stop) is var state
                && state.GetProperty("turn").GetInt32() == state.GetProperty("tried").GetInt32()
            )
            {
                return state;
            }
        }

        throw new InvalidOperationException("the news ended");
    }

    private static async Task<int> Heard(HttpClient client, CancellationToken stop)
    {
        int heard = 0;
        try
        {
            using Stream news = await client.GetStreamAsync("news", stop);
            using var lines = new StreamReader(news);
            while (await lines.ReadLineAsync(stop) is not null)
            {
                heard++;
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // The end of the test.
        }

        return heard;
    }

    private static long Held(Process server)
    {
        server.Refresh();
        return server.WorkingSet64;
    }
}
