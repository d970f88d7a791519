using System.Text.Json;
using Microsoft.Playwright;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>Many at one job: ten browsers follow each other.</summary>
public sealed class ManyPagesTests(Browser browser) : IClassFixture<Browser>
{
    private const int Pages = 10;

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
}
