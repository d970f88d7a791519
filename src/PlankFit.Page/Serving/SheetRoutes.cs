using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PlankFit.App.Showing;
using PlankFit.Draughting.Svg;
using PlankFit.Pages.Answers;
using PlankFit.Pages.Sessions;
using PlankFit.Planking.Whole;

namespace PlankFit.Pages.Serving;

/// <summary>The charts, sheets and tables of the other commands, and the search for a plan of cutting.</summary>
internal static class SheetRoutes
{
    /// <summary>Rooms of plans that are still looked at; they go with their plans.</summary>
    private static readonly ConditionalWeakTable<BottomPlan, Rooms> Made = [];

    public static void Map(WebApplication app, OpenJobs jobs)
    {
        app.MapGet(
            "/job/{number:int}/rooms/{turn:int}/{room}",
            (int number, int turn, string room, string? units) =>
                Find(jobs, number, turn, room, units) is { } found
                    ? Results.Json(RoomAnswer.Of(turn, found))
                    : Results.NoContent()
        );
        app.MapGet(
            "/job/{number:int}/rooms/{turn:int}/{room}/{sheet:int}/{page:int}",
            (int number, int turn, string room, int sheet, int page, string? units) =>
                jobs.Of(number)?.Session.Now.Good is { } laid && laid.Turn != turn
                    // Shown no more: pages are told of the newer one.
                    ? Results.NoContent()
                : Find(jobs, number, turn, room, units) is { } found
                && sheet >= 0
                && sheet < found.Sheets.Length
                && found.Sheets[sheet].Pages.Value is var pages
                && page >= 0
                && page < pages.Count
                    ? Drawn(pages[page])
                : Results.NotFound()
        );
        app.MapGet(
            "/job/{number:int}/boards",
            (int number) =>
                jobs.Of(number) is { } job ? Results.Json(job.Boards.Now) : Results.NotFound()
        );
        app.MapPost(
            "/job/{number:int}/boards",
            (int number) =>
                jobs.Of(number) is { } job && job.Boards.Begin()
                    ? Results.Json(job.Boards.Now)
                    : Results.NotFound()
        );
        app.MapPost(
            "/job/{number:int}/boards/stop",
            (int number) =>
            {
                jobs.Of(number)?.Boards.Stop();
                return Results.NoContent();
            }
        );
    }

    private static ShownRoom? Find(
        OpenJobs jobs,
        int number,
        int turn,
        string room,
        string? units
    ) =>
        jobs.Of(number) is { } job && job.Session.Now.Good is { } laid && laid.Turn == turn
            ? RoomsOf(laid.In(units), job.Boards).FirstOrDefault(r => r.Name == room)
            : null;

    /// <summary>Made once a plan and its boards, so that sheets of many pages are not drawn for every page.</summary>
    private static ImmutableArray<ShownRoom> RoomsOf(Laid laid, BoardSearch boards)
    {
        BottomPlan plan = boards.With(laid);
        Rooms made = Made.GetValue(laid.Plan, _ => new());
        lock (made)
        {
            if (made.Of.IsDefault || !ReferenceEquals(made.Nest, plan.Nest))
            {
                (made.Nest, made.Of) = (plan.Nest, ShownRoom.All(plan));
            }

            return made.Of;
        }
    }

    private static IResult Drawn(Draughting.Drawing drawing)
    {
        using var stream = new MemoryStream();
        SvgWriter.Write(stream, drawing);
        return Results.Bytes(stream.ToArray(), "image/svg+xml");
    }

    private sealed class Rooms
    {
        public object? Nest { get; set; }

        public ImmutableArray<ShownRoom> Of { get; set; }
    }
}
