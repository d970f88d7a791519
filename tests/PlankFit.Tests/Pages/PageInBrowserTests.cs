using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlankFit.Pages.Serving;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>The page as a person has it, in a real browser; each test ends by seeing that the browser had nothing to complain of. Some run where PLANKFIT_LONG=1 asks for it.</summary>
public sealed class PageInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    private const string Width = "[data-address='layer[0].width']";

    /// <summary>Opened, turned, a plank picked by hand; what is picked is picked in the run as well, is read at the bench and marked as sawn there.</summary>
    [Fact]
    public async Task OpenedTurnedAndPicked()
    {
        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address);
        IPage page = open.Page;
        await open.Laid();
        ILocator plank = page.Locator(".sheet g.S1-05 path").Last;
        string before = (await plank.GetAttributeAsync("d"))!;
        await page.Locator(".sheet").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(plank).Not.ToHaveAttributeAsync("d", before);
        await page.Keyboard.PressAsync("Home");
        await Expect(plank).ToHaveAttributeAsync("d", before);
        // In the middle of the plank as it is drawn.
        await plank.EvaluateAsync("path => path.scrollIntoView({ block: 'center' })");
        float[] at = await plank.EvaluateAsync<float[]>(
            """
            path => {
              const n = path.getTotalLength(), ctm = path.getScreenCTM();
              const points = [0, 1, 2, 3, 4, 5, 6, 7].map(i => path.getPointAtLength(n * i / 8));
              const mid = new DOMPoint(points.reduce((s, p) => s + p.x, 0) / 8, points.reduce((s, p) => s + p.y, 0) / 8).matrixTransform(ctm);
              return [mid.x, mid.y];
            }
            """
        );
        await page.Mouse.ClickAsync(at[0], at[1]);
        await Expect(page.Locator("[aria-selected=true]"))
            .ToHaveAttributeAsync("data-plank", "S1-05");
        await page.Locator("#picked a").ClickAsync();
        await Expect(page.Locator(".bench .number")).ToContainTextAsync("S1-05");
        ILocator card = page.Locator(".bench img");
        await Expect(card).ToHaveJSPropertyAsync("complete", true);
        Assert.True(await card.EvaluateAsync<int>("i => i.naturalWidth") > 0);
        await page.Locator(".bench summary").ClickAsync();
        await Expect(page.Locator(".bench pre")).ToContainTextAsync("S1-05: starboard");
        await page.GetByRole(AriaRole.Button, new() { Name = "Next" }).ClickAsync();
        await Expect(page.Locator(".bench .number")).ToContainTextAsync("S1-06");
        ILocator sawn = page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Sawn") });
        await sawn.ClickAsync();
        await Expect(sawn).ToHaveTextAsync("Sawn. Not after all?");
        await page.Locator("nav a[href='#bottom']").ClickAsync();
        await page.Locator("#colour-by").SelectOptionAsync("progress");
        await Expect(page.Locator("#cell-S1-06")).ToHaveTextAsync("s");
        await Expect(page.Locator("#cell-S1-05")).ToBeEmptyAsync();
        Assert.Empty(open.Faults);
    }

    /// <summary>Where there was Node at the build the browser draws the bodies itself: all of them, turned by the keys, picked through the glass.</summary>
    [Fact]
    public async Task TheBrowserDrawsTheBodiesItself()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        Assert.SkipUnless(
            RoomFiles.Has(RoomRoutes.Solid),
            "the program was built without Node: install it, or this is not to be seen"
        );
        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address, 900, solid: true);
        IPage page = open.Page;
        await open.Laid();
        ILocator sheet = page.Locator(".sheet");
        byte[] bytes = await served.Bytes("job/1/planks/1");
        await Expect(sheet)
            .ToHaveAttributeAsync("data-triangles", $"{BitConverter.ToInt32(bytes, 12) / 3}");
        byte[] before = await page.Locator(".sheet canvas").ScreenshotAsync();
        string frames = (await sheet.GetAttributeAsync("data-frames"))!;
        await sheet.FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(sheet).Not.ToHaveAttributeAsync("data-frames", frames);
        Assert.NotEqual(before, await page.Locator(".sheet canvas").ScreenshotAsync());
        await sheet.ClickAsync();
        await Expect(page.Locator("[aria-selected=true]"))
            .ToHaveAttributeAsync("data-plank", new Regex("^S1-"));
        int turn = await served.Change("layer[0].width", "80");
        await served.Tried(turn);
        await Expect(sheet).ToHaveAttributeAsync("data-turn", $"{turn}");
        Assert.Empty(open.Faults);
    }

    /// <summary>A width changed by hand changes the count, which is said; undone by the keys it is as before. A second browser sees both at once.</summary>
    [Fact]
    public async Task AWidthIsChangedAndUndoneAndASecondBrowserFollows()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await using OpenPage one = await browser.Open(served.Address);
        await using OpenPage two = await browser.Open(served.Address, 900);
        await one.Laid();
        await two.Laid();
        int planks = await one.Planks();
        string width = await one.Page.Locator(Width).InputValueAsync();
        await one.Page.Locator(Width).FillAsync("80");
        await one.Page.Keyboard.PressAsync("Enter");
        await Expect(one.Page.Locator("#word")).ToContainTextAsync("planks more");
        int more = await one.Planks();
        Assert.True(more > planks, $"{more} planks, before {planks}");
        await Expect(two.Cells).ToHaveCountAsync(more);
        await Expect(two.Page.Locator(Width)).ToHaveValueAsync("80");
        await one.Page.Locator(".sheet").FocusAsync();
        await one.Page.Keyboard.PressAsync("Control+z");
        await Expect(one.Cells).ToHaveCountAsync(planks);
        await Expect(one.Page.Locator(Width)).ToHaveValueAsync(width);
        await Expect(two.Cells).ToHaveCountAsync(planks);
        await one.Page.Keyboard.PressAsync("Control+Shift+z");
        await Expect(two.Cells).ToHaveCountAsync(more);
        Assert.Empty(one.Faults.Concat(two.Faults));
    }

    /// <summary>Drawing along a value is one step, however many texts it takes.</summary>
    [Fact]
    public async Task DrawingAlongAValueIsOneStep()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address);
        await open.Laid();
        int planks = await open.Planks();
        ILocator width = open.Page.Locator(Width);
        int was = int.Parse(await width.InputValueAsync(), CultureInfo.InvariantCulture);
        LocatorBoundingBoxResult box = (await width.BoundingBoxAsync())!;
        float x = box.X + (box.Width / 2),
            y = box.Y + (box.Height / 2);
        await open.Page.Mouse.MoveAsync(x, y);
        await open.Page.Mouse.DownAsync();
        await open.Page.Mouse.MoveAsync(x + 123, y, new() { Steps = 20 });
        await open.Page.Mouse.UpAsync();
        await Expect(width).ToHaveValueAsync($"{was + 20}");
        await Expect(open.Cells).Not.ToHaveCountAsync(planks);
        await open.Page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(width).ToHaveValueAsync($"{was}");
        await Expect(open.Cells).ToHaveCountAsync(planks);
        Assert.Empty(open.Faults);
    }

    /// <summary>On a phone nothing runs out sideways in any room, the picture is at the top, and the foot leads from plank to plank.</summary>
    [Fact]
    public async Task OnAPhone()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address, 360, 740);
        IPage page = open.Page;
        await open.Laid();
        ILocator next = page.Locator(".foot").GetByRole(AriaRole.Button, new() { Name = "Next" });
        await next.ClickAsync();
        await next.ClickAsync();
        string picked = (
            await page.Locator("[aria-selected=true]").GetAttributeAsync("data-plank")
        )!;
        await page.Locator(".foot .main").ClickAsync();
        await Expect(page.Locator(".bench .number")).ToContainTextAsync(picked);
        foreach (string room in new[] { "bottom", "bench", "table", "papers" })
        {
            await page.Locator(
                    "nav a",
                    new() { HasTextRegex = new Regex(room, RegexOptions.IgnoreCase) }
                )
                .ClickAsync();
            await Expect(page.Locator($"body[data-room={room}] main > *").First).ToBeVisibleAsync();
            Assert.True(
                await page.EvaluateAsync<bool>(
                    "() => document.documentElement.scrollWidth <= window.innerWidth"
                ),
                room
            );
        }

        Assert.Empty(open.Faults);
    }

    /// <summary>By the keyboard alone: to the run, along it, to the bench and back, and a value stepped by the arrows.</summary>
    [Fact]
    public async Task ByTheKeyboardAlone()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address);
        IPage page = open.Page;
        await open.Laid();
        int planks = await open.Planks();
        await TabTo(page, "[role=listbox]");
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(page.Locator("[aria-selected=true]"))
            .ToHaveAttributeAsync("data-plank", "S1-02");
        await page.Keyboard.PressAsync("ArrowDown");
        await Expect(page.Locator("[aria-selected=true]"))
            .ToHaveAttributeAsync("data-plank", "P1-02");
        await page.Keyboard.TypeAsync("12");
        await Expect(page.Locator("[aria-selected=true]"))
            .ToHaveAttributeAsync("data-plank", "P1-12");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".bench .number")).ToContainTextAsync("P1-12");
        await TabTo(page, "nav a[href='#bottom']");
        await page.Keyboard.PressAsync("Enter");
        await open.Laid();
        await TabTo(page, Width);
        int was = int.Parse(
            await page.Locator(Width).InputValueAsync(),
            CultureInfo.InvariantCulture
        );
        await page.Keyboard.PressAsync("Shift+ArrowUp");
        await page.Keyboard.PressAsync("ArrowDown");
        await Expect(page.Locator(Width)).ToHaveValueAsync($"{was + 9}");
        await Expect(open.Cells).Not.ToHaveCountAsync(planks);
        Assert.Empty(open.Faults);
    }

    /// <summary>A bad value stays in its field, its fault is told with the line, the picture stays; the right value takes it away.</summary>
    [Fact]
    public async Task ABadValueIsToldAndTheLastPictureStays()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address);
        IPage page = open.Page;
        await open.Laid();
        int planks = await open.Planks();
        await page.Locator(Width).FillAsync("0");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#trouble"))
            .ToContainTextAsync(new Regex(@"job\.toml, line \d+"));
        await Expect(page.Locator("#trouble")).ToContainTextAsync("The picture is of");
        await Expect(page.Locator(Width)).ToHaveValueAsync("0");
        await Expect(page.Locator(Width)).ToHaveAttributeAsync("aria-invalid", "true");
        Assert.Equal(planks, await open.Planks());
        await page.Locator(Width).FillAsync("90");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#trouble")).ToBeEmptyAsync();
        await Expect(page.Locator(Width)).Not.ToHaveAttributeAsync("aria-invalid", "true");
        Assert.Empty(open.Faults);
    }

    /// <summary>A job that cannot be read at all is told with its line, and is mended in the file's text; names that are markup are shown as text in every room.</summary>
    [Fact]
    public async Task ABadJobAndANameThatIsMarkup()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        const string evil = "<img src=x onerror=document.title=1>";
        await using ServedJob served = await ServedJob.Small(text =>
            new Regex("(?m)^name *= *\".*\"").Replace(text, $"name = \"{evil}\"", 1)
        );
        await using OpenPage open = await browser.Open(served.Address);
        IPage page = open.Page;
        await open.Laid();
        await Expect(page.Locator("h1")).ToHaveTextAsync(evil);
        foreach (string room in new[] { "bench", "table", "papers", "bottom" })
        {
            await page.Locator($"nav a[href='#{room}']").ClickAsync();
            await Expect(page.Locator($"body[data-room={room}] main > *").First).ToBeVisibleAsync();
            Assert.Equal(0, await page.Locator("img[src=x]").CountAsync());
            Assert.NotEqual("1", await page.TitleAsync());
        }

        using HttpResponseMessage broken = await served.Post("job/1/wish", new { text = "[job\n" });
        await Expect(page.Locator("#trouble")).ToContainTextAsync("job.toml, line 1");
        await Expect(page.Locator(".words")).ToContainTextAsync("cannot be read");
        Assert.Empty(open.Faults);
    }

    /// <summary>Papers are written, listed, and come down; a change makes them old, which is said.</summary>
    [Fact]
    public async Task PapersAreWrittenAndComeDown()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(new Uri(served.Address, "job/1/#papers"));
        IPage page = open.Page;
        await page.GetByRole(AriaRole.Button, new() { Name = "Write all files" }).ClickAsync();
        await Expect(page.GetByText("All files are written")).ToBeVisibleAsync();
        IDownload book = await page.RunAndWaitForDownloadAsync(() =>
            page.GetByRole(AriaRole.Link, new() { Name = "bench-book.pdf" }).ClickAsync()
        );
        byte[] bytes = await File.ReadAllBytesAsync((await book.PathAsync())!, ServedJob.Stop);
        Assert.Equal("%PDF"u8.ToArray(), bytes[..4]);
        await served.Tried(await served.Change("layer[0].width", "90"));
        await Expect(page.Locator(".papers")).ToContainTextAsync("do not saw by them");
        Assert.Empty(open.Faults);
    }

    /// <summary>Where PLANKFIT_SHOTS names a folder, pictures of every room are left there, to be looked at.</summary>
    [Fact]
    public async Task PicturesToLookAt()
    {
        if (Environment.GetEnvironmentVariable("PLANKFIT_SHOTS") is not { } folder)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Of("survey-launch");
        foreach (int width in new[] { 360, 900, 1600 })
        {
            await using OpenPage open = await browser.Open(
                served.Address,
                width,
                width == 360 ? 740 : 900,
                solid: true
            );
            await open.Laid();
            foreach (string room in new[] { "bottom", "bench/S2-07", "table", "papers" })
            {
                await open.Page.GotoAsync(new Uri(served.Address, $"job/1/#{room}").ToString());
                await Expect(open.Page.Locator("main > *").First).ToBeVisibleAsync();
                await open.Page.WaitForLoadStateAsync(LoadState.DOMContentLoaded);
                await open.Page.WaitForTimeoutAsync(800);
                await open.Page.ScreenshotAsync(
                    new() { Path = Path.Combine(folder, $"{room.Replace('/', '-')}-{width}.png") }
                );
            }
        }
    }

    internal static ILocatorAssertions Expect(ILocator locator)
    {
        Assertions.SetDefaultExpectTimeout(Browser.PatienceMs);
        return Assertions.Expect(locator);
    }

    /// <summary>Presses the tab key until that has the focus.</summary>
    private static async Task TabTo(IPage page, string selector)
    {
        for (int i = 0; i < 400; i++)
        {
            if (await page.EvaluateAsync<bool>("s => document.activeElement.matches(s)", selector))
            {
                return;
            }

            await page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"the tab key does not come to {selector}");
    }
}
