using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using PlankFit.Tests.Support;
using static PlankFit.Tests.Pages.PageInBrowserTests;

namespace PlankFit.Tests.Pages;

/// <summary>The blanks of the check sheet typed in beside the hull: on a phone, in two browsers, without a network, in mm and in feet and inches.</summary>
public sealed class ReadingsInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    private static ILocator Field(IPage page, string blank) =>
        page.Locator($"[data-blank='{blank}']");

    private static ILocator Verdict(IPage page, string blank) =>
        page.Locator($".blank-entry:has([data-blank='{blank}']) .verdict");

    /// <summary>
    /// Typed in one it is judged at once and seen in the other; without a network it waits and is sent once; mistyped it stays with what is wrong; put into the file it is seen so.
    /// </summary>
    [Fact]
    public async Task TypedWhereItWasRead()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small(text => text + "\n[trust]\n");
        await served.Tried(1);
        var at = new Uri(served.Address, "job/1/#sheets/check");
        await using OpenPage phone = await browser.Open(at, 360, 740);
        await using OpenPage office = await browser.Open(at, 900);
        JsonElement[] blanks =
        [
            .. (await served.Json("job/1/taping/1"))
                .GetProperty("groups")[0]
                .GetProperty("blanks")
                .EnumerateArray(),
        ];
        (string Name, double Mm)[] of =
        [
            .. blanks.Select(b =>
                (b.GetProperty("name").GetString()!, b.GetProperty("shouldMm").GetDouble())
            ),
        ];
        static string Typed(double mm) => Math.Round(mm, 1).ToString(CultureInfo.InvariantCulture);
        await Field(phone.Page, of[0].Name).FillAsync(Typed(of[0].Mm + 1));
        await phone.Page.Keyboard.PressAsync("Enter");
        await Expect(Verdict(phone.Page, of[0].Name)).ToContainTextAsync("within");
        await Expect(Field(office.Page, of[0].Name)).ToHaveValueAsync(Typed(of[0].Mm + 1));
        await Expect(Verdict(office.Page, of[0].Name)).ToContainTextAsync("within");
        // The hand is at the next blank.
        string second = of[0].Name[..^1] + "2";
        await Expect(Field(phone.Page, second)).ToBeFocusedAsync();
        await phone.Page.Keyboard.TypeAsync(Typed(of[0].Mm + 40));
        await phone.Page.Keyboard.PressAsync("Enter");
        await Expect(Verdict(phone.Page, second)).ToContainTextAsync("beyond the limit");
        // Mistyped: it stays, with what is wrong.
        await Field(phone.Page, of[1].Name).FillAsync("=1+1");
        await phone.Page.Keyboard.PressAsync("Enter");
        await Expect(Verdict(phone.Page, of[1].Name)).ToContainTextAsync("is no length");
        await Expect(Field(phone.Page, of[1].Name)).ToHaveValueAsync("=1+1");
        await SeenInBrowserTests.Shot(phone.Page, "readings-phone");
        Assert.True(
            await phone.Page.EvaluateAsync<bool>(
                "() => document.documentElement.scrollWidth <= window.innerWidth"
            )
        );
        foreach (
            ILocator target in new[]
            {
                Field(phone.Page, of[0].Name),
                phone.Page.Locator(".readings summary").Nth(1),
                phone.Page.Locator(".blank .link").First,
            }
        )
        {
            LocatorBoundingBoxResult? box = await target.BoundingBoxAsync();
            Assert.True(box!.Height >= 44 && box.Width >= 44, $"{box.Width} by {box.Height}");
        }

        await Rules.Hold(phone.Page, "readings, phone");
        await Rules.Hold(office.Page, "readings");
        // The refusal of what was mistyped is the only one.
        Assert.DoesNotContain(
            phone.Faults.Concat(office.Faults),
            f => !f.Contains("409", StringComparison.Ordinal)
        );
        phone.Faults.Clear();
        // Out of reach: it waits, and both readings of one blank hold once it is back.
        await phone.Page.Context.SetOfflineAsync(true);
        await Field(phone.Page, of[1].Name).FillAsync(Typed(of[1].Mm));
        await phone.Page.Keyboard.PressAsync("Enter");
        await Expect(Verdict(phone.Page, of[1].Name)).ToContainTextAsync("not sent yet");
        await Expect(phone.Page.Locator(".readings-told")).ToContainTextAsync("1 waits here");
        await Field(office.Page, of[1].Name).FillAsync("5'-4 3/4\"");
        await office.Page.Keyboard.PressAsync("Enter");
        await Expect(Verdict(office.Page, of[1].Name)).ToContainTextAsync("beyond");
        await phone.Page.Context.SetOfflineAsync(false);
        await Expect(Field(phone.Page, of[1].Name[..^1] + "2")).ToHaveValueAsync(Typed(of[1].Mm));
        await Expect(Field(office.Page, of[1].Name[..^1] + "2")).ToHaveValueAsync(Typed(of[1].Mm));
        // In feet and inches, on the phone alone.
        await phone.Page.Locator("#units").ClickAsync();
        await Expect(Field(phone.Page, of[1].Name)).ToHaveValueAsync("5'-4 3/4\"");
        await Expect(phone.Page.Locator(".blank-should").First).ToContainTextAsync("\"");
        await SeenInBrowserTests.Shot(phone.Page, "readings-feet");
        await Field(phone.Page, of[1].Name).FillAsync("");
        await phone.Page.Keyboard.PressAsync("Enter");
        await Field(phone.Page, second).FillAsync(Typed(of[0].Mm + 2) + " mm");
        await phone.Page.Keyboard.PressAsync("Enter");
        await Expect(Verdict(phone.Page, second)).ToContainTextAsync("within");
        await office.Page.GetByRole(AriaRole.Button, new() { Name = "into the file" }).ClickAsync();
        await Expect(office.Page.Locator(".readings-told"))
            .ToContainTextAsync("The job names it now");
        // What was read is asked for first no more, and stands in its layer's turn.
        await phone.Page.Locator(".readings summary:has-text('starboard')").First.ClickAsync();
        await Expect(Verdict(phone.Page, second).Last)
            .ToContainTextAsync("in the file of what was measured");
        await SeenInBrowserTests.Shot(office.Page, "readings-put");
        Assert.Equal(
            3,
            (
                await File.ReadAllLinesAsync(
                    Path.Combine(Path.GetDirectoryName(served.JobPath)!, "measured.csv"),
                    ServedJob.Stop
                )
            ).Count(l => l.Contains("# page", StringComparison.Ordinal))
        );
        Assert.Empty(office.Faults);
    }

    /// <summary>Two pages of one browser count apart, so that neither's notes are taken for the other's.</summary>
    [Fact]
    public async Task TwoPagesOfOneBrowserCountApart()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        var at = new Uri(served.Address, "job/1/#sheets/check");
        await using OpenPage open = await browser.Open(at, 900);
        IPage other = await open.Page.Context.NewPageAsync();
        await other.GotoAsync(at.ToString());
        JsonElement[] blanks =
        [
            .. (await served.Json("job/1/taping/1"))
                .GetProperty("groups")[0]
                .GetProperty("blanks")
                .EnumerateArray(),
        ];
        string a = blanks[0].GetProperty("name").GetString()!,
            b = blanks[1].GetProperty("name").GetString()!;
        await Field(other, b).WaitForAsync();
        await Field(open.Page, a).FillAsync("100");
        await open.Page.Keyboard.PressAsync("Enter");
        await Field(other, b).FillAsync("200");
        await other.Keyboard.PressAsync("Enter");
        await Expect(Field(open.Page, b)).ToHaveValueAsync("200");
        await Expect(Field(other, a)).ToHaveValueAsync("100");
        await SeenInBrowserTests.Shot(open.Page, "readings");
        Assert.Empty(open.Faults);
    }
}
