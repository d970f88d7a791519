using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>A new hull as a person has it made: from a block that was pasted to the first card at the bench.</summary>
public sealed class NewHullInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    [Fact]
    public async Task FromAPastedTableToItsFirstCard()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedFolder served = await ServedFolder.Start();
        await using OpenPage open = await browser.Open(served.Address);
        IPage page = open.Page;
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new Regex("A new hull") })
            .ClickAsync();
        // As a spreadsheet gives it to be pasted.
        await page.Locator("#table").FillAsync(NewHullTests.Table.Replace(',', '\t'));
        await Expect(page.Locator("#missing")).ToContainTextAsync("how thick a plank is");
        await Expect(page.Locator("[id='ask-job.units']")).ToHaveValueAsync("mm");
        await Expect(page.Locator("[id='ask-hull.keel']")).ToHaveValueAsync("keel edge");
        await Expect(page.Locator("[id='ask-hull.chine']")).ToHaveValueAsync("chine");
        await page.Locator("[id='ask-layer[0].thickness']").FillAsync("6");
        await page.Locator("[id='ask-layer[0].width']").FillAsync("1/0");
        await Expect(page.Locator("#laid")).ToContainTextAsync("No planks yet");
        await page.Locator("[id='ask-layer[0].width']").FillAsync("120");
        await Expect(page.Locator("#laid")).ToContainTextAsync(new Regex(@"\d+ planks\."));
        ILocator picture = page.Locator("#laid img");
        await Expect(picture).ToHaveJSPropertyAsync("complete", true);
        Assert.True(await picture.EvaluateAsync<int>("i => i.naturalWidth") > 0);
        Assert.Empty(served.There);

        await page.GetByLabel("What is she called?").FillAsync("Our <b>launch</b>");
        await Expect(page.Locator("#folder")).ToHaveValueAsync("Our blaunchb");
        await page.Locator("#folder").FillAsync("..");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make it" }).ClickAsync();
        await Expect(page.Locator("#refused")).ToContainTextAsync("folder's name");
        Assert.Empty(served.There);
        open.Faults.RemoveAll(f => f.Contains("422", StringComparison.Ordinal));
        await page.Locator("#folder").FillAsync("Our launch");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make it" }).ClickAsync();
        await open.Laid();
        await Expect(page.Locator("h1")).ToHaveTextAsync("Our <b>launch</b>");
        await open.Cells.First.ClickAsync();
        await page.Locator("#picked a").ClickAsync();
        ILocator card = page.Locator(".bench img");
        await Expect(card).ToHaveJSPropertyAsync("complete", true);
        Assert.True(await card.EvaluateAsync<int>("i => i.naturalWidth") > 0);
        Assert.Contains("Our launch/job.toml", served.There);
        Assert.Empty(open.Faults);
    }

    /// <summary>A doubtful and a faulty cell are told at their places; a file is taken as well as a block; what is no table is refused.</summary>
    [Fact]
    public async Task FromAFileWithAFault()
    {
        if (!LongRunsAsked)
        {
            return;
        }

        await using ServedFolder served = await ServedFolder.Start();
        await using OpenPage open = await browser.Open(new Uri(served.Address, "new"), 360, 740);
        IPage page = open.Page;
        await page.Locator("#file")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "boat.csv",
                    MimeType = "text/csv",
                    Buffer = new byte[3_000_000],
                }
            );
        await Expect(page.Locator("#word")).ToContainTextAsync("no table of offsets");
        await page.Locator("#file")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "boat.csv",
                    MimeType = "text/csv",
                    Buffer = System.Text.Encoding.UTF8.GetBytes(
                        NewHullTests.Table.Replace("437", "<img src=x>", StringComparison.Ordinal)
                    ),
                }
            );
        await page.Locator("[id='ask-layer[0].thickness']").FillAsync("6");
        await page.Locator("[id='ask-layer[0].width']").FillAsync("120");
        await Expect(page.Locator("#cell-5-3")).ToHaveClassAsync("doubt");
        await Expect(page.Locator("#cell-5-3")).ToContainTextAsync("<img src=x>");
        Assert.Equal(0, await page.Locator("img[src=x]").CountAsync());
        Assert.True(
            await page.EvaluateAsync<bool>(
                "() => document.documentElement.scrollWidth <= window.innerWidth"
            )
        );
        Assert.Empty(open.Faults);
    }

    /// <summary>axe-core finds nothing, bare and with planks; where PLANKFIT_SHOTS names a folder, pictures are left there.</summary>
    [Fact]
    public async Task NoStateBreaksARule()
    {
        bool isToBeSeen = Environment.GetEnvironmentVariable("PLANKFIT_SHOTS") is not null;
        if (!LongRunsAsked && !isToBeSeen)
        {
            return;
        }

        Rules.SkipUnlessThere();
        await using ServedFolder served = await ServedFolder.Start();
        foreach (int width in new[] { 360, 900, 1600 })
        {
            await using OpenPage open = await browser.Open(
                new Uri(served.Address, "new"),
                width,
                900
            );
            IPage page = open.Page;
            Task Look(string state) => Rules.Look(page, $"new-{state}", width);

            await Look("bare");
            await page.GetByRole(AriaRole.Button, new() { Name = "Show me one" }).ClickAsync();
            await page.Locator("[id='ask-layer[0].thickness']").FillAsync("6");
            await page.Locator("[id='ask-layer[0].width']").FillAsync("120");
            await Expect(page.Locator("#laid")).ToContainTextAsync(new Regex(@"\d+ planks\."));
            await Look("laid");
            await page.Locator("#table")
                .FillAsync(NewHullTests.Table.Replace("253", "235", StringComparison.Ordinal));
            await Expect(page.Locator(".doubt").First).ToBeVisibleAsync();
            await page.Locator("#folder").FillAsync("nul");
            await page.GetByRole(AriaRole.Button, new() { Name = "Make it" }).ClickAsync();
            await Expect(page.Locator("#refused")).Not.ToBeEmptyAsync();
            await Look("planks");
        }
    }

    private static bool LongRunsAsked => PlankFit.Tests.Support.LongRuns.Asked;
}
