using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlankFit.Pages.Serving;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>The sheets and tables of the other commands on the page, and the search for a plan of cutting.</summary>
public sealed class SheetsInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    private static readonly string[] Rooms =
    [
        "check",
        "keel",
        "boards",
        "fairness",
        "joints",
        "fastenings",
        "wood",
        "cloth",
        "gluing",
        "as-it-stands",
    ];

    /// <summary>Every room has sheets that are drawings and tables with rows, or says what to add to the job; a room, a sheet or a page that is not there is none.</summary>
    [Fact]
    public async Task EveryRoomHasItsSheetsOrSaysWhatToAdd()
    {
        await using ServedJob served = LongRuns.Asked
            ? await ServedJob.Of("survey-launch")
            : await ServedJob.Small();
        await served.Tried(1);
        foreach (string room in Rooms)
        {
            JsonElement read = await served.Json($"job/1/rooms/1/{room}");
            int sheets = read.GetProperty("sheets").GetArrayLength();
            Assert.Equal(sheets == 0, read.GetProperty("lacks").GetString()!.Length > 0);
            for (int s = 0; s < sheets; s++)
            {
                Assert.StartsWith(
                    "<?xml",
                    await served.Text($"job/1/rooms/1/{room}/{s}/0"),
                    StringComparison.Ordinal
                );
            }
        }

        foreach (
            string none in new[] { "fairness/0/99", "fairness/9/0", "fairness/-1/0", "nothing/0/0" }
        )
        {
            using HttpResponseMessage answer = await served.Get($"job/1/rooms/1/{none}");
            Assert.Equal(System.Net.HttpStatusCode.NotFound, answer.StatusCode);
        }

        // Of a turn that is shown no more there is nothing, and nothing is amiss.
        using HttpResponseMessage gone = await served.Get("job/1/rooms/99/fairness/0/0");
        Assert.Equal(System.Net.HttpStatusCode.NoContent, gone.StatusCode);

        // The job names no stock: there is nothing to search.
        using HttpResponseMessage refused = await served.Post("job/1/boards", new { });
        Assert.Equal(System.Net.HttpStatusCode.NotFound, refused.StatusCode);
    }

    /// <summary>A plank named in a table, and a station, lead to the place in the picture.</summary>
    [Fact]
    public async Task WhatATableNamesIsShownOnTheHull()
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
        foreach (string room in Rooms)
        {
            await page.GotoAsync(new Uri(served.Address, $"job/1/#sheets/{room}").ToString());
            await Expect(page.Locator(".tabs [aria-current]"))
                .ToHaveAttributeAsync("href", $"#sheets/{room}");
            await Expect(page.Locator(".sheets-of h2")).ToBeVisibleAsync();
            await SeenInBrowserTests.Shot(page, $"sheets-{room}");
            Assert.True(
                await page.EvaluateAsync<bool>(
                    "() => document.documentElement.scrollWidth <= window.innerWidth"
                ),
                room
            );
        }

        await page.GotoAsync(new Uri(served.Address, "job/1/#sheets/wood").ToString());
        await Expect(page.Locator(".page svg").First).ToBeVisibleAsync();
        await Rules.Hold(page, "wood");
        await page.Locator(".sheets summary").First.ClickAsync();
        ILocator plank = page.Locator(".sheets td button").Nth(6);
        string named = await plank.InnerTextAsync();
        await plank.ClickAsync();
        await Expect(page.Locator("#picked h2")).ToHaveTextAsync(named);
        await Expect(page.Locator("[aria-selected=true]"))
            .ToHaveAttributeAsync("data-plank", named);
        await page.GotoAsync(new Uri(served.Address, "job/1/#sheets/keel").ToString());
        await page.Locator(".sheets summary").First.ClickAsync();
        await page.Locator(".sheets td button").Nth(4).ClickAsync();
        await Expect(page.Locator(".place-told")).ToContainTextAsync("station");
        await Expect(page.Locator(".place")).ToHaveAttributeAsync("points", new Regex("[0-9]"));
        await SeenInBrowserTests.Shot(page, "place");
        // Figures of a chart lead there as well.
        await page.GotoAsync(new Uri(served.Address, "job/1/#sheets/fairness").ToString());
        ILocator figure = page.Locator(".page .to-place").First;
        string about = (await figure.GetAttributeAsync("data-about"))!;
        await figure.ClickAsync();
        await Expect(page.Locator(".place-told"))
            .ToContainTextAsync(about[(about.IndexOf(' ', StringComparison.Ordinal) + 1)..]);
        Assert.Empty(open.Faults);
    }

    /// <summary>The search is begun, tells of better plans, is stopped and keeps the best; planks are then coloured by their boards.</summary>
    [Fact]
    public async Task BoardsAreSearchedForAndAStopKeepsTheBest()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Of(
            "survey-launch-from-the-rack",
            text => Regex.Replace(text, @"(?m)^(time|rounds) *=.*$", "time = 600")
        );
        await using OpenPage open = await browser.Open(
            new Uri(served.Address, "job/1/#sheets/boards")
        );
        IPage page = open.Page;
        await Expect(page.Locator(".sheets-of h2")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Search for a plan of cutting" })
            .ClickAsync();
        await Expect(page.Locator(".improved li").First).ToContainTextAsync("boards");
        await SeenInBrowserTests.Shot(page, "searching");
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop, keep the best" }).ClickAsync();
        await Expect(page.Locator(".sheets-of figure").First).ToBeVisibleAsync();
        await SeenInBrowserTests.Shot(page, "boards");
        await page.Locator("#rooms a[href='#bottom']").ClickAsync();
        await page.Locator("#colour-by").SelectOptionAsync("board");
        await Expect(page.Locator("#cell-S1-05"))
            .ToHaveAttributeAsync("title", new Regex("S1-05, out of B-"));
        await Expect(page.Locator(".legend")).ToContainTextAsync("B-");
        await SeenInBrowserTests.Shot(page, "by-board");
        Assert.Empty(open.Faults);
    }
}
