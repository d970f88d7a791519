using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using PlankFit.Pages.Serving;
using PlankFit.Pages.Shelf;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>A folder in which no job lies yet, served by the real server as it is where no job is named.</summary>
internal sealed class ServedFolder : IAsyncDisposable
{
    private readonly TempFolder folder = new();
    private readonly WebApplication app;

    private ServedFolder() => app = PageServer.Build(JobShelf.Of(null, folder.Path), 0);

    public Uri Address { get; private set; } = null!;

    public HttpClient Client { get; private set; } = null!;

    /// <summary>The folder's own path.</summary>
    public string Place => folder.Path;

    /// <summary>All that lies in it, hidden things too.</summary>
    public string[] There =>
        [
            .. Directory
                .EnumerateFileSystemEntries(
                    folder.Path,
                    "*",
                    new EnumerationOptions { AttributesToSkip = 0, RecurseSubdirectories = true }
                )
                .Select(f => Path.GetRelativePath(folder.Path, f))
                .Order(StringComparer.Ordinal),
        ];

    public static async Task<ServedFolder> Start()
    {
        var served = new ServedFolder();
        await served.app.StartAsync(ServedJob.Stop);
        served.Address = new(PageServer.Address(served.app));
        served.Client = new() { BaseAddress = served.Address };
        return served;
    }

    /// <summary>As the page sends it.</summary>
    public async Task<HttpResponseMessage> Post(string path, object body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path)
        {
            Content = JsonContent.Create(body),
        };
        request.Headers.Add("Origin", Address.GetLeftPart(UriPartial.Authority));
        request.Headers.Add("X-PlankFit", "1");
        return await Client.SendAsync(request, ServedJob.Stop);
    }

    public async Task<JsonElement> Look(object asked)
    {
        using HttpResponseMessage answer = await Post("new/look", asked);
        answer.EnsureSuccessStatusCode();
        return await ServedJob.Read(answer);
    }

    public async ValueTask DisposeAsync()
    {
        Client?.Dispose();
        await app.DisposeAsync();
        folder.Dispose();
    }
}
