using System.Diagnostics;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlankFit.App.Noting;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>What was marked out of reach is lost in no way: its folder was moved meanwhile, another hull is looked at, or its plank was laid otherwise.</summary>
public sealed class LeftNotesInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    private static ILocator Button(IPage page, string words) =>
        page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex($"^{words}") });

    /// <summary>Noted while the program was gone, and its folder moved: the page tells of it, puts it aside where that is asked for, and sends it once to where the hull lies now.</summary>
    [Fact]
    public async Task NotesOfAHullThatWasMovedAreToldAndSent()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        using var folder = new TempFolder();
        string old = OneLayerTender.In(folder, "# nothing asked for"),
            before = folder.File("before"),
            after = folder.File("after");
        Directory.CreateDirectory(before);
        foreach (string file in new[] { "job.toml", "offsets.csv" })
        {
            File.Move(folder.File(file), Path.Combine(before, file));
        }

        int port = BuiltPage.FreePort();
        using Process first = BuiltPage.Start(Path.Combine(before, Path.GetFileName(old)), port);
        var address = new Uri((await first.StandardOutput.ReadLineAsync(ServedJob.Stop))!);
        await using OpenPage open = await browser.Open(
            new Uri(address, "job/1/#bench/S1-05"),
            360,
            740
        );
        IPage page = open.Page;
        ILocator left = page.Locator("#left");
        await Expect(page.Locator("#note-note")).ToBeVisibleAsync();
        Assert.Equal("", await left.InnerTextAsync());
        await BuiltPage.Kill(first);
        await page.Locator("#note-note").FillAsync("mind the knot");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".marked")).ToContainTextAsync("1 note waits");
        await Button(page, "Sawn").ClickAsync();
        await Expect(page.Locator(".marked")).ToContainTextAsync("2 notes wait");
        Directory.Move(before, after);

        using Process second = BuiltPage.Start(Path.Combine(after, "job.toml"), port);
        await second.StandardOutput.ReadLineAsync(ServedJob.Stop);
        await Expect(left)
            .ToContainTextAsync("2 notes of Tender, 4.5 m wait in this browser, not sent.");
        await Rules.Look(page, "left", 360);
        await Button(left.Page, "Look at them").ClickAsync();
        ILocator box = page.Locator("dialog");
        await Expect(box).ToContainTextAsync("S1-05, note: mind the knot");
        await Expect(box).ToContainTextAsync("S1-05, sawn");
        await Rules.Look(page, "left-asked", 360);
        await Button(page, "Put them aside").ClickAsync();
        await Expect(left).ToContainTextAsync("are put aside in this browser");
        await page.ReloadAsync();
        await Expect(left).ToContainTextAsync("are put aside in this browser");
        Assert.False(File.Exists(Path.Combine(after, ProgressJournal.FileName)));

        // Not deleted for saying so once.
        await Button(page, "Look at them").ClickAsync();
        await Button(page, "Delete them for good").ClickAsync();
        await Button(page, "Keep").ClickAsync();
        await Expect(left).ToContainTextAsync("are put aside in this browser");
        await Button(page, "Look at them").ClickAsync();
        await Button(page, "Send them to").ClickAsync();
        await Expect(page.Locator("#note-note")).ToHaveValueAsync("mind the knot");
        await Expect(left).ToBeEmptyAsync();
        await Expect(Button(page, "Fitted")).ToBeVisibleAsync();
        await Expect(page.Locator(".marked")).Not.ToContainTextAsync("wait");
        string[] lines = await File.ReadAllLinesAsync(
            Path.Combine(after, ProgressJournal.FileName),
            ServedJob.Stop
        );
        Assert.Contains("mind the knot", Assert.Single(lines), StringComparison.Ordinal);
        Assert.Equal("S1-05", Assert.Single(Sawn(Path.Combine(after, "job.toml"))));
        await page.ReloadAsync();
        await Expect(page.Locator("#note-note")).ToHaveValueAsync("mind the knot");
        await Expect(left).ToBeEmptyAsync();
        await BuiltPage.Kill(second);
    }

    private static string[] Sawn(string job) =>
        [
            .. JobReader
                .Read(job)
                .Job!.AsBuilt.Sawn.Select(s => s.Id.ToString())
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>Marked as sawn out of reach it is shown so, and written down once when it is back; one whose card is another by now waits, says why, and is written down once it is that one again.</summary>
    [Fact]
    public async Task SawnOutOfReachIsWrittenDownOnce()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        await using OpenPage phone = await browser.Open(
            new Uri(served.Address, "job/1/#bench/S1-05"),
            360,
            740
        );
        IPage page = phone.Page;
        ILocator marked = page.Locator(".marked");
        await Expect(Button(page, "Sawn")).ToBeVisibleAsync();
        await page.Context.SetOfflineAsync(true);
        await Button(page, "Sawn").ClickAsync();
        await Expect(marked).ToContainTextAsync("Sawn, and not written down yet.");
        await Button(page, "Fitted").ClickAsync();
        await Expect(marked).ToContainTextAsync("2 notes wait here to be sent");
        await Button(page, "Next").ClickAsync();
        await Expect(page.Locator(".bench .number")).ToContainTextAsync("S1-06");
        await Button(page, "Sawn").ClickAsync();
        await Expect(marked).ToContainTextAsync("3 notes wait");
        // Taken back before it was ever sent.
        await Button(page, "Next").ClickAsync();
        await Expect(page.Locator(".bench .number")).ToContainTextAsync("S1-07");
        await Button(page, "Sawn").ClickAsync();
        await Button(page, "Sawn. Not after all").ClickAsync();
        await Expect(marked).ToContainTextAsync("3 notes wait");
        Assert.Empty(Sawn(served.JobPath));
        await page.Context.SetOfflineAsync(false);
        await Expect(marked).Not.ToContainTextAsync("wait");
        Assert.Equal(["S1-05", "S1-06"], Sawn(served.JobPath));

        await page.Context.SetOfflineAsync(true);
        await Button(page, "Sawn").ClickAsync();
        await Expect(marked).ToContainTextAsync("not written down yet");
        // At most what the plank beside it leaves: the office lays the rest otherwise.
        await served.Tried(await served.Change("layer[0].width", "90"));
        using HttpResponseMessage saved = await served.Post("job/1/save", new { });
        await page.Context.SetOfflineAsync(false);
        await Expect(marked).ToContainTextAsync("is laid otherwise by now");
        await Rules.Look(page, "sawn-late", 360);
        using HttpResponseMessage undone = await served.Post("job/1/wish", new { undo = true });
        await served.Tried(await ServedJob.Turn(undone));
        using HttpResponseMessage again = await served.Post("job/1/save", new { });
        await Expect(marked).Not.ToContainTextAsync("wait");
        Assert.Equal(["S1-05", "S1-06", "S1-07"], Sawn(served.JobPath));
    }
}
