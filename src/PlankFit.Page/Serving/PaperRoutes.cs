using System.IO.Compression;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PlankFit.Pages.Sessions;

namespace PlankFit.Pages.Serving;

/// <summary>Every file of the job, one by one and together. A file is asked for by its place in the list, never by a path.</summary>
internal static class PaperRoutes
{
    public static void Map(WebApplication app, OpenJobs jobs)
    {
        app.MapGet(
            "/job/{number:int}/papers",
            (int number) =>
                jobs.Of(number) is { } job ? Results.Json(job.Papers.Now) : Results.NotFound()
        );
        app.MapPost(
            "/job/{number:int}/papers",
            (int number) =>
                jobs.Of(number) is { } job && job.Papers.Begin()
                    ? Results.Json(job.Papers.Now)
                    : Results.NotFound()
        );
        app.MapPost(
            "/job/{number:int}/papers/stop",
            (int number) =>
            {
                jobs.Of(number)?.Papers.Stop();
                return Results.NoContent();
            }
        );
        app.MapGet(
            "/job/{number:int}/papers/{turn:int}/{place:int}",
            (int number, int turn, int place) =>
                jobs.Of(number)?.Papers.Find(turn, place) is { } file
                    ? Results.File(file.Path, Kind(file.Name), Path.GetFileName(file.Name))
                    : Results.NotFound()
        );
        app.MapGet(
            "/job/{number:int}/papers/{turn:int}/all",
            (int number, int turn) =>
                jobs.Of(number)?.Papers is { } papers && papers.Now.Turn == turn
                    ? Results.File(Zip(papers, turn), "application/zip", "planks.zip")
                    : Results.NotFound()
        );
    }

    /// <summary>Into a file that goes when it has been sent, so that its size is known and a long one takes no memory.</summary>
    private static FileStream Zip(PaperTray papers, int turn)
    {
        var to = new FileStream(
            Path.GetTempFileName(),
            new FileStreamOptions
            {
                Mode = FileMode.Open,
                Access = FileAccess.ReadWrite,
                Options = FileOptions.DeleteOnClose,
            }
        );
        using var zip = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true);
        for (int place = 0; papers.Find(turn, place) is { } file; place++)
        {
            ZipArchiveEntry entry = zip.CreateEntry(
                file.Name.Replace('\\', '/'),
                CompressionLevel.Fastest
            );
            // As the program's own packed files have it: the same files make the same zip.
            entry.LastWriteTime = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);
            using Stream into = entry.Open();
            using FileStream from = File.OpenRead(file.Path);
            from.CopyTo(into);
        }

        zip.Dispose();
        to.Position = 0;
        return to;
    }

    private static string Kind(string name) =>
        Path.GetExtension(name) switch
        {
            ".pdf" => "application/pdf",
            ".svg" => "image/svg+xml",
            ".png" => "image/png",
            ".csv" => "text/csv; charset=utf-8",
            ".txt" => "text/plain; charset=utf-8",
            ".json" => "application/json",
            _ => "application/octet-stream",
        };
}
