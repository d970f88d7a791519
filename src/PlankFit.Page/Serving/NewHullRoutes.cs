using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PlankFit.Draughting.Files;
using PlankFit.Hashing;
using PlankFit.Pages.Answers;
using PlankFit.Pages.Shelf;

namespace PlankFit.Pages.Serving;

/// <summary>A new hull: looked at as often as anybody likes without anything being written, and kept once it is asked for.</summary>
internal static class NewHullRoutes
{
    public static void Map(WebApplication app, OpenJobs jobs)
    {
        // One at a time: whoever types has the next one wait for the one before.
        var laying = new SemaphoreSlim(1, 1);
        app.Lifetime.ApplicationStopped.Register(laying.Dispose);
        app.MapGet(
            "/new",
            () =>
                jobs.Shelf.NewOnesGoTo is null
                    ? TypedResults.NotFound()
                    : RoomFiles.Of("hull/hull.html")
        );
        app.MapPost(
            "/new/look",
            async (NewHullAsked asked, CancellationToken stop) =>
            {
                if (jobs.Shelf.NewOnesGoTo is null)
                {
                    return Results.NotFound();
                }

                await laying.WaitAsync(stop);
                try
                {
                    return Results.Json(
                        await Task.Run(() => NewHullAnswer.Of(asked, Nowhere(), stop), stop)
                    );
                }
                finally
                {
                    laying.Release();
                }
            }
        );
        app.MapPost("/new", (NewHullAsked asked) => Kept(jobs, asked));
    }

    private static IResult Kept(OpenJobs jobs, NewHullAsked asked)
    {
        if (jobs.Shelf.NewOnesGoTo is not { } parent)
        {
            return Results.NotFound();
        }

        string? refusal =
            string.IsNullOrWhiteSpace(asked.Table) ? "There is no table yet."
            : asked.JobText is null ? "One of the answers is no value."
            : NewFolder.Fault(asked.Folder);
        if (refusal is not null)
        {
            return Results.Json(new { Message = refusal }, statusCode: 422);
        }

        try
        {
            int number = jobs.Add(
                NewFolder.Make(parent, asked.Folder!, asked.JobText!, asked.Table!)
            );
            return Results.Json(
                new { Address = string.Create(CultureInfo.InvariantCulture, $"/job/{number}/") }
            );
        }
        catch (OutputException e)
        {
            return Results.Json(new { e.Message }, statusCode: 409);
        }
    }

    /// <summary>A folder that is not there, and that nobody can make beforehand: nothing lies beside a job that lies nowhere.</summary>
    private static string Nowhere() =>
        Path.Combine(Path.GetTempPath(), Convert.ToHexStringLower(Unguessable.Bytes(16)));
}
