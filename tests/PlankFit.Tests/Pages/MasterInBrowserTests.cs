using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using PlankFit.Pages.Serving;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>The master plank moved by hand on the hull, in a real browser.</summary>
public sealed class MasterInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    private const string Master = "[data-address='layer[0].master']";

    /// <summary>Drawn along the hull the master's field follows, planks are laid anew, and one undo brings all of it back; Escape in the middle does too. Arrows step by 10 mm, with Shift by 1.</summary>
    [Fact]
    public async Task TheMasterIsDraggedAndUndone()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        Assert.SkipUnless(RoomFiles.Has(RoomRoutes.Solid), "the program was built without Node");
        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address, solid: true);
        IPage page = open.Page;
        await open.Laid();
        string was = await page.Locator(Master).InputValueAsync();
        JsonElement before = await Asked(served);
        await page.Locator(".parts input[name=master]").CheckAsync();
        ILocator grip = page.Locator(".master-grip");
        LocatorBoundingBoxResult box = (await grip.BoundingBoxAsync())!;
        Assert.True(box.Width >= 44 && box.Height >= 44);
        (float x, float y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(x + 60, y - 15, new() { Steps = 12 });
        await SeenInBrowserTests.Shot(page, "master");
        await page.Mouse.UpAsync();
        await Expect(page.Locator(Master)).Not.ToHaveValueAsync(was);
        await Expect(page.Locator(".master-told")).ToContainTextAsync("laid");
        // The grip stands where it was let go.
        await Expect(grip).Not.ToHaveAttributeAsync("aria-valuenow", Shown(before));
        await page.EvaluateAsync("() => document.activeElement.blur()");
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(page.Locator(Master)).ToHaveValueAsync(was);
        await Expect(grip).ToHaveAttributeAsync("aria-valuenow", Shown(before));

        // Escape with the finger down.
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(x + 40, y - 10, new() { Steps = 6 });
        await Expect(page.Locator(Master)).Not.ToHaveValueAsync(was);
        await page.Keyboard.PressAsync("Escape");
        await page.Mouse.UpAsync();
        await Expect(page.Locator(Master)).ToHaveValueAsync(was);

        // By the keys alone: to the right is forward as it is first seen.
        await grip.FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("Shift+ArrowLeft");
        await Expect(page.Locator(Master))
            .ToHaveValueAsync(
                Math.Round(before.GetProperty("askedX").GetDouble() - 19)
                    .ToString(CultureInfo.InvariantCulture)
            );
        await page.Keyboard.PressAsync("Escape");
        await Expect(page.Locator(Master)).ToHaveValueAsync(was);
        Assert.Empty(open.Faults);
    }

    /// <summary>The field does the same, and where the search for corners lays the master elsewhere both places are told and why.</summary>
    [Fact]
    public async Task AskedAndLaidAreBothTold()
    {
        await using ServedJob served = await ServedJob.Of("survey-launch");
        await served.Tried(1);
        JsonElement[] masters = [.. (await served.Json("job/1/masters/1")).EnumerateArray()];
        Assert.Equal(
            ["layer[0].master", "layer[2].master"],
            masters.Select(m => m.GetProperty("address").GetString())
        );
        Assert.All(
            masters,
            m =>
                Assert.Equal(
                    Math.Abs(
                        m.GetProperty("askedX").GetDouble() - m.GetProperty("laidX").GetDouble()
                    ) > 0.05,
                    m.GetProperty("why").GetString()!.Contains("sliver", StringComparison.Ordinal)
                )
        );
        using HttpResponseMessage moved = await served.Post(
            "job/1/wish",
            new { address = "layer[2].master", x = 4123.4 }
        );
        await served.Tried(await ServedJob.Turn(moved));
        JsonElement state = await served.State();
        Assert.Contains(
            "master = 4123",
            state.GetProperty("text").GetString(),
            StringComparison.Ordinal
        );
    }

    private static async Task<JsonElement> Asked(ServedJob served) =>
        (await served.Json("job/1/masters/1"))[0];

    private static string Shown(JsonElement master) =>
        Math.Round(master.GetProperty("askedX").GetDouble()).ToString(CultureInfo.InvariantCulture);
}
