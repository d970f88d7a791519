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
