using System.Collections.Immutable;
using PlankFit.App.Marking;
using PlankFit.App.Running;
using PlankFit.App.Showing;
using PlankFit.Draughting.Files;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;

namespace PlankFit.Pages.Sessions;

/// <param name="Words">What was done, or why not.</param>
internal sealed record MarkAnswer(bool Done, ImmutableArray<string> Words);

/// <summary>Marks planks as sawn on the one record that there is: that of the command line, by its own code.</summary>
internal sealed class SawnMarks(JobSession session) : IDisposable
{
    /// <summary>What was changed last is laid within a moment: so often it is looked for, ms apart.</summary>
    private const int MostWaits = 400,
        WaitMs = 25;

    private readonly SemaphoreSlim one = new(1, 1);

    /// <param name="forget">It is taken off the record.</param>
    /// <param name="card">Of the card that it was sawn by: the turn of its planks, null where that is not known, and what it showed (<see cref="ShapeMark"/>), which holds however long ago that was.</param>
    public async Task<MarkAnswer> Mark(
        string plank,
        bool forget,
        (int? Turn, ImmutableArray<double>? Shape) card,
        CancellationToken stop
    )
    {
        if (PlankId.Parse(plank) is not { } id)
        {
            return new(false, [$"{PlainText.Of(plank)} is no plank"]);
        }

        await one.WaitAsync(stop);
        try
        {
            Seen seen = session.Now;
            for (int i = 0; i < MostWaits && seen.Tried != seen.Turn; i++)
            {
                await Task.Delay(WaitMs, stop);
                seen = session.Now;
            }

            if (seen.Tried != seen.Turn || !seen.Faults.IsEmpty)
            {
                return new(false, ["The job as it is now is not laid: mend it first."]);
            }

            if (!seen.IsSaved)
            {
                return new(
                    false,
                    [
                        "The job on the disk is not the one that is shown here: save it first, so that the plank is written down as it is shown.",
                    ]
                );
            }

            Plank? shown = seen.Good?.Plan.Find(id.ToString());
            bool hasShape = card.Shape is { IsDefault: false };
            // Turns go by for what has nothing to do with a plank: what its card showed tells more.
            if (!forget && !hasShape && card.Turn is { } drawn && seen.Good?.Turn != drawn)
            {
                return new(
                    false,
                    [
                        "The planks were laid again since this card was drawn: look at it once more, then mark it.",
                    ]
                );
            }

            if (
                !forget
                && card.Shape is { IsDefault: false } shape
                && shown is not null
                && !ShapeMark.IsOf(shown, shape)
            )
            {
                return new(
                    false,
                    [
                        $"{id} is laid otherwise by now than on the card that it was sawn by: undo what was changed since, mark it, and change it again.",
                    ]
                );
            }

            var request = new RunRequest(session.Path, null, false);
            var progress = new Progress<PlanProgress>();
            RunReport report = forget
                ? SawnRun.Forget(request, [id.ToString()], progress, stop)
                : SawnRun.Run(
                    request,
                    [id.ToString()],
                    progress,
                    new Timings(),
                    stop,
                    // By the files as they are by then: another may have written them since they were laid here.
                    isThat: plank => shown is null || ShapeMark.IsOf(plank, ShapeMark.Of(shown))
                );
            session.LayAgain();
            return report.Exit == ExitCode.Done
                ? new(true, report.Lines)
                : new(false, [.. report.Findings.Select(FindingsText.Words)]);
        }
        catch (OutputException e)
        {
            return new(false, [e.Message]);
        }
        finally
        {
            one.Release();
        }
    }

    public void Dispose() => one.Dispose();
}
