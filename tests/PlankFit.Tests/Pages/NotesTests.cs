using System.Net;
using System.Text.Json;
using Microsoft.Playwright;
using PlankFit.App.Noting;

namespace PlankFit.Tests.Pages;

/// <summary>What is noted of planks goes to the journal beside the job and to every open page, and waits in the browser where the shop's computer is out of reach.</summary>
public sealed class NotesTests(Browser browser) : IClassFixture<Browser>
{
    /// <summary>A batch that comes twice is written once, whatever it was told; what will not do is refused whole, and nothing is written by looking.</summary>
    [Fact]
    public async Task ABatchThatComesTwiceIsWrittenOnce()
    {
        await using ServedJob served = await ServedJob.Small();
        string journal = Path.Combine(
            Path.GetDirectoryName(served.JobPath)!,
            ProgressJournal.FileName
        );
        Assert.Empty((await served.Json("job/1/notes")).GetProperty("notes").EnumerateArray());
        Assert.False(File.Exists(journal));
        object Note(int n, string plank, string field, string value) =>
            new
            {
                client = "a",
                n,
                plank,
                field,
                value,
                seen = 0,
                at = "14:02",
            };
        object batch = new
        {
            notes = new[]
            {
                Note(1, "S1-05", "state", "fitted"),
                Note(2, "S1-05", "off", "3 mm short at chine"),
            },
        };
        for (int i = 0; i < 2; i++)
        {
            using HttpResponseMessage answer = await served.Post("job/1/notes", batch);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }

        JsonElement now = await served.Json("job/1/notes");
        Assert.Equal(2, now.GetProperty("newest").GetInt32());
        using HttpResponseMessage refused = await served.Post(
            "job/1/notes",
            new { notes = new[] { Note(3, "S1-06", "state", "lost") } }
        );
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        using HttpResponseMessage empty = await served.Post(
            "job/1/notes",
            new { notes = new object[] { new { client = "a" } } }
        );
        Assert.Equal(HttpStatusCode.BadRequest, empty.StatusCode);
        Assert.Equal(2, (await served.Json("job/1/notes")).GetProperty("newest").GetInt32());
    }

    /// <summary>Fitted in one browser and seen in another at once; noted while the network is gone it is not lost, and once it is back it is written once.</summary>
    [Fact]
    public async Task NotedInOneSeenInAnotherAndNotLostWithoutANetwork()
    {
        await using ServedJob served = await ServedJob.Small();
        await served.Tried(1);
        using HttpResponseMessage marked = await served.Post("job/1/sawn", new { plank = "S1-05" });
        Assert.Equal(HttpStatusCode.OK, marked.StatusCode);
        await using OpenPage phone = await browser.Open(
            new Uri(served.Address, "job/1/#bench/S1-05"),
            360,
            740
        );
        await using OpenPage office = await browser.Open(served.Address, 900);
        await office.Laid();
        await office.Page.Locator("#colour-by").SelectOptionAsync("progress");
        ILocator cell = office.Page.Locator("#cell-S1-05");
        await PageInBrowserTests.Expect(cell).ToHaveTextAsync("s");
        ILocator fitted = phone.Page.GetByRole(
            AriaRole.Button,
            new() { Name = "Fitted", Exact = true }
        );
        await fitted.ClickAsync();
        await PageInBrowserTests.Expect(cell).ToHaveTextAsync("f");
        Assert.Empty(phone.Faults.Concat(office.Faults));
        await phone.Page.Context.SetOfflineAsync(true);
        await phone
            .Page.GetByRole(AriaRole.Button, new() { Name = "Glued", Exact = true })
            .ClickAsync();
        await PageInBrowserTests
            .Expect(phone.Page.Locator(".marked"))
            .ToContainTextAsync("1 note waits");
        await phone.Page.Locator("#note-note").FillAsync("mind the knot");
        await phone.Page.Keyboard.PressAsync("Enter");
        await PageInBrowserTests
            .Expect(phone.Page.Locator(".marked"))
            .ToContainTextAsync("2 notes wait");
        await PageInBrowserTests.Expect(cell).ToHaveTextAsync("f");
        await phone.Page.Context.SetOfflineAsync(false);
        await PageInBrowserTests.Expect(cell).ToHaveTextAsync("g");
        JsonElement now = await served.Json("job/1/notes");
        Assert.Equal(3, now.GetProperty("newest").GetInt32());
        Assert.Empty(office.Faults);
    }
}
