using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PlankFit.App.Showing;
using PlankFit.Pages.Sessions;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Text;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>Lengths shown in millimetres or in feet and inches at a touch: words change, planks do not, and the job's text keeps its own.</summary>
public sealed class UnitsShownTests(Browser browser) : IClassFixture<Browser>
{
    /// <summary>Every shape to saw, every fastening's place and length to buy is the same whatever it is told in: what is bought comes in the steps of the job's own unit.</summary>
    [Fact]
    public void NothingButWordsIsOtherInOtherUnits()
    {
        string path = Path.Combine(DemoTables.Demo("survey-launch"), "job.toml");
        var shown = ShownJob.Of(
            path,
            // Lengths that can be got are left out: the steps they come in are then the program's own choice.
            TextFile.Decode(
                Encoding.UTF8.GetBytes(
                    Regex.Replace(File.ReadAllText(path), @"(?m)^lengths *=.*$", "")
                ),
                "job.toml"
            ),
            null,
            new Progress<PlanProgress>(),
            ServedJob.Stop
        );
        BottomPlan own = shown.Plan!,
            other = shown.In(LengthUnit.Foot, ServedJob.Stop).Plan!;
        Assert.Equal(LengthUnit.Foot, other.Job.Units);
        Assert.Equal(LengthUnit.Millimetre, other.Job.WrittenIn);
        foreach (Plank plank in own.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port)))
        {
            Plank twin = other.Find(plank.Id)!;
            Assert.Equal(plank.FlatCut, twin.FlatCut);
            Assert.Equal(plank.Bend.Verdict, twin.Bend.Verdict);
            ImmutableArray<Fastening> points = own.Fastenings!.On(plank.Id)!.Points;
            Assert.Equal(points, other.Fastenings!.On(plank.Id)!.Points);
        }

        Assert.Equal(own.Keel!.Layers.Length, other.Keel!.Layers.Length);
        Assert.Contains(
            shown.In(LengthUnit.Foot, ServedJob.Stop).Findings,
            f => f.Message.Contains('"', StringComparison.Ordinal)
        );
    }

    /// <summary>What cannot be told in the units that were asked for stays in the job's own, and says so first.</summary>
    [Fact]
    public void WhatCannotBeToldInOtherUnitsSaysSo()
    {
        BottomPlan plan = DemoPlans.Of("tender");
        Laid laid = new(new(1, plan), plan, [], [])
        {
            // Nothing is known of what it was read from.
            Shown = new(plan, []),
        };
        Assert.Same(laid, laid.In("mm"));
        Laid told = laid.In("ft");
        Assert.Equal(LengthUnit.Millimetre, told.Plan.Job.Units);
        Assert.Contains(
            "could not be told in ft",
            told.Findings[0].Message,
            StringComparison.Ordinal
        );
    }

    /// <summary>What is typed is read in the units that are shown; the text has it in its own, exactly.</summary>
    [Fact]
    public async Task WhatIsTypedIsReadAsItIsShown()
    {
        await using ServedJob served = await ServedJob.Small();
        foreach (
            (string typed, string units, int by, string stands) in new[]
            {
                ("5 in", "ft", 0, "width = 127"),
                ("4", "ft", 0, "width = 101.6"),
                ("3 15/16\"", "ft", 2, "width = 106.3625"),
                ("90", "mm", 0, "width = 90"),
                ("95 mm", "ft", 0, "width = 95"),
            }
        )
        {
            using HttpResponseMessage answer = await served.Post(
                "job/1/wish",
                new
                {
                    address = "layer[0].width",
                    typed,
                    units,
                    by,
                }
            );
            Assert.Equal(System.Net.HttpStatusCode.OK, answer.StatusCode);
            JsonElement state = await served.State();
            Assert.Contains(
                stands,
                state.GetProperty("text").GetString(),
                StringComparison.Ordinal
            );
        }
    }

    /// <summary>At a touch all of the page is in feet and inches, and back; another browser keeps its own; arrows step by eighths.</summary>
    [Fact]
    public async Task AtATouch()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await using OpenPage open = await browser.Open(served.Address);
        IPage page = open.Page;
        await open.Laid();
        ILocator width = page.Locator("[data-address='layer[0].width']");
        await Expect(width).ToHaveValueAsync("100");
        await page.Locator("#units").ClickAsync();
        await Expect(width).ToHaveValueAsync("3 15/16\"");
        await open.Cells.Nth(3).ClickAsync();
        await Expect(page.Locator("#picked")).ToContainTextAsync("\"");
        await SeenInBrowserTests.Shot(page, "feet");
        await width.FocusAsync();
        // The server words each; however fast they are pressed, as many presses are as many steps.
        foreach (string key in new[] { "ArrowUp", "ArrowUp", "ArrowUp", "ArrowDown", "ArrowUp" })
        {
            await page.Keyboard.PressAsync(key);
        }

        await Expect(width).ToHaveValueAsync("4 5/16\"");
        // Left and entered again before the answer, which makes two movements of the hand: the last is undone.
        await page.Keyboard.PressAsync("ArrowDown");
        await width.BlurAsync();
        await width.FocusAsync();
        await page.Keyboard.PressAsync("ArrowDown");
        await Expect(width).ToHaveValueAsync("4 1/16\"");
        await page.Keyboard.PressAsync("Control+z");
        await Expect(width).ToHaveValueAsync("4 3/16\"");
        // From what is undone, not from where the steps before it began.
        await page.Keyboard.PressAsync("ArrowUp");
        await Expect(width).ToHaveValueAsync("4 5/16\"");
        await page.Locator("#picked a").ClickAsync();
        await Expect(page.Locator(".bench .four")).ToContainTextAsync("\"");
        await page.Locator("#units").ClickAsync();
        await Expect(page.Locator(".bench .four")).ToContainTextAsync("mm");
        Assert.Contains(
            "width = 109.5",
            (await served.State()).GetProperty("text").GetString(),
            StringComparison.Ordinal
        );
        Assert.Empty(open.Faults);
    }
}
