using System.Collections.Immutable;
using System.Globalization;
using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PlankFit.Pages.Answers;
using PlankFit.Pages.Sessions;
using PlankFit.Reading.Editing;

namespace PlankFit.Pages.Serving;

/// <summary>What a page asks for: one of undo, redo, a field with what was typed in it, or the whole text.</summary>
internal sealed record Wish(string? Address, string? Typed)
{
    /// <summary>The same for all changes of one movement of the hand.</summary>
    public string? Gesture { get; init; }

    /// <summary>A place along the hull for the field, mm aft, in the place of what was typed.</summary>
    public double? X { get; init; }

    /// <summary>In which lengths are shown, and so typed: mm or ft; the job's own where left out.</summary>
    public string? Units { get; init; }

    /// <summary>So many steps more than what was typed.</summary>
    public int By { get; init; }

    public bool Undo { get; init; }

    public bool Redo { get; init; }

    public string? Text { get; init; }
}

/// <param name="Over">The hash of what may be replaced although it is not what was read.</param>
internal sealed record SaveWish(string? Over);

/// <param name="Forget">It is to be taken off the record.</param>
/// <param name="Turn">Of the planks that its card was drawn of.</param>
/// <param name="Shape">What its card showed, where it was marked out of reach and turns have gone by: as the facts have it.</param>
internal sealed record SawnWish(
    string? Plank,
    bool Forget,
    int? Turn,
    ImmutableArray<double>? Shape = null
);

/// <param name="Notes">In the order in which they were noted.</param>
internal sealed record NotesWish(IReadOnlyList<NoteWish>? Notes);

/// <summary>A job's state, its changes, and the news of it.</summary>
internal static class JobRoutes
{
    public static void Map(WebApplication app, OpenJobs jobs, string epoch)
    {
        app.MapGet(
            "/job/{number:int}/state",
            (int number, string? units) =>
                jobs.Of(number) is { } job
                    ? Results.Json(StateAnswer.Of((epoch, job.Id), job.Session.Now, units))
                    : Results.NotFound()
        );
        app.MapPost(
            "/job/{number:int}/wish",
            (int number, Wish wish) =>
                jobs.Of(number) is not { } job ? Results.NotFound()
                : Taken(job.Session, wish) is { } turn ? Results.Json(new { Turn = turn })
                : Results.Json(
                    new { Message = "there is no such value to change, or this is not one value" },
                    statusCode: 422
                )
        );
        app.MapPost(
            "/job/{number:int}/save",
            (int number, SaveWish wish) =>
                jobs.Of(number) is not { } job ? Results.NotFound()
                : job.Session.Save(wish.Over) is { } answer
                    ? Results.Json(answer, statusCode: answer.Saved ? 200 : 409)
                : Results.NotFound()
        );
        app.MapPost(
            "/job/{number:int}/sawn",
            async (int number, SawnWish wish, CancellationToken stop) =>
                jobs.Of(number) is not { } job || wish.Plank is not { } plank ? Results.NotFound()
                : await job.Marks.Mark(plank, wish.Forget, (wish.Turn, wish.Shape), stop)
                    is var answer
                && answer.Done
                    ? Results.Json(answer)
                : Results.Json(answer, statusCode: 409)
        );
        app.MapGet(
            "/job/{number:int}/notes",
            (int number) =>
                jobs.Of(number) is { } job ? Results.Json(job.Notes.Now) : Results.NotFound()
        );
        app.MapPost(
            "/job/{number:int}/notes",
            (int number, NotesWish wish) =>
                jobs.Of(number) is not { } job || wish.Notes is not { } notes
                    ? Results.NotFound()
                    : NoteWish.Taken(job, notes)
        );
        app.MapGet(
            "/job/{number:int}/news",
            IResult (int number, HttpContext context) =>
                jobs.Of(number) is not { } job ? Results.NotFound()
                : Joined(job.Session, context) is not { } listener ? Results.StatusCode(503)
                : TypedResults.ServerSentEvents(
                    News(job.Session, listener, epoch, context.RequestAborted)
                )
        );
    }

    private static int? Taken(JobSession session, Wish wish) =>
        wish switch
        {
            { Undo: true } => session.Undo(wish.Gesture ?? ""),
            { Redo: true } => session.Redo(),
            { Text: { } text } => session.Rewrite(text),
            { Address: { } address, X: { } x } => session.Place(address, x, wish.Gesture ?? ""),
            { Address: { } address, Typed: { } typed, Units: { } units } => session.Change(
                address,
                ShownLength.Typed(
                    session.Now.History.Present.Text,
                    address,
                    typed,
                    (units, wish.By)
                ),
                wish.Gesture ?? ""
            ),
            { Address: { } address, Typed: { } typed } => session.Change(
                address,
                typed,
                wish.Gesture ?? ""
            ),
            _ => null,
        };

    /// <summary>Left when the answer has ended, whether anything was read of it or not.</summary>
    private static Listener? Joined(JobSession session, HttpContext context)
    {
        Listener? listener = session.Listeners.Join();
        if (listener is not null)
        {
            context.Response.OnCompleted(() =>
            {
                session.Listeners.Leave(listener);
                return Task.CompletedTask;
            });
        }

        return listener;
    }

    /// <summary>First what stands, since whoever comes back has missed the steps between and needs none of them.</summary>
    private static async IAsyncEnumerable<SseItem<string>> News(
        JobSession session,
        Listener listener,
        string epoch,
        [EnumeratorCancellation] CancellationToken stop
    )
    {
        yield return Item(session, "state", epoch);
        await foreach (string news in listener.Heard(stop))
        {
            yield return Item(session, news, epoch);
        }
    }

    private static SseItem<string> Item(JobSession session, string news, string epoch)
    {
        Seen seen = session.Now;
        return new(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{epoch} {seen.Turn} {seen.Tried} {seen.Good?.Turn ?? 0} {seen.Planks?.Turn ?? 0}"
            ),
            news
        );
    }
}
