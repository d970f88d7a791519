using PlankFit.Pages.Serving;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>Planks are fetched ahead by the room that draws them, once a change, and by none that was left.</summary>
public sealed class PlanksFetchedInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    [Fact]
    public async Task RoomsThatWereLeftFetchNothing()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked || !RoomFiles.Has(RoomRoutes.Solid))
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address, 1280, 800, solid: true);
        await open.Laid();
        await Expect(open.Page.Locator(".sheet")).ToHaveAttributeAsync("data-turn", "1");
        for (int i = 0; i < 3; i++)
        {
            await open.Page.Locator("nav a[href='#bench']").ClickAsync();
            await open.Page.Locator("nav a[href='#bottom']").ClickAsync();
            await Expect(open.Page.Locator(".sheet")).ToHaveAttributeAsync("data-turn", "1");
        }

        int fetched = 0;
        open.Page.Request += (_, asked) =>
            fetched += asked.Url.EndsWith("/planks/2", StringComparison.Ordinal) ? 1 : 0;
        await open.Page.Locator("[data-address='layer[0].width']").First.FillAsync("80");
        await open.Page.Keyboard.PressAsync("Enter");
        await Expect(open.Page.Locator(".sheet")).ToHaveAttributeAsync("data-turn", "2");
        await served.Tried(2);
        Assert.Equal(1, fetched);
        Assert.Empty(open.Faults);
    }
}
