using Microsoft.Playwright;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>Whether everybody can use the page, as far as a program can tell: axe-core, a rule book of the web's guidelines (WCAG 2.2 A and AA among its tags), on every room.</summary>
public sealed class AccessTests(Browser browser) : IClassFixture<Browser>
{
    /// <summary>No room breaks a rule, with planks, with one picked, with a fault told.</summary>
    [Fact]
    public async Task NoRoomBreaksARule()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        Rules.SkipUnlessThere();
        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address);
        IPage page = open.Page;
        await open.Laid();
        await open.Cells.Nth(3).ClickAsync();
        await Rules.Hold(page, "bottom");
        await page.SetViewportSizeAsync(360, 740);
        await Rules.Hold(page, "bottom, on a phone");
        foreach (string room in new[] { "bench", "table", "papers" })
        {
            await page.Locator($"nav a[href='#{room}']").ClickAsync();
            await page.Locator($"body[data-room={room}] main > *").First.WaitForAsync();
            await Rules.Hold(page, room);
        }

        await page.Locator("nav a[href='#bottom']").ClickAsync();
        await served.Tried(await served.Change("layer[0].width", "0"));
        await page.Locator("#trouble p").First.WaitForAsync();
        await Rules.Hold(page, "a fault");
    }
}
