using Microsoft.AspNetCore.Http;
using PlankFit.App.Noting;
using PlankFit.Pages.Sessions;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Editing;

namespace PlankFit.Pages.Serving;

/// <summary>A note as a browser sends it.</summary>
/// <param name="Plank">Empty for a reading.</param>
/// <param name="Value">Of a reading what was typed, a bare number being in the units that were shown.</param>
internal sealed record NoteWish(
    string? Client,
    long N,
    string? Plank,
    string? Field,
    string? Value,
    long Seen,
    string? At
)
{
    /// <summary>In which lengths were shown: mm or ft; the job's own where left out.</summary>
    public string? Units { get; init; }

    /// <summary>What the tape should have said.</summary>
    public double? ShouldMm { get; init; }

    /// <summary>The job that it was noted of, by its own id; null where that is not told.</summary>
    public string? Job { get; init; }

    /// <summary>What a number by itself is in is known once the job is laid.</summary>
    private bool WaitsForTheJob =>
        Plank!.Length == 0 && Value!.Trim().Length > 0 && ShownLength.OfItsUnit(Value) is null;

    private bool IsWhole =>
        this
            is {
                Client: not null,
                Plank: not null,
                Field: not null,
                Value: not null,
                At: not null
            };

    /// <summary>Writes them down, all or none.</summary>
    public static IResult Taken(OpenJob job, IReadOnlyList<NoteWish> notes)
    {
        if (!notes.All(n => n.IsWhole))
        {
            return Results.BadRequest();
        }

        NotedAnswer answer =
            notes.Any(n => n.Job is { } of && of != job.Id)
                ? HeldUp(
                    "another hull is served here now: what was noted of yours is kept in this browser, and sent when that hull is served here again"
                )
            : job.Session.Now.Good is null && notes.Any(n => n.WaitsForTheJob)
                ? HeldUp(
                    "the job is not laid yet, so that it is not known what a number without a unit is in: it waits and is sent again; with its unit (1491 mm) it is taken now"
                )
            : job.Notes.Add([.. notes.Select(n => n.In(job.Session))]);
        return Results.Json(
            answer,
            statusCode: answer.Written ? 200
                : answer.IsHeldUp && notes.All(n => n.Job is null || n.Job == job.Id) ? 503
                : 409
        );
    }

    private static NotedAnswer HeldUp(string words) => new(false, [words]) { IsHeldUp = true };

    /// <summary>As the journal has it: what is no length stays as it was typed, for the journal to refuse.</summary>
    public ProgressTick In(JobSession session) =>
        new(Client!, N, Plank!, Field!, ValueIn(session.Now.Good?.Plan.Job), Seen, At!)
        {
            ShouldMm = Plank!.Length == 0 ? ShouldMm : null,
        };

    private string ValueIn(Job? job) =>
        Plank!.Length > 0 || Value!.Trim().Length == 0 ? Value!
        : job is null ? Value
        : ShownLength.WithItsUnit(Value, ShownLength.Unit(job, Units), job.WrittenIn) ?? Value;
}
