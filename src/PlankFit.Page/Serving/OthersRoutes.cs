using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PlankFit.App.Comparing;
using PlankFit.Draughting;
using PlankFit.Draughting.Svg;
using PlankFit.Export.Comparing;
using PlankFit.Pages.Answers;
using PlankFit.Pages.Sessions;

namespace PlankFit.Pages.Serving;

/// <summary>What a page wants tried, as it was typed; it names no file, and no other job.</summary>
internal sealed record OthersWish(string? Angle, string? Width, string? Master, string? Heads)
{
    private const int LongestText = 400;
    private const int MostRounds = 50;

    public IReadOnlyList<string>? Layers { get; init; }

    public int? Boards { get; init; }

    /// <summary>Null where it is more than anybody types.</summary>
    public CompareAsked? Asked =>
        new[] { Angle, Width, Master, Heads }.Concat(Layers ?? []).Any(t => t?.Length > LongestText)
        || Layers?.Count > 100
        || Layers?.Any(l => l is null) == true
        || Boards is < 0 or > MostRounds
            ? null
            : new()
            {
                Angle = Typed(Angle),
                Width = Typed(Width),
                Master = Typed(Master),
                Heads = Typed(Heads),
                Layers = [.. Layers ?? []],
                BoardRounds = Boards,
                Mark = "",
                // Whoever changes the job meanwhile is to see his planks soon.
                AtOnce = Environment.ProcessorCount - 1,
            };

    private static string? Typed(string? text) => string.IsNullOrWhiteSpace(text) ? null : text;
}

/// <param name="Keep">False where it is to be kept no longer.</param>
internal sealed record LayoutWish(int Search, int Number, bool Keep);

/// <summary>Other values of a job tried beside it. A lay-out is asked for by its numbers, and what is drawn of it is the very drawing that the command line writes.</summary>
internal static class OthersRoutes
{
    public static void Map(WebApplication app, OpenJobs jobs)
    {
        app.MapGet(
            "/job/{number:int}/others",
            (int number, string? by, string? along, string? up) =>
                jobs.Of(number) is { } job
                    ? Results.Json(Answer(job.Others.Now, by, along, up))
                    : Results.NotFound()
        );
        app.MapPost(
            "/job/{number:int}/others",
            (int number, OthersWish wish) =>
                jobs.Of(number) is not { } job ? Results.NotFound()
                : wish.Asked is not { } asked ? Results.BadRequest()
                : job.Others.Begin(asked) ? Results.NoContent()
                : Results.Conflict()
        );
        app.MapPost(
            "/job/{number:int}/others/stop",
            (int number) =>
            {
                jobs.Of(number)?.Others.Stop();
                return Results.NoContent();
            }
        );
        app.MapPost(
            "/job/{number:int}/others/keep",
            (int number, LayoutWish wish) =>
                jobs.Of(number) is { } job && job.Others.Keep(wish.Search, wish.Number, wish.Keep)
                    ? Results.NoContent()
                    : Results.NotFound()
        );
        app.MapPost(
            "/job/{number:int}/others/take",
            (int number, LayoutWish wish) =>
                jobs.Of(number)?.Others.Take(wish.Search, wish.Number) is { } turn
                    ? Results.Json(new { Turn = turn })
                    : Results.NotFound()
        );
        app.MapGet(
            "/job/{number:int}/others/{search:int}/chart",
            (int number, int search, string? by, string? along, string? up) =>
                jobs.Of(number)?.Others.Drawn is { Found: { } found } now && now.Search == search
                    ? Drawn(CompareChart.Of(Seen(found, by, along, up)))
                    : Results.NoContent()
        );
        app.MapGet(
            "/job/{number:int}/others/{search:int}/{layout:int}",
            (int number, int search, int layout) =>
                jobs.Of(number)?.Others.Find(search, layout)?.Layout is { Picture: { } picture } of
                    ? Drawn(picture.Alone(of.Name))
                    : Results.NoContent()
        );
    }

    private static OthersAnswer Answer(TriedNow now, string? by, string? along, string? up) =>
        OthersAnswer.Of(now, now.Found is { } found ? Seen(found, by, along, up) : null);

    /// <summary>By the figures that the page names; what is no figure, or none of these lay-outs', is left out.</summary>
    private static Comparison Seen(Comparison found, string? by, string? along, string? up)
    {
        Measure? Named(string? name) =>
            name is not null
            && Measure.Find(name) is { } m
            && found.Laid.All(l => m.Of(l.Figures!) is not null)
                ? m
                : null;
        return found.Seen(
            [.. (by ?? "").Split(',').Select(Named).OfType<Measure>().Distinct()],
            Named(along) is { } x && Named(up) is { } y ? (x, y) : null
        );
    }

    private static IResult Drawn(Drawing drawing)
    {
        var stream = new MemoryStream();
        SvgWriter.Write(stream, drawing);
        return Results.Bytes(stream.ToArray(), "image/svg+xml");
    }
}
