using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PlankFit.Pages.Answers;
using PlankFit.Pages.Sessions;

namespace PlankFit.Pages.Serving;

/// <summary>The blanks of the check sheet, what was read in them and their way into the file of what was measured.</summary>
internal static class TapingRoutes
{
    public static void Map(WebApplication app, OpenJobs jobs)
    {
        app.MapGet(
            "/job/{number:int}/taping/{turn:int}",
            (int number, int turn, string? units) =>
                Laid(jobs, number, turn, units) is { } laid
                    ? Results.Json(TapingAnswer.Of(laid))
                    : Results.NoContent()
        );
        app.MapGet(
            "/job/{number:int}/readings/{turn:int}",
            (int number, int turn, string? units) =>
                Laid(jobs, number, turn, units) is { } laid
                    ? Results.Json(ReadingsAnswer.Of(laid, jobs.Of(number)!.Taping))
                    : Results.NoContent()
        );
        app.MapPost(
            "/job/{number:int}/readings/put",
            (int number) =>
                jobs.Of(number) is not { } job ? Results.NotFound()
                : job.Taping.Put() is var answer && answer.Done ? Results.Json(answer)
                : Results.Json(answer, statusCode: 409)
        );
    }

    private static Laid? Laid(OpenJobs jobs, int number, int turn, string? units) =>
        jobs.Of(number)?.Session.Now.Good is { } laid && laid.Turn == turn ? laid.In(units) : null;
}
