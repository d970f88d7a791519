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

    /// <summary>Of the sheet's first group, by the first planks that are laid.</summary>
    private static async Task<JsonElement[]> Blanks(ServedJob served) =>
        [
            .. (await served.Json("job/1/taping/1"))
                .GetProperty("groups")[0]
                .GetProperty("blanks")
                .EnumerateArray(),
        ];

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
        JsonElement[] blanks = await Blanks(served);
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
        // What was read is asked for first no more, and stands in its layer's turn: the phone has the planks that are laid to it.
        await ReadingsTests.Settled(served);
        await Expect(phone.Page.Locator(".readings"))
            .ToContainTextAsync("It was read once: read it again");
        string side = second.Contains("| port |", StringComparison.Ordinal) ? "port" : "starboard";
        await phone.Page.Locator($".readings summary:has-text('{side}, layer 1')").ClickAsync();
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
        // Taken back, it can be taken out.
        await ReadingsTests.Settled(served);
        await Field(phone.Page, second).Last.FillAsync("");
        await phone.Page.Keyboard.PressAsync("Enter");
        await office
            .Page.GetByRole(AriaRole.Button, new() { Name = "Take 1 reading out" })
            .ClickAsync();
        await Expect(office.Page.Locator(".readings-told"))
            .ToContainTextAsync("measured.csv has 2 readings of this page, 3 before");
        await SeenInBrowserTests.Shot(office.Page, "readings-out");
        Assert.Empty(office.Faults);
    }

    /// <summary>While somebody types, planks are laid anew: what he has typed, and where he is in it, stays, and it is noted once he goes on. What was read for other marks may be read the same again.</summary>
    [Fact]
    public async Task WhatIsBeingTypedStays()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        JsonElement state = await served.Tried(1);
        await using OpenPage open = await browser.Open(
            new Uri(served.Address, "job/1/#sheets/check"),
            900
        );
        IPage page = open.Page;
        JsonElement[] blanks = await Blanks(served);
        string first = blanks[0].GetProperty("name").GetString()!;
        await Expect(page.Locator(".readings-told")).ToContainTextAsync("bare numbers are mm");
        await Field(page, first).ClickAsync();
        await page.Keyboard.TypeAsync("14");
        await page.Keyboard.PressAsync("ArrowLeft");
        await LaidAnew(2);
        await Expect(Field(page, first)).ToBeFocusedAsync();
        await Expect(Field(page, first)).ToHaveValueAsync("14");
        Assert.Empty((await served.Json("job/1/notes")).GetProperty("notes").EnumerateArray());
        await page.Keyboard.TypeAsync("9");
        await Expect(Field(page, first)).ToHaveValueAsync("194");
        await page.Keyboard.PressAsync("Enter");
        await Expect(Verdict(page, first)).ToContainTextAsync("beyond");
        JsonElement note = Assert.Single(
            (await served.Json("job/1/notes")).GetProperty("notes").EnumerateArray()
        );
        Assert.Equal("194 mm", note.GetProperty("value").GetString());
        // Put back while it was typed in, and left without another key.
        string second = blanks[1].GetProperty("name").GetString()!;
        await Field(page, second).ClickAsync();
        await page.Keyboard.TypeAsync("15");
        await LaidAnew(3);
        await Field(page, first).ClickAsync();
        await Expect(Verdict(page, second)).ToContainTextAsync("beyond");
        // Of another lay-out: the same number read again counts.
        string third = blanks[2].GetProperty("name").GetString()!;
        double should = blanks[2].GetProperty("shouldMm").GetDouble();
        using HttpResponseMessage other = await ReadingsTests.Type(
            served,
            "z.1",
            1,
            third,
            ReadingsTests.Mm(should),
            should + 5
        );
        await Expect(Verdict(page, third)).ToContainTextAsync("tape it again");
        await Field(page, third).ClickAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(Verdict(page, third)).ToContainTextAsync("within");
        Assert.Empty(open.Faults);

        // Until the page has what was read as it stands by them.
        Task LaidAnew(int turn) =>
            page.RunAndWaitForResponseAsync(
                async () =>
                {
                    string text = $"{state.GetProperty("text").GetString()}\n# again, {turn}\n";
                    using HttpResponseMessage laid = await served.Post("job/1/wish", new { text });
                },
                r => r.Url.Contains($"readings/{turn}", StringComparison.Ordinal)
            );
    }

    /// <summary>What one page keeps, out of reach, after another has begun, is not lost when that one takes its notes over.</summary>
    [Fact]
    public async Task WhatWasKeptSinceIsTakenOver()
    {
        if (!LongRuns.Asked)
        {
            return;
        }

        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        var at = new Uri(served.Address, "job/1/#sheets/check");
        await using OpenPage open = await browser.Open(at, 900);
        string[] names =
        [
            .. (await Blanks(served)).Take(3).Select(b => b.GetProperty("name").GetString()!),
        ];
        static Task Hold(IRoute route) =>
            route.Request.Method == "POST" ? route.AbortAsync() : route.ContinueAsync();
        await open.Page.Context.RouteAsync("**/job/1/notes", Hold);
        async Task Note(IPage page, int i)
        {
            await Field(page, names[i]).FillAsync($"{i + 1}00");
            await page.Keyboard.PressAsync("Enter");
            await Expect(Verdict(page, names[i])).ToContainTextAsync("not sent yet");
        }

        await Note(open.Page, 0);
        IPage other = await open.Page.Context.NewPageAsync();
        await other.GotoAsync(at.ToString());
        await Expect(Verdict(other, names[0])).ToContainTextAsync("not sent yet");
        await Note(open.Page, 1);
        await Note(other, 2);
        await open.Page.CloseAsync();
        await other.Context.UnrouteAsync("**/job/1/notes");
        await Expect(Verdict(other, names[2]))
            .ToContainTextAsync("beyond", new() { Timeout = 15000 });
        await Expect(Verdict(other, names[1])).ToContainTextAsync("beyond");
        Assert.Equal(
            ["100 mm", "200 mm", "300 mm"],
            (await served.Json("job/1/notes"))
                .GetProperty("notes")
                .EnumerateArray()
                .Select(n => n.GetProperty("value").GetString())
                .Order()
        );
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
        JsonElement[] blanks = await Blanks(served);
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
