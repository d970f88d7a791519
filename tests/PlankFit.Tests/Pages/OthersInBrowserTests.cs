using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>Trying others as a person does it, in a real browser.</summary>
public sealed class OthersInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    /// <summary>Begun by the keyboard, points seen, one picked by hand, kept, taken, taken back; a wrong value told; nothing runs out sideways and no rule of the web's guidelines is broken.</summary>
    [Fact]
    public async Task TriedPickedKeptTakenAndTakenBack()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(new Uri(served.Address, "job/1/#others"));
        IPage page = open.Page;
        ILocator width = page.GetByLabel("Width of the stock");
        await width.FillAsync("80,0");
        await width.PressAsync("Enter");
        await Expect(page.Locator(".told")).ToContainTextAsync("width 0:");
        await width.FillAsync("80,110,120");
        await width.PressAsync("Enter");
        await Expect(page.Locator(".head")).ToContainTextAsync("4 lay-outs");
        await Expect(page.Locator(".told")).ToBeEmptyAsync();
        Assert.Equal(4, await page.Locator(".chart g[class^='layout-']").CountAsync());
        // Held against each other by planks alone, and charted otherwise, at once.
        await page.Locator(".others summary").ClickAsync();
        await page.GetByLabel("planks to saw", new() { Exact = true }).CheckAsync();
        await Expect(page.Locator(".head"))
            .ToContainTextAsync("Nothing beats 1 of them in planks to saw.");
        await page.GetByLabel("and up it").SelectOptionAsync("drift");
        await Expect(page.Locator(".chart")).ToContainTextAsync("drift of angle");
        await page.GetByLabel("planks to saw", new() { Exact = true }).UncheckAsync();
        await Expect(page.Locator(".head")).ToContainTextAsync("taken together");
        ILocator cards = page.Locator(".cards li");
        int best = await cards.CountAsync();
        ILocator picture = cards.Nth(best - 1).Locator("img");
        await picture.ScrollIntoViewIfNeededAsync();
        await Expect(picture).ToHaveJSPropertyAsync("complete", true);
        Assert.True(await picture.EvaluateAsync<int>("i => i.naturalWidth") > 0);
        string name = (await cards.Nth(best - 1).Locator("h3").TextContentAsync())!;
        await page.Locator($".chart g.layout-{name.Split(':')[0]}").ClickAsync();
        await Expect(page.Locator("li.pointed-at h3")).ToHaveTextAsync(name);
        string text = (await served.State()).GetProperty("text").GetString()!;
        await page.Locator("li.pointed-at")
            .GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Keep ") })
            .ClickAsync();
        await Expect(page.GetByText("Kept side by side")).ToBeVisibleAsync();
        await page.Locator("li.pointed-at .main").First.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Undo" })).ToBeEnabledAsync();
        await Expect(page.GetByText("before its last change")).ToBeVisibleAsync();
        Assert.NotEqual(text, (await served.State()).GetProperty("text").GetString());
        await Rules.Hold(page, "others, found");
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Undo" })).ToBeDisabledAsync();
        Assert.Equal(text, (await served.State()).GetProperty("text").GetString());
        await page.SetViewportSizeAsync(360, 740);
        Assert.True(
            await page.EvaluateAsync<bool>(
                "() => document.documentElement.scrollWidth <= window.innerWidth"
            )
        );
        await Rules.Hold(page, "others, on a phone");
        Assert.Empty(open.Faults);
    }

    /// <summary>Stopped while it runs: what is found stays, and so it does when the room is left and entered again.</summary>
    [Fact]
    public async Task StoppedItKeepsWhatItFound()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(new Uri(served.Address, "job/1/#others"));
        IPage page = open.Page;
        await page.GetByLabel("Angle at the keel").FillAsync("30..60:0.4");
        await page.GetByLabel("Width of the stock").FillAsync("80,90,110,120");
        await page.GetByRole(AriaRole.Button, new() { Name = "Lay and compare" }).ClickAsync();
        await page.Locator(".chart g[class^='layout-']").Nth(3).WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop, keep these" }).ClickAsync();
        await Expect(page.Locator(".head"))
            .ToContainTextAsync(new Regex(@"^Stopped after \d+ of 305"));
        await page.Locator("nav a[href='#bottom']").ClickAsync();
        await open.Laid();
        await page.Locator("nav a[href='#others']").ClickAsync();
        await Expect(page.Locator(".head")).ToContainTextAsync("Stopped after");
        await Expect(page.GetByLabel("Angle at the keel")).ToHaveValueAsync("30..60:0.4");
        Assert.Empty(open.Faults);
    }

    /// <summary>Where PLANKFIT_SHOTS names a folder, pictures of the room are left there, to be looked at.</summary>
    [Fact]
    public async Task PicturesToLookAt()
    {
        if (Environment.GetEnvironmentVariable("PLANKFIT_SHOTS") is not { } folder)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Of("survey-launch");
        foreach (int wide in new[] { 360, 900, 1600 })
        {
            await using OpenPage open = await browser.Open(
                new Uri(served.Address, "job/1/#others"),
                wide,
                wide == 360 ? 740 : 900
            );
            await open.Page.GetByLabel("Angle at the keel").FillAsync("40..50:5");
            await open.Page.GetByLabel("Width of the stock").FillAsync("100,125,150");
            await open.Page.ScreenshotAsync(
                new() { Path = Path.Combine(folder, $"others-{wide}-asked.png") }
            );
            await open
                .Page.GetByRole(AriaRole.Button, new() { Name = "Lay and compare" })
                .ClickAsync();
            await open.Page.Locator(".progress progress").WaitForAsync();
            await Expect(open.Page.Locator(".head")).ToContainTextAsync("lay-outs");
            await open
                .Page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Keep ") })
                .First.ClickAsync();
            await open.Page.ScreenshotAsync(
                new() { Path = Path.Combine(folder, $"others-{wide}.png"), FullPage = true }
            );
        }
    }
}
