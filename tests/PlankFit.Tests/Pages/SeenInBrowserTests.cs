using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlankFit.Pages.Serving;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>What is shown beside the planks, and what they are coloured by, in a real browser that draws the bodies itself.</summary>
public sealed class SeenInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    /// <summary>Keel, what lies behind, fastenings and the seams below are switched on one by one, each with its lines of the legend; fastenings are one draw and go with their skin.</summary>
    [Fact]
    public async Task PartsAreSwitchedOnAndOff()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        Assert.SkipUnless(RoomFiles.Has(RoomRoutes.Solid), "the program was built without Node");
        await using ServedJob served = await ServedJob.Of("survey-launch");
        await using OpenPage open = await browser.Open(served.Address, 1600, solid: true);
        IPage page = open.Page;
        await open.Laid();
        ILocator sheet = page.Locator(".sheet"),
            legend = page.Locator(".legend");
        await Expect(sheet).ToHaveAttributeAsync("data-triangles", new Regex("[1-9]"));
        int planks = await Number(sheet, "data-triangles");
        await Part(page, "behind").CheckAsync();
        await Expect(legend).ToContainTextAsync("stringer");
        await Expect(sheet).Not.ToHaveAttributeAsync("data-triangles", $"{planks}");
        await Part(page, "fastenings").CheckAsync();
        await Expect(sheet).Not.ToHaveAttributeAsync("data-points", "0");
        await Expect(legend).ToContainTextAsync("into the timber behind");
        await Part(page, "keel").CheckAsync();
        await Expect(legend).ToContainTextAsync("keel");
        await Part(page, "ghost").CheckAsync();
        await Expect(legend).ToContainTextAsync("seams of the skin below");
        await Shot(page, "parts");
        await Rules.Hold(page, "parts");
        foreach (string by in new[] { "bend", "twist", "gap", "sure", "progress", "layer" })
        {
            await page.Locator("#colour-by").SelectOptionAsync(by);
            Assert.True(await legend.Locator("li").CountAsync() > 1, by);
        }

        await Part(page, "behind").UncheckAsync();
        await Part(page, "fastenings").UncheckAsync();
        await Part(page, "keel").UncheckAsync();
        await Expect(sheet).ToHaveAttributeAsync("data-points", "0");
        await Expect(sheet).ToHaveAttributeAsync("data-triangles", $"{planks}");
        Assert.Empty(open.Faults);
    }

    /// <summary>Where the job has none, what to add is said.</summary>
    [Fact]
    public async Task WhatTheJobLacksIsSaid()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        Assert.SkipUnless(RoomFiles.Has(RoomRoutes.Solid), "the program was built without Node");
        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address, 360, 740, solid: true);
        IPage page = open.Page;
        await open.Laid();
        await Part(page, "fastenings").CheckAsync();
        await Expect(page.Locator("#lacking")).ToContainTextAsync("add [fastenings]");
        Assert.True(
            await page.EvaluateAsync<bool>(
                "() => document.documentElement.scrollWidth <= window.innerWidth"
            )
        );
        await Shot(page, "lacking");
        Assert.Empty(open.Faults);
    }

    private static ILocator Part(IPage page, string name) =>
        page.Locator($".parts input[name={name}]");

    private static async Task<int> Number(ILocator of, string attribute) =>
        int.Parse(
            (await of.GetAttributeAsync(attribute))!,
            System.Globalization.CultureInfo.InvariantCulture
        );

    /// <summary>Where PLANKFIT_SHOTS names a folder, pictures at three widths are left there, to be looked at.</summary>
    internal static async Task Shot(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("PLANKFIT_SHOTS") is not { } folder)
        {
            return;
        }

        PageViewportSizeResult was = page.ViewportSize!;
        foreach (int width in new[] { 360, 900, 1600 })
        {
            await page.SetViewportSizeAsync(width, width == 360 ? 740 : 900);
            await page.WaitForTimeoutAsync(500);
            await page.ScreenshotAsync(
                new() { Path = Path.Combine(folder, $"{name}-{width}.png") }
            );
        }

        await page.SetViewportSizeAsync(was.Width, was.Height);
    }
}
