using System.Collections.Immutable;
using PlankFit.App.Comparing;
using PlankFit.App.Showing;
using PlankFit.Export.Comparing;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;

namespace PlankFit.Pages.Sessions;

/// <summary>A lay-out that somebody keeps beside others, whatever is tried next.</summary>
/// <param name="Search">In which it was found: with the lay-out's number its name.</param>
internal sealed record KeptLayout(int Search, CompareAsked Asked, Layout Layout);

/// <summary>What was tried of a job, as it stands.</summary>
/// <param name="Search">Counts what was begun; nought before anything was.</param>
/// <param name="Turn">Of the text that was varied.</param>
/// <param name="Found">Null where nothing is laid yet.</param>
internal sealed record TriedNow(int Search, int Turn, bool IsBusy, Comparison? Found)
{
    public CompareAsked Asked { get; init; } = new();

    /// <summary>Faults of what was asked; what is to be known of it.</summary>
    public ImmutableArray<Finding> Told { get; init; } = [];

    public ImmutableArray<KeptLayout> Kept { get; init; } = [];
}

/// <summary>Tries other values of a job beside its newest text, one search at a time; what is found stays until the next is begun, and what is kept longer than that.</summary>
internal sealed class OtherLayouts(JobSession session) : IAsyncDisposable
{
    /// <summary>As many as can be looked at side by side.</summary>
    public const int MostKept = 12;

    private readonly Lock gate = new();
    private TriedNow now = new(0, 0, false, null);
    private CancellationTokenSource? stop;
    private Task work = Task.CompletedTask;
    private bool isTold;

    /// <summary>What stands; asked for by a page that has been told, it is told the next time as well.</summary>
    public TriedNow Now
    {
        get
        {
            lock (gate)
            {
                isTold = false;
                return now;
            }
        }
    }

    /// <summary>The same for what is only drawn: who has not asked for <see cref="Now"/> is told all the same.</summary>
    public TriedNow Drawn
    {
        get
        {
            lock (gate)
            {
                return now;
            }
        }
    }

    /// <summary>Begins; false while another search is on.</summary>
    public bool Begin(CompareAsked asked)
    {
        lock (gate)
        {
            if (now.IsBusy)
            {
                return false;
            }

            stop?.Dispose();
            stop = new();
            (int turn, Reading.Text.TextFile text, JobFiles files) = session.Newest;
            now = new(now.Search + 1, turn, true, null) { Asked = asked, Kept = now.Kept };
            CancellationToken stopped = stop.Token;
            work = Task.Run(() => Try(text, files, asked, stopped), CancellationToken.None);
        }

        Tell();
        return true;
    }

    /// <summary>Ends the search; what is found stays.</summary>
    public void Stop()
    {
        lock (gate)
        {
            stop?.Cancel();
        }
    }

    /// <summary>A lay-out that was laid, of the present search or kept; null where there is none of that name.</summary>
    public KeptLayout? Find(int search, int number)
    {
        lock (gate)
        {
            return now.Kept.FirstOrDefault(k => k.Search == search && k.Layout.Number == number)
                ?? (
                    search == now.Search
                    && now.Found?.Laid.FirstOrDefault(l => l.Number == number) is { } layout
                        ? new(search, now.Asked, layout)
                        : null
                );
        }
    }

    /// <summary>Keeps a lay-out beside others, or keeps it no longer; false where there is none, or no room.</summary>
    public bool Keep(int search, int number, bool keep)
    {
        if (Find(search, number) is not { } layout)
        {
            return false;
        }

        lock (gate)
        {
            ImmutableArray<KeptLayout> others = now.Kept.RemoveAll(k =>
                k.Search == search && k.Layout.Number == number
            );
            if (keep && others.Length >= MostKept)
            {
                return false;
            }

            now = now with { Kept = keep ? others.Add(layout) : others };
        }

        Tell();
        return true;
    }

    /// <summary>Puts the values of a lay-out into the job, as one step; the turn of the new text, null where there is no such lay-out.</summary>
    public int? Take(int search, int number) =>
        Find(search, number) is { } found
            ? session.Rewrite(
                text => Trying.Taken(text, found.Asked, found.Layout),
                found.Layout.Name
            )
            : null;

    public async ValueTask DisposeAsync()
    {
        Stop();
        await work;
        stop?.Dispose();
    }

    private void Try(
        Reading.Text.TextFile text,
        JobFiles files,
        CompareAsked asked,
        CancellationToken stopped
    )
    {
        Tried tried;
        try
        {
            tried = Trying.Of(
                session.Path,
                text,
                asked,
                new Progress<PlanProgress>(),
                stopped,
                Found,
                files
            );
        }
        catch (Exception e)
        {
            // As with the laying of the job itself: the page lives on.
            tried = new(
                null,
                [
                    new(
                        Severity.Error,
                        System.IO.Path.GetFileName(session.Path),
                        $"a fault of the program, not of the job: {e.Message} Please report it with the job's two files"
                    ),
                ]
            );
        }

        lock (gate)
        {
            now = now with
            {
                IsBusy = false,
                Found = tried.Comparison ?? now.Found,
                Told = FindingsText.GravestFirst(tried.Findings),
            };
            isTold = false;
        }

        Tell();
    }

    private void Found(Comparison found)
    {
        lock (gate)
        {
            now = now with { Found = found };
        }

        Tell();
    }

    /// <summary>Once until somebody has looked: a thousand lay-outs must not push other news out of a page's line.</summary>
    private void Tell()
    {
        lock (gate)
        {
            if (isTold)
            {
                return;
            }

            isTold = true;
        }

        session.Listeners.Tell("others");
    }
}
