using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using PlankFit.Pages.Serving;
using PlankFit.Pages.Shelf;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>A copy of a demo in a folder of its own, served by the real server on a port that was free, and a client that speaks as the page does.</summary>
internal sealed class ServedJob : IAsyncDisposable
{
    private readonly TempFolder folder = new();
    private readonly WebApplication app;

    /// <param name="job">That lies somewhere already.</param>
    private ServedJob(string job)
    {
        JobPath = job;
        app = PageServer.Build(new JobShelf([job]), 0, null, Said);
    }

    private ServedJob(string? hull, Func<string, string>? changed, IPAddress? network)
    {
        JobPath = folder.File("job.toml");
        if (hull is null)
        {
            OneLayerTender.In(folder, "# nothing asked for");
        }
        else
        {
            foreach (string file in Directory.EnumerateFiles(DemoTables.Demo(hull)))
            {
                File.Copy(file, folder.File(Path.GetFileName(file)));
            }
        }

        // A demo that goes by another's table has a copy of it beside it, since nothing outside its folder is there.
        string text = File.ReadAllText(JobPath);
        if (Regex.Match(text, @"""\.\./([a-z-]+)/offsets\.csv""") is { Success: true } named)
        {
            File.Copy(
                Path.Combine(DemoTables.Demo(named.Groups[1].Value), "offsets.csv"),
                folder.File("offsets.csv")
            );
            File.WriteAllText(
                JobPath,
                text.Replace(named.Value, "\"offsets.csv\"", StringComparison.Ordinal)
            );
        }

        if (changed is not null)
        {
            File.WriteAllText(JobPath, changed(File.ReadAllText(JobPath)));
        }

        app = PageServer.Build(new JobShelf([JobPath]), 0, network, Said);
    }

    /// <summary>Every code that the terminal showed, the newest last.</summary>
    public List<string> Codes { get; } = [];

    /// <summary>So often the terminal showed that the door is shut.</summary>
    public int Shut { get; private set; }

    public string JobPath { get; }

    public string OnDisk => File.ReadAllText(JobPath);

    public Uri Address { get; private set; } = null!;

    public HttpClient Client { get; private set; } = null!;

    /// <summary>Where the shop's network finds it.</summary>
    public Uri OnNetwork => new(PageServer.Address(app, network: true));

    private void Said(string? code)
    {
        if (code is null)
        {
            Shut++;
        }
        else
        {
            Codes.Add(code);
        }
    }

    /// <summary>One skin of a tender: what is seen on it takes little work.</summary>
    public static Task<ServedJob> Small(Func<string, string>? changed = null) => Of(null, changed);

    /// <param name="hull">A demo; null for the small one.</param>
    /// <param name="changed">What is made of its job file.</param>
    /// <param name="network">Served as the shop's network.</param>
    public static async Task<ServedJob> Of(
        string? hull,
        Func<string, string>? changed = null,
        IPAddress? network = null
    )
    {
        var served = new ServedJob(hull, changed, network);
        await served.Begin();
        return served;
    }

    /// <summary>A job that lies somewhere already, where it lies.</summary>
    public static async Task<ServedJob> At(string job)
    {
        var served = new ServedJob(job);
        await served.Begin();
        return served;
    }

    private async Task Begin()
    {
        await app.StartAsync(Stop);
        Address = new(PageServer.Address(app));
        Client = new() { BaseAddress = Address };
    }

    /// <summary>That ends with the run of the tests.</summary>
    public static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async Task<JsonElement> Json(string path) =>
        await Client.GetFromJsonAsync<JsonElement>(path, Stop);

    public Task<string> Text(string path) => Client.GetStringAsync(path, Stop);

    public Task<byte[]> Bytes(string path) => Client.GetByteArrayAsync(path, Stop);

    public Task<HttpResponseMessage> Get(
        string path,
        HttpCompletionOption until = HttpCompletionOption.ResponseContentRead
    ) => Client.GetAsync(path, until, Stop);

    public Task<HttpResponseMessage> Send(HttpRequestMessage request) =>
        Client.SendAsync(request, Stop);

    public static async Task<JsonElement> Read(HttpResponseMessage answer) =>
        await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);

    /// <summary>The turn that is told as the answer to a change.</summary>
    public static async Task<int> Turn(HttpResponseMessage answer) =>
        (await Read(answer)).GetProperty("turn").GetInt32();

    public Task<JsonElement> State() => Json("job/1/state");

    /// <summary>As the page sends it.</summary>
    public async Task<HttpResponseMessage> Post(string path, object body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path)
        {
            Content = JsonContent.Create(body),
        };
        request.Headers.Add("Origin", Address.GetLeftPart(UriPartial.Authority));
        request.Headers.Add("X-PlankFit", "1");
        return await Send(request);
    }

    public async Task<int> Change(string address, string typed, string gesture = "")
    {
        using HttpResponseMessage answer = await Post(
            "job/1/wish",
            new
            {
                address,
                typed,
                gesture,
            }
        );
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await Turn(answer);
    }

    /// <summary>The state once that turn, or a later one, has been laid or refused: by the news, not by a clock.</summary>
    public async Task<JsonElement> Tried(int turn)
    {
        using Stream news = await Client.GetStreamAsync("job/1/news", Stop);
        using var lines = new StreamReader(news);
        while (await lines.ReadLineAsync(Stop) is { } line)
        {
            string[] words = line.Split(' ');
            if (
                words is ["data:", _, _, { } tried, _, _]
                && int.Parse(tried, System.Globalization.CultureInfo.InvariantCulture) >= turn
            )
            {
                return await State();
            }
        }

        throw new InvalidOperationException("the news ended");
    }

    public async ValueTask DisposeAsync()
    {
        Client?.Dispose();
        // As a terminal that is closed does it: what is still asked then is known to come too late.
        await app.StopAsync(CancellationToken.None);
        await app.DisposeAsync();
        folder.Dispose();
    }
}
