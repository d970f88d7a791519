using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlankFit.Reading.Offsets;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>The table as a person mends it: what was meant is taken at a touch, a cell is typed in, undone by the keys, and saved as a new table.</summary>
public sealed class TableInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    [Fact]
    public async Task ASlipIsTakenAtATouchUndoneAndSaved()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        string path = Path.Combine(Path.GetDirectoryName(served.JobPath)!, "offsets.csv"),
            text = File.ReadAllText(path);
        var cells = TableCells.Of(text);
        (int row, int column) = cells.Find("chine", "height", cells.Words[cells.Head][6])!.Value;
        string was = cells.Words[row][column],
            slip = $"{was[0]}{was[2]}{was[1]}{was[3..]}";
        File.WriteAllText(path, cells.With(row, column, slip));
        await using OpenPage open = await browser.Open(new Uri(served.Address, "job/1/#table"));
        IPage page = open.Page;
        ILocator cell = page.Locator($"#cell-{row + 1}-{column + 1}"),
            field = cell.Locator("input"),
            take = page.GetByRole(AriaRole.Button, new() { Name = $"Take {was}", Exact = true });
        await Expect(cell).ToHaveClassAsync("doubt");
        await Expect(field).ToHaveValueAsync(slip);
        await take.ClickAsync();
        await Expect(field).ToHaveValueAsync(was);
        await Expect(cell).Not.ToHaveClassAsync("doubt");
        ILocator lines = page.Locator(".lines img");
        await Expect(lines).ToHaveJSPropertyAsync("complete", true);
        Assert.True(await lines.EvaluateAsync<int>("i => i.naturalWidth") > 0);
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(field).ToHaveValueAsync(slip);
        await Expect(cell).ToHaveClassAsync("doubt");
        await page.GetByRole(AriaRole.Button, new() { Name = "Redo" }).ClickAsync();
        await Expect(field).ToHaveValueAsync(was);

        // By the keys: typed, and the arrow leads on to the row below; what is no length is told at its cell.
        await field.FocusAsync();
        await field.FillAsync("<b>x");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#trouble"))
            .ToContainTextAsync($"line {row + 1}, column {column + 1}");
        await Expect(cell).ToHaveClassAsync("doubt");
        Assert.Equal(0, await page.Locator("main b").CountAsync());
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(page.Locator("#trouble")).ToBeEmptyAsync();
        await Expect(field).ToHaveValueAsync(was);

        await page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(page.Locator("#word")).ToContainTextAsync("offsets-mended.csv");
        await Expect(page.Locator("h2").First).ToHaveTextAsync("offsets-mended.csv");
        Assert.Contains("offsets-mended.csv", served.OnDisk, StringComparison.Ordinal);

        // A station more, by the keys alone; it is undone like everything else.
        int stations = cells.Words[cells.Head].Length;
        ILocator heads = page.Locator(".offsets thead input");
        await page.Locator(".shaping summary").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#station-name").FillAsync("<i>x");
        await page.Locator("#station-before").SelectOptionAsync($"{stations + 1}");
        await page.Locator("#station-name").PressAsync("Enter");
        await Expect(heads).ToHaveCountAsync(stations + 1);
        await Expect(heads.Last).ToHaveValueAsync("<i>x");
        Assert.Equal(0, await page.Locator("main i").CountAsync());
        await Rules.Hold(page, "table");
        await SeenInBrowserTests.Shot(page, "table-shaped");
        await page.Locator("#station-out").SelectOptionAsync($"{stations + 1}");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it out" }).First.ClickAsync();
        await Expect(heads).ToHaveCountAsync(stations);
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(heads).ToHaveCountAsync(stations + 1);
        Assert.Empty(open.Faults);
    }

    /// <summary>axe-core finds nothing, doubted and mended, and nothing runs out sideways; where PLANKFIT_SHOTS names a folder, pictures are left there.</summary>
    [Fact]
    public async Task NoStateBreaksARule()
    {
        bool isToBeSeen = Environment.GetEnvironmentVariable("PLANKFIT_SHOTS") is not null;
        if (!LongRuns.Asked && !isToBeSeen)
        {
            return;
        }

        Rules.SkipUnlessThere();
        await using ServedJob served = await ServedJob.Of("survey-launch");
        string path = Path.Combine(Path.GetDirectoryName(served.JobPath)!, "offsets.csv");
        var cells = TableCells.Of(File.ReadAllText(path));
        (int row, int column) = cells.Find("chine", "height", cells.Words[cells.Head][7])!.Value;
        string was = cells.Words[row][column];
        File.WriteAllText(path, cells.With(row, column, $"{was[0]}{was[2]}{was[1]}{was[3..]}"));
        foreach (int width in new[] { 360, 900, 1600 })
        {
            await using OpenPage open = await browser.Open(
                new Uri(served.Address, "job/1/#table"),
                width,
                900
            );
            IPage page = open.Page;
            Task Look(string state) => Rules.Look(page, $"table-{state}", width);

            await Expect(page.Locator(".doubt").First).ToBeVisibleAsync();
            await Expect(page.Locator(".lines img")).ToHaveJSPropertyAsync("complete", true);
            await Look("doubted");
            await page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Take") })
                .First.ClickAsync();
            await Expect(page.Locator("h2").First).ToContainTextAsync("mended and not saved");
            await Look("mended");
            await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
            await Expect(page.Locator("h2").First).Not.ToContainTextAsync("mended and not saved");
        }
    }
}
