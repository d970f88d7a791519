using System.Diagnostics;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlankFit.App.Noting;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>The built program killed under an open page and started again: what was seen stays readable, and what was noted meanwhile is written once when it is back.</summary>
public sealed class ServerKilledTests(Browser browser) : IClassFixture<Browser>
{
    [Fact]
    public async Task WhatWasSeenStaysAndWhatWasNotedIsWrittenOnce()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        using var folder = new TempFolder();
        string job = OneLayerTender.In(folder, "# nothing asked for"),
            journal = folder.File(ProgressJournal.FileName);
        int port = BuiltPage.FreePort();
        using Process first = BuiltPage.Start(job, port);
        var address = new Uri((await first.StandardOutput.ReadLineAsync(ServedJob.Stop))!);
        await using OpenPage open = await browser.Open(address, 900);
        IPage page = open.Page;
        // Nobody is asked whether to leave: the page goes once its notes are sent.
        List<string> asked = [];
        page.Dialog += async (_, dialog) =>
        {
            asked.Add(dialog.Type);
            await dialog.DismissAsync();
        };
        ILocator sawn = page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Sawn") }),
            fitted = page.GetByRole(AriaRole.Button, new() { Name = "Fitted", Exact = true }),
            card = page.Locator(".bench img");
        await open.Laid();
        await page.GotoAsync(new Uri(address, "job/1/#bench/S1-05").ToString());
        await sawn.ClickAsync();
        await Expect(fitted).ToBeVisibleAsync();
        await Expect(card).ToHaveJSPropertyAsync("complete", true);

        // One note that is written, and whose answer is lost as the program dies: the page cannot know, and sends it again.
        var written = new TaskCompletionSource();
        await page.RouteAsync(
            "**/job/1/notes",
            async route =>
            {
                if (route.Request.Method == "POST" && !written.Task.IsCompleted)
                {
                    await route.FetchAsync();
                    written.SetResult();
                    await route.AbortAsync();
                    return;
                }

                await route.ContinueAsync();
            }
        );
        await fitted.ClickAsync();
        await written.Task.WaitAsync(ServedJob.Stop);
        await BuiltPage.Kill(first);
        await Expect(page.Locator("#word")).ToContainTextAsync("has not answered since");
        Assert.Single(await File.ReadAllLinesAsync(journal, ServedJob.Stop));

        // While it is gone: read, and noted once more.
        await Expect(page.Locator(".bench .number")).ToContainTextAsync("S1-05");
        await Expect(card).ToBeVisibleAsync();
        Assert.True(await card.EvaluateAsync<int>("i => i.naturalWidth") > 0);
        await page.Locator("#note-note").FillAsync("mind the knot");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".marked")).ToContainTextAsync("2 notes wait");
        await page.Locator("nav a[href='#bottom']").ClickAsync();
        await open.Laid();
        int planks = await open.Planks();
        Assert.True(planks > 10);
        await page.Locator("nav a[href='#bench']").ClickAsync();
        await Expect(page.Locator(".bench .number")).ToContainTextAsync("S1-05");

        using Process second = BuiltPage.Start(job, port);
        Assert.Equal(address.ToString(), await second.StandardOutput.ReadLineAsync(ServedJob.Stop));
        // By itself, since it is another run of the server.
        await page.WaitForFunctionAsync(
            "() => performance.getEntriesByType('navigation')[0].type === 'reload'"
        );
        await Expect(page.Locator("#note-note")).ToHaveValueAsync("mind the knot");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Glued", Exact = true }))
            .ToBeVisibleAsync();
        await Expect(page.Locator(".marked")).Not.ToContainTextAsync("wait");
        using var client = new HttpClient();
        string notes = await client.GetStringAsync(new Uri(address, "job/1/notes"), ServedJob.Stop);
        string[] lines = await File.ReadAllLinesAsync(journal, ServedJob.Stop);
        Assert.Equal(2, lines.Length);
        Assert.Contains("\"newest\":2", notes, StringComparison.Ordinal);
        Assert.Single(lines, l => l.Contains("fitted", StringComparison.Ordinal));
        Assert.Single(lines, l => l.Contains("mind the knot", StringComparison.Ordinal));
        // Nothing waits any more in a page that is opened anew.
        await page.ReloadAsync();
        await Expect(page.Locator("#note-note")).ToHaveValueAsync("mind the knot");
        Assert.DoesNotContain(open.Faults, f => !f.Contains("ERR_", StringComparison.Ordinal));
        Assert.Empty(asked);
        await BuiltPage.Kill(second);
    }
}
