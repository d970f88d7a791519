using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text;
using PlankFit.Pages.Serving;

namespace PlankFit.Tests.Pages;

/// <summary>Attacks on the page's server, over a real socket.</summary>
public sealed class GuardTests(GuardTests.OneServer one) : IClassFixture<GuardTests.OneServer>
{
    private readonly ServedJob served = one.Served;

    /// <summary>A name of somebody else's that was made to lead to this computer (rebinding), an address without its port, one with a dot behind it.</summary>
    [Theory]
    [InlineData("evil.example")]
    [InlineData("evil.example:{0}")]
    [InlineData("127.0.0.1")]
    [InlineData("127.0.0.1:1")]
    [InlineData("localhost.:{0}")]
    [InlineData("[::1]:{0}")]
    [InlineData("127.0.0.1.evil.example:{0}")]
    [InlineData("127.1:{0}")]
    public async Task AnotherHostIsNotAnswered(string host)
    {
        string asked = string.Format(
            System.Globalization.CultureInfo.InvariantCulture,
            host,
            served.Address.Port
        );
        string answer = await Raw(
            $"GET /job/1/state HTTP/1.1\r\nHost: {asked}\r\nConnection: close\r\n\r\n"
        );
        Assert.StartsWith("HTTP/1.1 421", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("tender", answer, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task NoHostIsNotAnswered() =>
        Assert.StartsWith(
            "HTTP/1.1 400",
            await Raw("GET /job/1/state HTTP/1.1\r\nConnection: close\r\n\r\n"),
            StringComparison.Ordinal
        );

    /// <summary>A change or a saving that another page sends from this browser.</summary>
    [Theory]
    [InlineData("http://evil.example", "1", "")]
    [InlineData("null", "1", "")]
    [InlineData(null, "1", "")]
    [InlineData("http://127.0.0.1:1", "1", "")]
    [InlineData("own", null, "")]
    [InlineData("own", "1", "cross-site")]
    [InlineData("own", "1", "same-site")]
    [InlineData("own", "1", "none")]
    public async Task AForeignChangeIsRefused(string? origin, string? own, string site)
    {
        foreach (string path in new[] { "wish", "save", "papers", "papers/stop" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, $"job/1/{path}")
            {
                Content = JsonContent.Create(new { undo = true }),
            };
            void Add(string name, string? value)
            {
                if (value is { Length: > 0 })
                {
                    request.Headers.Add(name, value);
                }
            }

            Add(
                "Origin",
                origin == "own" ? served.Address.GetLeftPart(UriPartial.Authority) : origin
            );
            Add("X-PlankFit", own);
            Add("Sec-Fetch-Site", site);
            using HttpResponseMessage answer = await served.Send(request);
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }
    }

    /// <summary>A form of another page can send text as text: it is refused by its origin, and would be by its kind.</summary>
    [Fact]
    public async Task AFormIsRefused()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "job/1/wish")
        {
            Content = new StringContent("{\"undo\":true}", Encoding.UTF8, "text/plain"),
        };
        request.Headers.Add("Origin", served.Address.GetLeftPart(UriPartial.Authority));
        request.Headers.Add("X-PlankFit", "1");
        using HttpResponseMessage answer = await served.Send(request);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
    }

    /// <summary>A picture, script or fetch within another page gets nothing; a link that is followed does.</summary>
    [Theory]
    [InlineData("cross-site", "no-cors", HttpStatusCode.Forbidden)]
    [InlineData("same-site", "cors", HttpStatusCode.Forbidden)]
    [InlineData("cross-site", "navigate", HttpStatusCode.OK)]
    [InlineData("same-origin", "cors", HttpStatusCode.OK)]
    public async Task WhatAnotherPageFetchesIsRefused(string site, string mode, HttpStatusCode code)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "job/1/");
        request.Headers.Add("Sec-Fetch-Site", site);
        request.Headers.Add("Sec-Fetch-Mode", mode);
        using HttpResponseMessage answer = await served.Send(request);
        Assert.Equal(code, answer.StatusCode);
    }

    /// <summary>Every answer, refusals too, tells the browser to run nothing but the page's own files and to let nobody frame it.</summary>
    [Theory]
    [InlineData("job/1/")]
    [InlineData("job/1/state")]
    [InlineData("nowhere")]
    public async Task TheBrowserIsToldToRunNothingElse(string path)
    {
        using HttpResponseMessage answer = await served.Get(path);
        string policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("*", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal("no-referrer", answer.Headers.GetValues("Referrer-Policy").Single());
        Assert.Equal(
            "same-origin",
            answer.Headers.GetValues("Cross-Origin-Opener-Policy").Single()
        );
        Assert.Equal(
            "same-origin",
            answer.Headers.GetValues("Cross-Origin-Resource-Policy").Single()
        );
        Assert.False(answer.Headers.Contains("Access-Control-Allow-Origin"));
        Assert.False(answer.Headers.Contains("Server"));
    }

    /// <summary>The page's own files have no script and no style within them, which the policy would refuse.</summary>
    [Fact]
    public async Task NoRoomHasScriptWithinIt()
    {
        foreach (
            string name in RoomFiles.Names.Where(n => n.EndsWith(".html", StringComparison.Ordinal))
        )
        {
            string html = await served.Text($"rooms/{name}");
            Assert.DoesNotMatch(
                @"<script(?![^>]*\bsrc=)|<style|\sstyle=|\son\w+=|javascript:",
                html
            );
        }

        foreach (
            string name in RoomFiles.Names.Where(n =>
                n.EndsWith(".js", StringComparison.Ordinal)
                && !n.StartsWith("solid/", StringComparison.Ordinal)
            )
        )
        {
            Assert.DoesNotMatch(
                @"innerHTML|outerHTML|insertAdjacentHTML|document\.write|\beval\(|new Function",
                await served.Text($"rooms/{name}")
            );
        }
    }

    /// <summary>Nothing beside the rooms and the list of files is ever reached, however the path is written.</summary>
    [Theory]
    [InlineData("/rooms/../job.toml")]
    [InlineData("/rooms/..%2fjob.toml")]
    [InlineData("/rooms/%2e%2e/%2e%2e/etc/passwd")]
    [InlineData("/rooms/..%5c..%5cjob.toml")]
    [InlineData("/rooms//etc/passwd")]
    [InlineData("/rooms/%2fetc%2fpasswd")]
    [InlineData("/rooms/C:%5cWindows%5cwin.ini")]
    [InlineData("/rooms/frame/frame.html%00.js")]
    [InlineData("/job/1/papers/1/..%2f..%2fjob.toml")]
    [InlineData("/job/1/papers/1/-1")]
    [InlineData("/job/1/papers/1/99999")]
    [InlineData("/job/1/card/1/..%2f..%2fjob.toml")]
    [InlineData("/job/2/state")]
    [InlineData("/job/0/state")]
    [InlineData("/job/-1/state")]
    [InlineData("/job/99999999999/state")]
    [InlineData("/job.toml")]
    [InlineData("/job/1/job.toml")]
    public async Task NoPathLeadsOut(string path)
    {
        string answer = await Raw(
            $"GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{served.Address.Port}\r\nConnection: close\r\n\r\n"
        );
        Assert.Matches("^HTTP/1.1 (40[04]|204)", answer);
        Assert.DoesNotContain("[hull]", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("root:", answer, StringComparison.Ordinal);
    }

    /// <summary>More than a job could be is not even read.</summary>
    [Fact]
    public async Task TooMuchIsNotTaken()
    {
        using HttpResponseMessage answer = await served.Post(
            "job/1/wish",
            new { text = new string('#', PageServer.MostBodyBytes + 1) }
        );
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    /// <summary>Of too many connections at once the last are closed unanswered, and once the others have gone there is room again.</summary>
    [Fact]
    public async Task TooManyAtOnceAreTurnedAway()
    {
        // A server of its own: connections of the other tests may still be counted.
        await using ServedJob alone = await ServedJob.Small();
        List<TcpClient> open = [];
        try
        {
            int turnedAway = 0;
            for (int i = 0; i < PageServer.MostConnections + 5; i++)
            {
                var one = new TcpClient();
                await one.ConnectAsync(IPAddress.Loopback, alone.Address.Port, ServedJob.Stop);
                open.Add(one);
                try
                {
                    await one.GetStream()
                        .WriteAsync(
                            Encoding.ASCII.GetBytes(
                                $"GET /favicon.ico HTTP/1.1\r\nHost: 127.0.0.1:{alone.Address.Port}\r\n\r\n"
                            ),
                            ServedJob.Stop
                        );
                    turnedAway +=
                        await one.GetStream().ReadAsync(new byte[1], ServedJob.Stop) == 0 ? 1 : 0;
                }
                catch (IOException)
                {
                    turnedAway++;
                }
            }

            Assert.InRange(turnedAway, 5, 7);
        }
        finally
        {
            open.ForEach(o => o.Dispose());
        }
    }

    /// <summary>So many pages may listen; the next is told to come later, and gets a place when one has gone.</summary>
    [Fact]
    public async Task TooManyListenersAreTurnedAway()
    {
        // A server of its own: connections of the other tests may still be counted.
        await using ServedJob alone = await ServedJob.Small();
        List<HttpResponseMessage> open = [];
        try
        {
            for (int i = 0; i < 64; i++)
            {
                open.Add(await alone.Get("job/1/news", HttpCompletionOption.ResponseHeadersRead));
                Assert.Equal(HttpStatusCode.OK, open[^1].StatusCode);
            }

            using HttpResponseMessage last = await alone.Get(
                "job/1/news",
                HttpCompletionOption.ResponseHeadersRead
            );
            Assert.Equal(HttpStatusCode.ServiceUnavailable, last.StatusCode);
        }
        finally
        {
            open.ForEach(o => o.Dispose());
        }
    }

    /// <summary>It is served to this computer alone: another of its own addresses is not listened on.</summary>
    [Fact]
    public void OnlyThisComputerIsListenedTo() => Assert.Equal("127.0.0.1", served.Address.Host);

    /// <summary>One for all of them: none of these requests is to change anything.</summary>
    public sealed class OneServer : IAsyncLifetime
    {
        internal ServedJob Served { get; private set; } = null!;

        public async ValueTask InitializeAsync() => Served = await ServedJob.Small();

        public async ValueTask DisposeAsync() => await Served.DisposeAsync();
    }

    private async Task<string> Raw(string request)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, served.Address.Port, ServedJob.Stop);
        await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes(request), ServedJob.Stop);
        using var reader = new StreamReader(client.GetStream(), Encoding.UTF8);
        return await reader.ReadToEndAsync(ServedJob.Stop);
    }
}
