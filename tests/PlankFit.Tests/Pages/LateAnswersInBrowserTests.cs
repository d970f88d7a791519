using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>Answers that come late, turned about or not at all, as by a phone beside the hull: the page comes to rest on what is there, and is grey until then.</summary>
public sealed class LateAnswersInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    private const string Width = "layer[0].width",
        Field = "[data-address='layer[0].width']";

    private static LocatorAssertionsToContainTextOptions Soon => new() { Timeout = 15_000 };

    private static async Task<string> Told(ServedJob served, int turn) =>
        (await served.Json($"job/1/facts/{turn}")).GetProperty("summary")[0].GetString()!;

    /// <summary>No news need come after what did not come: it is asked for again, and the page is grey until it is there.</summary>
    [Theory]
    [InlineData("facts/*")]
    [InlineData("state*")]
    [InlineData("picture/*")]
    public async Task WhatDidNotComeIsAskedForAgain(string what)
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address, 1280);
        await open.Laid();
        await Expect(open.Page.Locator(".sheet g").First).ToBeAttachedAsync();
        await served.Tried(1);
        bool isOver = false;
        await open.Page.RouteAsync(
            $"**/job/1/{what}",
            route => isOver ? route.ContinueAsync() : route.AbortAsync()
        );
        await served.Tried(await served.Change(Width, "80"));
        await Task.Delay(500, ServedJob.Stop);
        if (what == "facts/*")
        {
            // What is known of the planks before these is not shown as if it were theirs.
            await Expect(open.Page.Locator("body")).ToHaveClassAsync(new Regex("behind"));
        }

        isOver = true;
        await Expect(open.Page.Locator(".found")).ToContainTextAsync(await Told(served, 2), Soon);
        await Expect(open.Page.Locator("body")).Not.ToHaveClassAsync(new Regex("behind"));
        await Expect(open.Page.Locator(".sheet g")).ToHaveCountAsync(await open.Planks());
        Assert.DoesNotContain(open.Faults, f => !f.Contains("ERR_", StringComparison.Ordinal));
    }

    /// <summary>A line of news that was refused, as where too many pages are open, is asked for again.</summary>
    [Fact]
    public async Task NewsThatWereRefusedAreAskedForAgain()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address, 1280);
        await open.Laid();
        int refused = 0;
        await open.Page.RouteAsync(
            "**/job/1/news",
            route =>
                refused++ == 0 ? route.FulfillAsync(new() { Status = 503 }) : route.ContinueAsync()
        );
        await open.Page.ReloadAsync();
        await open.Laid();
        await served.Tried(await served.Change(Width, "80"));
        await Expect(open.Page.Locator(".found")).ToContainTextAsync(await Told(served, 2), Soon);
        await Expect(open.Page.Locator("body")).Not.ToHaveClassAsync(new Regex("lost"));
    }

    /// <summary>Planks that were marked out of reach and are taken back while the marks are sent: neither the one that waits nor the one on its way is on the record.</summary>
    [Fact]
    public async Task WhatIsTakenBackWhileItIsSentIsNotOnTheRecord()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        await using OpenPage open = await browser.Open(
            new Uri(served.Address, "job/1/#bench/S1-05"),
            900
        );
        IPage page = open.Page;
        TaskCompletionSource going = new(),
            go = new();
        bool isBack = false;
        await page.RouteAsync(
            "**/job/1/sawn",
            async route =>
            {
                if (!isBack)
                {
                    await route.AbortAsync();
                    return;
                }

                going.TrySetResult();
                await go.Task;
                await route.ContinueAsync();
            }
        );
        ILocator sawn = page.GetByRole(AriaRole.Button, new() { Name = "Sawn", Exact = true }),
            notAfterAll = page.GetByRole(
                AriaRole.Button,
                new() { Name = "Sawn. Not after all?", Exact = true }
            );
        foreach (string plank in new[] { "S1-05", "S1-06" })
        {
            await page.GotoAsync(new Uri(served.Address, $"job/1/#bench/{plank}").ToString());
            await Expect(page.Locator(".bench .number")).ToContainTextAsync(plank);
            await sawn.ClickAsync();
            await Expect(notAfterAll).ToBeVisibleAsync();
        }

        isBack = true;
        await going.Task.WaitAsync(ServedJob.Stop);
        foreach (string plank in new[] { "S1-06", "S1-05" })
        {
            await page.GotoAsync(new Uri(served.Address, $"job/1/#bench/{plank}").ToString());
            await Expect(page.Locator(".bench .number")).ToContainTextAsync(plank);
            await notAfterAll.ClickAsync();
        }

        go.SetResult();
        // What is sent by mistake is on the record by then.
        await Task.Delay(1500, ServedJob.Stop);
        await page.WaitForFunctionAsync(
            "() => !Object.keys(localStorage).some((k) => k.startsWith('plankfit sawn'))"
        );
        await served.Tried((await served.State()).GetProperty("turn").GetInt32());
        Assert.Empty(JobReader.Read(served.JobPath).Job!.AsBuilt.Sawn);
        await Expect(sawn).ToBeVisibleAsync();
    }

    /// <summary>An answer of before that comes after all others is not what stays: the table shows what stands in it.</summary>
    [Fact]
    public async Task AnAnswerThatComesLastIsNotTheNewest()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        await using OpenPage open = await browser.Open(
            new Uri(served.Address, "job/1/#table"),
            1280
        );
        ILocator cell = open.Page.Locator("[data-line='8'][data-column='12']");
        await Expect(cell).ToHaveValueAsync("610");
        bool isHeld = false;
        await open.Page.RouteAsync(
            "**/job/1/table",
            async route =>
            {
                if (isHeld)
                {
                    await route.ContinueAsync();
                    return;
                }

                isHeld = true;
                IAPIResponse old = await route.FetchAsync();
                await Task.Delay(2000, ServedJob.Stop);
                await route.FulfillAsync(new() { Response = old });
            }
        );
        foreach ((string was, string typed) in new[] { ("610", "611"), ("611", "612") })
        {
            using HttpResponseMessage mended = await served.Post(
                "job/1/table",
                new
                {
                    line = 8,
                    column = 12,
                    was,
                    typed,
                }
            );
            Assert.True(mended.IsSuccessStatusCode);
            await served.Tried(await ServedJob.Turn(mended));
        }

        await Task.Delay(3000, ServedJob.Stop);
        await Expect(cell).ToHaveValueAsync("612");
    }

    /// <summary>What was typed and taken is sent though something else is being typed by then that is thought better of.</summary>
    [Fact]
    public async Task WhatWasTypedIsSentThoughMoreIsTypedMeanwhile()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        await using OpenPage open = await browser.Open(served.Address, 1280);
        await open.Laid();
        TaskCompletionSource go = new();
        await open.Page.RouteAsync(
            "**/job/1/wish",
            async route =>
            {
                await go.Task;
                await route.ContinueAsync();
            }
        );
        ILocator width = open.Page.Locator(Field).First;
        foreach (string typed in new[] { "80", "85" })
        {
            await width.FillAsync(typed);
            await open.Page.Keyboard.PressAsync("Enter");
        }

        await open.Page.Keyboard.TypeAsync("9");
        go.SetResult();
        await Task.Delay(500, ServedJob.Stop);
        await open.Page.Keyboard.PressAsync("Escape");
        await Task.Delay(500, ServedJob.Stop);
        await Expect(width).ToHaveValueAsync("85");
        Assert.Contains(
            "width = 85",
            (await served.State()).GetProperty("text").GetString()!,
            StringComparison.Ordinal
        );
    }

    /// <summary>A hundred changes whose news come faster than they are fetched: what was passed over is not fetched one after the other.</summary>
    [Fact]
    public async Task NewsThatComeFasterThanTheyAreFetchedAreFetchedOnce()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        const int changes = 100;
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        await using OpenPage open = await browser.Open(served.Address, 1280);
        await open.Laid();
        int asked = 0;
        await open.Page.RouteAsync(
            "**/job/1/state*",
            async route =>
            {
                asked++;
                await Task.Delay(200, ServedJob.Stop);
                await route.ContinueAsync();
            }
        );
        int turn = 0;
        for (int i = 0; i < changes; i++)
        {
            turn = await served.Change(Width, i % 2 == 0 ? "80" : "90");
            await Task.Delay(10, ServedJob.Stop);
        }

        JsonElement state = await served.Tried(turn);
        await Expect(open.Page.Locator(".found"))
            .ToContainTextAsync(
                await Told(served, state.GetProperty("laid").GetInt32()),
                new() { Timeout = 5000 }
            );
        await Expect(open.Page.Locator("body")).Not.ToHaveClassAsync(new Regex("behind"));
        for (int before = 0; before < asked; )
        {
            before = asked;
            await Task.Delay(1000, ServedJob.Stop);
        }

        Assert.InRange(asked, 1, changes / 2);
    }
}
