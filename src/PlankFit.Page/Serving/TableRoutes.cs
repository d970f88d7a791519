using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PlankFit.Draughting.Svg;
using PlankFit.Export.Lines;
using PlankFit.Pages.Answers;
using PlankFit.Pages.Sessions;

namespace PlankFit.Pages.Serving;

/// <param name="Line">From 1; Column likewise.</param>
/// <param name="Was">What the page shows in the cell.</param>
/// <param name="Names">And before it in its row, line and measure, and in the head above it: an empty cell is like any other; null where nothing is said.</param>
internal sealed record CellWish(
    int Line,
    int Column,
    string? Was,
    string? Typed,
    IReadOnlyList<string>? Names
);

/// <summary>The table of offsets, its lines, and cells that are written anew.</summary>
internal static class TableRoutes
{
    public static void Map(WebApplication app, OpenJobs jobs)
    {
        app.MapGet(
            "/job/{number:int}/table",
            (int number) =>
                jobs.Of(number) is not { } job ? Results.NotFound()
                : TableAnswer.Of(job.Session.Now) is { } table ? Results.Json(table)
                : Results.NoContent()
        );
        app.MapPost(
            "/job/{number:int}/table",
            (int number, CellWish wish) =>
                jobs.Of(number) is not { } job ? Results.NotFound()
                : wish is { Was: { } was, Typed: { } typed }
                && job.Session.Mend(wish.Line, wish.Column, was, typed, wish.Names) is { } turn
                    ? Results.Json(new { Turn = turn })
                : Results.Json(
                    new
                    {
                        Message = "the table has changed since, or this is no value of a cell: look at it once more",
                    },
                    statusCode: 409
                )
        );
        app.MapPost(
            "/job/{number:int}/table/shape",
            (int number, ShapeWish wish) =>
                jobs.Of(number) is not { } job ? Results.NotFound()
                : job.Session.Mend(t => TableMending.Shaped(t, wish), TableMending.Said(wish))
                    is { } turn
                    ? Results.Json(new { Turn = turn })
                : Results.Json(
                    new
                    {
                        Message = "the table has changed since, or there is no room for it there: look at it once more",
                    },
                    statusCode: 409
                )
        );
        app.MapGet(
            "/job/{number:int}/lines/{turn:int}",
            (int number, int turn) =>
                jobs.Of(number)?.Session.Now is not { } seen
                || seen.Tried != turn
                || seen.Read?.Job is not { } job
                    ? Results.NoContent()
                    : Drawn(LinesPlan.Of(job))
        );
    }

    private static IResult Drawn(Draughting.Drawing drawing)
    {
        using var stream = new MemoryStream();
        SvgWriter.Write(stream, drawing);
        return Results.Bytes(stream.ToArray(), "image/svg+xml");
    }
}
