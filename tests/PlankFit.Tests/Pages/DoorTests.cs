using System.Net;
using System.Net.Http.Json;
using PlankFit.Pages.Guarding;

namespace PlankFit.Tests.Pages;

/// <summary>Attacks on the door to the shop's network, for which another address of this computer's own stands here.</summary>
public sealed class DoorTests
{
    private static readonly IPAddress Network = IPAddress.Parse("127.0.0.2");

    /// <summary>Without the code nothing of the job is to be had, seen or changed; this computer itself needs none.</summary>
    [Fact]
    public async Task NothingIsHadWithoutTheCode()
    {
        await using ServedJob served = await ServedJob.Of(null, network: Network);
        using HttpClient phone = Phone(served);
        foreach (
            string path in new[]
            {
                "job/1/",
                "jobs",
                "job/1/state",
                "job/1/news",
                "job/1/planks/1",
                "rooms/frame/frame.js",
                "code/../job/1/state",
                "CODE/x",
            }
        )
        {
            using HttpResponseMessage answer = await phone.GetAsync(
                path,
                HttpCompletionOption.ResponseHeadersRead,
                ServedJob.Stop
            );
            Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        }

        using HttpResponseMessage saved = await Post(phone, "job/1/save", new { });
        Assert.Equal(HttpStatusCode.Unauthorized, saved.StatusCode);
        using HttpResponseMessage asked = await phone.GetAsync("", ServedJob.Stop);
        Assert.Equal(HttpStatusCode.Found, asked.StatusCode);
        using HttpResponseMessage code = await phone.GetAsync("code", ServedJob.Stop);
        Assert.Equal(HttpStatusCode.OK, code.StatusCode);
        Assert.DoesNotContain(
            served.Codes[^1],
            await code.Content.ReadAsStringAsync(ServedJob.Stop),
            StringComparison.Ordinal
        );
        Assert.NotEqual(0, (await served.State()).GetProperty("turn").GetInt32());
    }

    /// <summary>The code lets one browser in, by a cookie that no script and no other site gets, and nobody else afterwards.</summary>
    [Fact]
    public async Task ACodeServesOnce()
    {
        await using ServedJob served = await ServedJob.Of(null, network: Network);
        using HttpClient phone = Phone(served),
            second = Phone(served);
        string code = Assert.Single(served.Codes);
        Assert.Matches(@"^\d{8}\z", code);
        using HttpResponseMessage entered = await Post(phone, "code", new { code });
        Assert.Equal(HttpStatusCode.NoContent, entered.StatusCode);
        string cookie = Assert.Single(entered.Headers.GetValues("Set-Cookie")).ToLowerInvariant();
        Assert.Contains("httponly", cookie, StringComparison.Ordinal);
        Assert.Contains("samesite=strict", cookie, StringComparison.Ordinal);
        Assert.Contains("path=/", cookie, StringComparison.Ordinal);
        Assert.DoesNotContain("expires", cookie, StringComparison.Ordinal);
        Assert.DoesNotContain("max-age", cookie, StringComparison.Ordinal);
        using HttpResponseMessage state = await phone.GetAsync("job/1/state", ServedJob.Stop);
        Assert.Equal(HttpStatusCode.OK, state.StatusCode);
        using HttpResponseMessage again = await Post(second, "code", new { code });
        Assert.Equal(HttpStatusCode.Forbidden, again.StatusCode);
        Assert.NotEqual(code, served.Codes[^1]);
        using var forged = new HttpRequestMessage(HttpMethod.Get, "job/1/state");
        forged.Headers.Add("Cookie", $"{Door.Cookie}={new string('0', 64)}");
        using HttpResponseMessage refused = await second.SendAsync(forged, ServedJob.Stop);
        Assert.Equal(HttpStatusCode.Unauthorized, refused.StatusCode);
    }

    /// <summary>Short, long, empty and wrong ones have the same answer; after five from one address even the right one has it; after thirty there is another code.</summary>
    [Fact]
    public async Task GuessingIsOfNoUse()
    {
        await using ServedJob served = await ServedJob.Of(null, network: Network);
        using HttpClient phone = Phone(served);
        string code = served.Codes[^1],
            wrong = code[..^1] + (code[^1] == '0' ? '1' : '0');
        List<string> answers = [];
        async Task Try(string? said)
        {
            using HttpResponseMessage answer = await Post(phone, "code", new { code = said });
            answers.Add(
                $"{answer.StatusCode} {answer.Content.Headers.ContentLength} {await answer.Content.ReadAsStringAsync(ServedJob.Stop)}"
            );
            Assert.False(answer.Headers.Contains("Set-Cookie"));
        }

        foreach (string? said in new[] { wrong, "", null, code + "0", new string('9', 5000) })
        {
            await Try(said);
        }

        for (int i = Door.MostFromOne; i < Door.MostInAll; i++)
        {
            Assert.Single(served.Codes);
            await Try(code);
        }

        Assert.Single(answers.Distinct());
        Assert.Equal(2, served.Codes.Count);
        using HttpResponseMessage entered = await Post(
            phone,
            "code",
            new { code = served.Codes[^1] }
        );
        Assert.Equal(HttpStatusCode.NoContent, entered.StatusCode);
    }

    /// <summary>By the network's address the host is that address and no other, localhost neither; a change needs its origin there as well.</summary>
    [Fact]
    public async Task HostAndOriginHoldOnTheNetworkToo()
    {
        await using ServedJob served = await ServedJob.Of(null, network: Network);
        using HttpClient phone = Phone(served);
        foreach (
            string host in new[]
            {
                $"localhost:{served.OnNetwork.Port}",
                $"127.0.0.1:{served.OnNetwork.Port}",
                "evil.example",
            }
        )
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, "code");
            request.Headers.Host = host;
            using HttpResponseMessage answer = await phone.SendAsync(request, ServedJob.Stop);
            Assert.Equal((HttpStatusCode)421, answer.StatusCode);
        }

        using var foreign = new HttpRequestMessage(HttpMethod.Post, "code")
        {
            Content = JsonContent.Create(new { code = served.Codes[^1] }),
        };
        foreign.Headers.Add("Origin", "http://evil.example");
        foreign.Headers.Add("X-PlankFit", "1");
        using HttpResponseMessage refused = await phone.SendAsync(foreign, ServedJob.Stop);
        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
    }

    private static HttpClient Phone(ServedJob served) =>
        new(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = served.OnNetwork };

    private static async Task<HttpResponseMessage> Post(HttpClient from, string path, object body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path)
        {
            Content = JsonContent.Create(body),
        };
        request.Headers.Add("Origin", from.BaseAddress!.GetLeftPart(UriPartial.Authority));
        request.Headers.Add("X-PlankFit", "1");
        return await from.SendAsync(request, ServedJob.Stop);
    }

    /// <summary>Before there is a code, in the moment between the first request and the first code, nobody is let in who says nothing.</summary>
    [Fact]
    public void NothingIsNoCode()
    {
        var door = new Door(Network, _ => { });
        var context = new Microsoft.AspNetCore.Http.DefaultHttpContext();
        Assert.False(door.Enter(context, ""));
        Assert.False(door.Enter(context, null));
        Assert.Empty(context.Response.Headers.SetCookie.ToArray());
    }
}
