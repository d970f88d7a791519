using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>
/// What somebody does who has read no further than the README: a table pasted from a spreadsheet, two sizes typed, another width, saved, and a card printed. Nothing is asked that he
/// cannot know, and nothing is to be looked for. Where PLANKFIT_SHOTS names a folder, what he sees and the printed card are left there.
/// </summary>
public sealed class FirstQuarterInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    [Theory]
    [InlineData("pilot-skiff", "3/8", "6", "5 in", "\"")]
    [InlineData("survey-launch", "8", "125", "140", "mm")]
    public async Task FromThePastedTableToThePrintedCard(
        string hull,
        string thickness,
        string width,
        string other,
        string unit
    )
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        string table = string.Join(
            '\n',
            (
                await File.ReadAllLinesAsync(
                    Path.Combine(DemoTables.Demo(hull), "offsets.csv"),
                    ServedJob.Stop
                )
            )
                .Where(l => !l.StartsWith('#'))
                .Select(l => l.Replace(',', '\t'))
        );
        await using ServedFolder served = await ServedFolder.Start();
        await using OpenPage open = await browser.Open(served.Address, 1280, 800);
        IPage page = open.Page;
        await page.Locator("#new a").ClickAsync();
        await page.Locator("#table").FillAsync(table);
        await page.Locator("[id='ask-layer[0].thickness']").FillAsync(thickness);
        await page.Locator("[id='ask-layer[0].width']").FillAsync(width);
        await Expect(page.Locator("#laid")).ToContainTextAsync(new Regex(@"\d+ planks\."));
        await Shot("1-table");
        await page.GetByLabel("What is she called?").FillAsync("Mine");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make it" }).ClickAsync();
        await open.Laid();
        await Expect(page.Locator("h1")).ToHaveTextAsync("Mine");
        int planks = await open.Planks();
        await Shot("2-laid");
        // What is from before is grey, and can be read all the same.
        await page.EvaluateAsync("() => document.body.classList.add('behind')");
        await Shot("2-from-before");
        await page.EvaluateAsync("() => document.body.classList.remove('behind')");

        ILocator field = page.Locator("[data-address='layer[0].width']").First;
        await field.FillAsync(other);
        await page.Keyboard.PressAsync("Enter");
        await Expect(open.Cells).Not.ToHaveCountAsync(planks);
        await Expect(page.Locator("#word")).ToContainTextAsync("planks");
        await Expect(page.Locator("body")).Not.ToHaveClassAsync(new Regex("behind"));
        await Shot("3-changed");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await Expect(page.Locator("#word")).ToContainTextAsync("Saved as the job file");
        string job = Path.Combine(served.Place, "Mine", "job.toml");
        Assert.Empty(JobReader.Read(job).Findings.Where(f => f.Severity == Severity.Error));

        await open.Cells.Nth(3).ClickAsync();
        await page.Locator("#picked a").ClickAsync();
        await Expect(page.Locator(".bench img")).ToHaveJSPropertyAsync("complete", true);
        await Expect(page.Locator(".bench .four")).ToContainTextAsync(unit);
        await Shot("4-bench");
        byte[] printed = await page.PdfAsync(new() { Format = "A4", PrintBackground = true });
        Assert.Equal("%PDF"u8.ToArray(), printed[..4]);
        if (Environment.GetEnvironmentVariable("PLANKFIT_SHOTS") is { } folder)
        {
            await File.WriteAllBytesAsync(
                Path.Combine(folder, $"first-{hull}-5-printed.pdf"),
                printed,
                ServedJob.Stop
            );
        }

        Assert.Empty(open.Faults);

        Task Shot(string name) => Rules.Look(page, $"first-{hull}-{name}", 1280);
    }
}
