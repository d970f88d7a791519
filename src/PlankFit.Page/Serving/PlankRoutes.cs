using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PlankFit.App.Showing;
using PlankFit.Draughting.Svg;
using PlankFit.Export.Solids;
using PlankFit.Pages.Answers;
using PlankFit.Pages.Sessions;

namespace PlankFit.Pages.Serving;

/// <summary>What the planks of a turn are like. A turn that is not the one shown has nothing to give: pages are told of the newer one.</summary>
internal static class PlankRoutes
{
    private const string Svg = "image/svg+xml";

    /// <summary>The sheet of the turned view, mm; the page shows it as large as it has room.</summary>
    private const double WidthMm = 320;
    private const double HeightMm = 200;

    public static void Map(WebApplication app, OpenJobs jobs)
    {
        app.MapGet(
            "/job/{number:int}/planks/{turn:int}",
            (int number, int turn) =>
                PlanksOf(jobs, number, turn) is { } laid
                    ? Results.Bytes(laid.Fetched(), "application/octet-stream")
                    : Results.NoContent()
        );
        app.MapGet(
            "/job/{number:int}/skins/{turn:int}",
            (int number, int turn) =>
                PlanksOf(jobs, number, turn) is { } laid
                    ? Results.Json(FactsAnswer.Skins(laid))
                    : Results.NoContent()
        );
        app.MapGet(
            "/job/{number:int}/masters/{turn:int}",
            (int number, int turn, string? units) =>
                PlanksOf(jobs, number, turn) is { } laid
                    ? Results.Json(
                        MasterAnswer.Of(
                            laid.Plan,
                            jobs.Of(number)!.Session.Now.History.Present.Text,
                            units
                        )
                    )
                    : Results.NoContent()
        );
        app.MapGet(
            "/job/{number:int}/facts/{turn:int}",
            (int number, int turn, string? units) =>
                Of(jobs, number, turn)?.In(units) is { } laid
                    ? Results.Json(FactsAnswer.Of(laid))
                    : Results.NoContent()
        );
        app.MapGet(
            "/job/{number:int}/picture/{turn:int}",
            (int number, int turn, double turned, double tilted, bool upside, string? layers) =>
                PlanksOf(jobs, number, turn) is { } laid
                    ? Picture(laid, new(turned, tilted, upside), layers)
                    : Results.NoContent()
        );
        app.MapGet(
            "/job/{number:int}/parts/{turn:int}",
            (int number, int turn) =>
                Of(jobs, number, turn) is { } laid
                    ? Results.Bytes(
                        PackedParts.Of(ShownParts.Of(laid.Plan)),
                        "application/octet-stream"
                    )
                    : Results.NoContent()
        );
        app.MapGet(
            "/job/{number:int}/shape/{turn:int}",
            (int number, int turn) =>
                Of(jobs, number, turn) is { } laid ? Shape(laid) : Results.NoContent()
        );
        app.MapGet(
            "/job/{number:int}/card/{turn:int}/{plank}",
            (int number, int turn, string plank, string? units) =>
                Of(jobs, number, turn)?.In(units) is not { } laid ? Results.NoContent()
                : laid.Plan.Find(plank) is { } found ? Drawn(ShownPlank.Card(laid.Plan, found))
                : Results.NotFound()
        );
        app.MapGet(
            "/job/{number:int}/story/{turn:int}/{plank}",
            (int number, int turn, string plank, string? units) =>
                Of(jobs, number, turn)?.In(units) is not { } laid ? Results.NoContent()
                : laid.Plan.Find(plank) is { } found
                    ? Results.Text(ShownPlank.Story(laid.Plan, found), "text/plain")
                : Results.NotFound()
        );
    }

    private static LaidPlanks? PlanksOf(OpenJobs jobs, int number, int turn) =>
        jobs.Of(number)?.Session.Now is not { } seen ? null
        : seen.Planks?.Turn == turn ? seen.Planks
        : seen.Good?.Turn == turn ? seen.Good.Planks
        : null;

    private static Laid? Of(OpenJobs jobs, int number, int turn) =>
        jobs.Of(number)?.Session.Now.Good is { } laid && laid.Turn == turn ? laid : null;

    /// <param name="layers">Codes of the layers to be seen, with commas between; all where left out.</param>
    private static IResult Picture(LaidPlanks laid, Sight sight, string? layers)
    {
        if (!double.IsFinite(sight.TurnDegrees) || !double.IsFinite(sight.TiltDegrees))
        {
            return Results.BadRequest();
        }

        HashSet<string>? codes = layers?.Split(',').ToHashSet();
        return Drawn(
            TurnedView.Of(
                laid.Plan.Job.Name,
                laid.Solids,
                sight,
                (WidthMm, HeightMm),
                id => codes is null || codes.Contains($"{id.Panel}{id.Layer}")
            )
        );
    }

    /// <summary>The same file as `lay` writes where it is asked for.</summary>
    private static IResult Shape(Laid laid)
    {
        using var stream = new MemoryStream();
        ShapeFile.Write(laid.Plan, stream);
        return Results.Bytes(stream.ToArray(), "model/gltf-binary", ShapeFile.Name);
    }

    private static IResult Drawn(Draughting.Drawing drawing)
    {
        using var stream = new MemoryStream();
        SvgWriter.Write(stream, drawing);
        return Results.Bytes(stream.ToArray(), Svg);
    }
}
