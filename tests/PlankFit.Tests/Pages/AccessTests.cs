using System.Text.Json;
using Microsoft.Playwright;
using PlankFit.Tests.Architecture;

namespace PlankFit.Tests.Pages;

/// <summary>Whether everybody can use the page, as far as a program can tell: axe-core, a rule book of the web's guidelines (WCAG 2.2 A and AA among its tags), on every room.</summary>
public sealed class AccessTests(Browser browser) : IClassFixture<Browser>
{
    internal static string Axe =>
        Path.Combine(
            HouseRules.Root(),
            "src",
            "PlankFit.Page",
            "obj",
            "solid",
            "node_modules",
            "axe-core",
            "axe.min.js"
        );

    /// <summary>No room breaks a rule, with planks, with one picked, with a fault told.</summary>
    [Fact]
    public async Task NoRoomBreaksARule()
    {
        Assert.SkipUnless(
            File.Exists(Axe),
            "axe-core is not here: build where there is Node (apt-get install nodejs npm)"
        );
        string axe = await File.ReadAllTextAsync(Axe, ServedJob.Stop);
        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address);
        IPage page = open.Page;
        await open.Laid();
        await open.Cells.Nth(3).ClickAsync();
        // The policy refuses a script that is added; what the debugger evaluates is not the page's.
        await page.EvaluateAsync(axe);
        await Told(page, "bottom");
        await page.SetViewportSizeAsync(360, 740);
        await Told(page, "bottom, on a phone");
        foreach (string room in new[] { "bench", "table", "papers" })
        {
            await page.Locator($"nav a[href='#{room}']").ClickAsync();
            await page.Locator($"body[data-room={room}] main > *").First.WaitForAsync();
            await Told(page, room);
        }

        await page.Locator("nav a[href='#bottom']").ClickAsync();
        await served.Tried(await served.Change("layer[0].width", "0"));
        await page.Locator("#trouble p").First.WaitForAsync();
        await Told(page, "a fault");
    }

    /// <summary>Where axe has been evaluated in the page.</summary>
    internal static async Task Told(IPage page, string where)
    {
        JsonElement broken = await page.EvaluateAsync<JsonElement>(
            "async () => (await axe.run()).violations.map(v => `${v.id} (${v.impact}): ${v.nodes.map(n => n.html.slice(0, 160)).slice(0, 4).join(' | ')}`)"
        );
        Assert.True(broken.GetArrayLength() == 0, $"{where}: {broken}");
    }
}
