using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PlankFit.Pages.Answers;

namespace PlankFit.Pages.Serving;

/// <summary>Cloth and what else is laid with resin and glue and is no plank.</summary>
internal static class LayingRoutes
{
    public static void Map(WebApplication app, OpenJobs jobs) =>
        app.MapGet(
            "/job/{number:int}/laying/{turn:int}",
            (int number, int turn, string? units) =>
                jobs.Of(number)?.Session.Now.Good is { } laid && laid.Turn == turn
                    ? Results.Json(LayingAnswer.Of(laid.In(units)))
                    : Results.NoContent()
        );
}
