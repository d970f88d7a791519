using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>A phone beside the hull, by the shop's network: asked for the code, let in by it, and what it marks is seen in the office.</summary>
public sealed class EnteringInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    private static readonly IPAddress Network = IPAddress.Parse("127.0.0.2");

    /// <summary>A code as it is read aloud has blanks in it; one that is too short is not sent, for wrong ones are counted; a wrong one is told, and how many will be heard.</summary>
    [Fact]
    public async Task ThePhoneEntersAndMarksAPlank()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Of(null, network: Network);
        await served.Tried(1);
        await using OpenPage office = await browser.Open(served.Address);
        await office.Laid();
        await using OpenPage phone = await browser.Open(served.OnNetwork, 360, 740);
        IPage page = phone.Page;
        ILocator code = page.Locator("#code"),
            said = page.Locator("#said");
        string good = served.Codes[^1],
            wrong = good[..^1] + (good[^1] == '0' ? '1' : '0');
        // More than would shut this phone out, were they sent.
        for (int i = 0; i < 6; i++)
        {
            await code.FillAsync("1234 567");
            await page.Locator("#enter").ClickAsync();
            await Expect(said).ToContainTextAsync("A code has 8 digits");
        }

        await code.FillAsync(wrong);
        await page.Locator("#enter").ClickAsync();
        await Expect(said).ToContainTextAsync("That is not the code");
        await Expect(said).ToContainTextAsync("five wrong ones");
        Assert.True(
            await page.EvaluateAsync<bool>(
                "() => document.documentElement.scrollWidth <= window.innerWidth"
            )
        );
        await code.FillAsync("");
        await code.PressSequentiallyAsync($"{good[..4]} {good[4..]}");
        await code.PressAsync("Enter");
        await phone.Laid();
        await page.Locator("nav a[href='#bench']").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Sawn", Exact = true }).ClickAsync();
        await Expect(page.Locator("main")).ToContainTextAsync("no lay-out moves or renumbers it");
        PlankId plank = Assert.Single(JobReader.Read(served.JobPath).Job!.AsBuilt.Sawn).Id;
        await Expect(office.Page.Locator($"#cell-{plank}"))
            .ToHaveAttributeAsync("aria-label", new Regex($"^{plank}, sawn"));
    }
}
