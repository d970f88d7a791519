using System.Text.Json;
using Microsoft.Playwright;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>What is laid is marked on a phone by the hull, by touch and by keys, with and without a network; every open page follows.</summary>
public sealed class LayingInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    private static ILocator Part(IPage page, string name) =>
        page.Locator($".part[data-part='{name}']");

    private static ILocator Button(IPage page, string words) =>
        page.GetByRole(AriaRole.Button, new() { Name = words, Exact = true });

    private static ILocator Open(IPage page, string part) =>
        Button(page, $"{part}: another hour, or not laid");

    /// <summary>The network goes just as planks are laid anew: what is marked is seen to be marked, though the plan it belongs to is out of reach.</summary>
    [Fact]
    public async Task MarkedWhereTheNewestPlanIsOutOfReach()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Of("pilot-skiff", GluedSkiff.Added);
        JsonElement state = await served.Tried(1);
        await using OpenPage phone = await browser.Open(
            new Uri(served.Address, "job/1/#sheets/gluing"),
            360,
            740
        );
        await Expect(Part(phone.Page, GluedSkiff.Parts[1])).ToContainTextAsync("planned day ");
        await phone.Page.RouteAsync("**/job/1/laying/*", route => route.AbortAsync());
        await phone.Page.RunAndWaitForRequestAsync(
            async () =>
            {
                string text = $"{state.GetProperty("text").GetString()}\n# again\n";
                using HttpResponseMessage laid = await served.Post("job/1/wish", new { text });
            },
            r => r.Url.Contains("laying/2", StringComparison.Ordinal)
        );
        await Button(phone.Page, "outside cloth, starboard: laid now").TapAsync();
        await Expect(Part(phone.Page, GluedSkiff.Parts[0])).ToContainTextAsync("✓ laid");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task MarkedByTheHullAndSeenInTheOffice(bool feet)
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Of("pilot-skiff", GluedSkiff.Added);
        await served.Tried(1);
        var at = new Uri(served.Address, "job/1/#sheets/gluing");
        await using OpenPage phone = await browser.Open(at, 360, 740);
        await using OpenPage office = await browser.Open(at, 1600);
        string[] parts = GluedSkiff.Parts;
        if (!feet)
        {
            // Her job is in feet and inches.
            await phone.Page.Locator("#units").ClickAsync();
            await office.Page.Locator("#units").ClickAsync();
        }

        await Expect(phone.Page.Locator(".part")).ToHaveCountAsync(parts.Length);
        await Expect(Part(phone.Page, parts[0])).ToContainTextAsync("planned day ");
        await Expect(phone.Page.Locator(".sheets-of h2")).ToHaveTextAsync("Gluing");
        await Expect(phone.Page.Locator(".page svg").First).ToBeVisibleAsync();
        await Look("before");

        // By touch; the next one takes the place of the first, and both pages have it at once.
        await Button(phone.Page, "outside cloth, starboard: laid now").TapAsync();
        await Expect(Part(phone.Page, parts[0])).ToContainTextAsync("✓ laid");
        await Expect(Part(office.Page, parts[0])).ToContainTextAsync("✓ laid");
        await Expect(office.Page.Locator(".laying-told")).ToContainTextAsync("1 of 10 laid");
        await Expect(Part(office.Page, parts[1]).Locator("button.main")).ToHaveCountAsync(1);
        await Open(phone.Page, "outside cloth, starboard").TapAsync();
        await Open(office.Page, "outside cloth, starboard").ClickAsync();
        ILocator hour = phone.Page.GetByLabel("outside cloth, starboard: laid at");
        string now = await hour.InputValueAsync();
        Assert.Equal(16, now.Length);

        // It was an hour earlier: typed on the phone, in the office's field and in the plan.
        string earlier = $"{now[..11]}00:05";
        await hour.FillAsync(earlier);
        await phone.Page.Keyboard.PressAsync("Enter");
        await Expect(office.Page.GetByLabel("outside cloth, starboard: laid at"))
            .ToHaveValueAsync(earlier);

        // By keys alone, in the office.
        ILocator port = Button(office.Page, "outside cloth, port: laid now");
        await port.FocusAsync();
        await office.Page.Keyboard.PressAsync("Enter");
        await Expect(Open(office.Page, "outside cloth, port")).ToBeFocusedAsync();
        await Expect(Part(phone.Page, parts[1])).ToContainTextAsync("✓ laid");

        // Taken back on the phone, and in the office it is to be laid again.
        await Open(phone.Page, "outside cloth, port").TapAsync();
        await Button(phone.Page, "outside cloth, port: not laid after all").TapAsync();
        await Expect(port).ToBeVisibleAsync();

        // Without a network: two marks wait and are seen to; the office has one of them meanwhile; nothing is lost, and nothing is there twice.
        await Expect(phone.Page.Locator(".laying-told")).ToContainTextAsync("1 of 10 laid");
        await phone.Page.Context.SetOfflineAsync(true);
        await Button(phone.Page, "outside cloth, port: laid now").TapAsync();
        await Expect(Part(phone.Page, parts[1])).ToContainTextAsync("… not sent yet");
        await Button(phone.Page, "outside cloth, coat 1, starboard: laid now").TapAsync();
        await Expect(Part(phone.Page, parts[2])).ToContainTextAsync("… not sent yet");
        await Expect(phone.Page.Locator(".laying-told"))
            .ToContainTextAsync("2 notes wait here to be sent");
        await Look("waiting");
        await port.ClickAsync();
        await Open(office.Page, "outside cloth, port").ClickAsync();
        await office.Page.GetByLabel("outside cloth, port: laid at").FillAsync($"{now[..11]}00:10");
        await office.Page.Keyboard.PressAsync("Enter");
        await Expect(Part(office.Page, parts[2])).Not.ToContainTextAsync("✓");
        await phone.Page.Context.SetOfflineAsync(false);
        await Expect(Part(office.Page, parts[2])).ToContainTextAsync("✓ laid");
        await Expect(phone.Page.Locator(".laying-told")).Not.ToContainTextAsync("wait");
        await Expect(phone.Page.Locator(".laying-told")).ToContainTextAsync("its state was \"laid");
        await Open(phone.Page, "outside cloth, port").TapAsync();
        string value = await phone
            .Page.GetByLabel("outside cloth, port: laid at")
            .InputValueAsync();
        await Expect(office.Page.GetByLabel("outside cloth, port: laid at"))
            .ToHaveValueAsync(value);
        JsonElement notes = await served.Json("job/1/notes");
        Assert.Equal(8, notes.GetProperty("newest").GetInt32());

        // A touch is as wide as a thumb, and the plan's sheet goes by what is marked.
        foreach (
            ILocator target in new[]
            {
                Button(phone.Page, "outside cloth, coat 1, port: laid now"),
                hour,
            }
        )
        {
            LocatorBoundingBoxResult? box = await target.BoundingBoxAsync();
            Assert.True(box!.Height >= 44 && box.Width >= 44, $"{box.Width} by {box.Height}");
        }

        await Expect(office.Page.Locator(".page svg").First).ToBeVisibleAsync();
        await Look("after");
        Assert.Empty(office.Faults);

        async Task Look(string name)
        {
            await Rules.Look(phone.Page, $"laying-{name}{(feet ? "-feet" : "")}", 360);
            if (name != "waiting")
            {
                await Rules.Look(office.Page, $"laying-{name}{(feet ? "-feet" : "")}", 1600);
            }
        }
    }
}
