using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>A job file that was spoiled in an editor while the page shows it, or before: told at its line, the last good picture kept, and gone once it is mended.</summary>
public sealed class BadJobFileTests(Browser browser) : IClassFixture<Browser>
{
    [Theory]
    [InlineData("""width\s*=.*""", "width = \"wide", "")]
    [InlineData("""width\s*=.*""", "width = 0", "width")]
    [InlineData("""heads\s*=.*""", "heads = \"up\"", "up")]
    public async Task SpoiledUnderThePageAndMended(string line, string spoiled, string told)
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        string good = served.OnDisk,
            bad = new Regex($"(?m)^{line}$").Replace(good, spoiled, 1);
        int at = 1 + bad[..bad.IndexOf(spoiled, StringComparison.Ordinal)].Count(c => c == '\n');
        await using OpenPage open = await browser.Open(served.Address, 900);
        IPage page = open.Page;
        await open.Laid();
        int planks = await open.Planks();
        await File.WriteAllTextAsync(served.JobPath, bad, ServedJob.Stop);
        ILocator trouble = page.Locator("#trouble");
        await Expect(trouble).ToContainTextAsync(new Regex($@"job\.toml, line {at}\b"));
        await Expect(trouble).ToContainTextAsync(told);
        await Expect(trouble).ToContainTextAsync("The picture is of");
        Assert.Equal(planks, await open.Planks());
        await Expect(page.Locator(".sheet path").First).ToBeAttachedAsync();
        await File.WriteAllTextAsync(served.JobPath, good, ServedJob.Stop);
        await Expect(trouble).ToBeEmptyAsync();
        Assert.Equal(planks, await open.Planks());
        Assert.Empty(open.Faults);
    }

    /// <summary>A file that is bad from the beginning is told with its line, and laid once it is mended.</summary>
    [Fact]
    public async Task BadFromTheBeginning()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        string good = "";
        await using ServedJob served = await ServedJob.Small(text =>
        {
            good = text;
            return "# mine\n[job\n" + text;
        });
        await using OpenPage open = await browser.Open(served.Address, 360, 740);
        await Expect(open.Page.Locator("#trouble")).ToContainTextAsync("job.toml, line 2");
        await Expect(open.Page.Locator("#trouble")).ToContainTextAsync("No planks yet");
        await File.WriteAllTextAsync(served.JobPath, good, ServedJob.Stop);
        await open.Laid();
        await Expect(open.Page.Locator("#trouble")).ToBeEmptyAsync();
        Assert.Empty(open.Faults);
    }
}
