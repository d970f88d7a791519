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
                jobs.Of(number)?.Papers is { } papers
                    ? OneOf(papers, turn, place)
                    : Results.NotFound()
        );
        app.MapGet(
            "/job/{number:int}/papers/{turn:int}/all",
            (int number, int turn, CancellationToken stop) =>
                jobs.Of(number)?.Papers is { } papers
                    ? AllOf(papers, turn, stop)
                    : Results.NotFound()
        );
    }

    private static IResult OneOf(PaperTray papers, int turn, int place)
    {
        if (papers.Open(turn) is not var (folder, reading))
        {
            return Results.NotFound();
        }

        using (reading)
        {
            return place >= 0 && place < folder.Names.Length
                ? Results.File(
                    // Once it is open it may be taken away; what is sent is the whole of it.
                    new FileStream(
                        folder.At(place),
                        FileMode.Open,
                        FileAccess.Read,
                        FileShare.Read | FileShare.Delete
                    ),
                    Kind(folder.Names[place]),
                    Path.GetFileName(folder.Names[place])
                )
                : Results.NotFound();
        }
    }

    private static IResult AllOf(PaperTray papers, int turn, CancellationToken stop)
    {
        if (papers.Open(turn) is not var (folder, reading))
        {
            return Results.NotFound();
        }

        using (reading)
        {
            return Results.File(PaperZip.Of(folder, stop), "application/zip", "planks.zip");
        }
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
