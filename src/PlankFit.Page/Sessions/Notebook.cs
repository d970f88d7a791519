using System.Collections.Immutable;
using PlankFit.App.Noting;
using PlankFit.Draughting.Files;

namespace PlankFit.Pages.Sessions;

/// <summary>What stands in the journal of a job.</summary>
/// <param name="Newest">The place of the newest note.</param>
/// <param name="Fault">Why nothing can be noted, or what in the journal is no note; empty where all is well.</param>
internal sealed record NotebookAnswer(
    long Newest,
    ImmutableArray<ProgressTick> Notes,
    string Fault
);

/// <param name="Written">All of it is on the disk.</param>
/// <param name="Told">What a person should be told of it.</param>
internal sealed record NotedAnswer(bool Written, ImmutableArray<string> Told)
{
    /// <summary>Nothing is wrong with the notes: the file could not be written just now, and they are to be sent again.</summary>
    public bool IsHeldUp { get; init; }
}

/// <summary>The journal of what was noted of a job's planks, held open while the job is; a file is made of it with the first note.</summary>
internal sealed class Notebook(JobSession session) : IDisposable
{
    private readonly Lock gate = new();
    private readonly string path = Path.Combine(
        Path.GetDirectoryName(session.Path)!,
        ProgressJournal.FileName
    );
    private ProgressJournal? journal;

    public NotebookAnswer Now
    {
        get
        {
            lock (gate)
            {
                if (journal is null && !File.Exists(path))
                {
                    return new(0, [], "");
                }

                try
                {
                    journal ??= ProgressJournal.Open(path);
                    return new(
                        journal.Newest,
                        [.. journal.Last.Values.OrderBy(t => t.Seq)],
                        journal.StrangeTold
                    );
                }
                catch (OutputException e)
                {
                    return new(0, [], e.Message);
                }
            }
        }
    }

    /// <summary>By mark, all that was ever noted, and whether it holds no more.</summary>
    /// <exception cref="OutputException">Another program has the journal open, or it cannot be read.</exception>
    public IReadOnlyDictionary<string, bool> Replaced
    {
        get
        {
            lock (gate)
            {
                if (journal is null && !File.Exists(path))
                {
                    return ImmutableDictionary<string, bool>.Empty;
                }

                return (journal ??= ProgressJournal.Open(path)).Replaced;
            }
        }
    }

    public NotedAnswer Add(IReadOnlyList<ProgressTick> notes)
    {
        lock (gate)
        {
            try
            {
                journal ??= ProgressJournal.Open(path);
                string[] before = GoneBy(journal, notes);
                (bool written, ImmutableArray<string> told) = journal.Add(notes);
                if (written)
                {
                    session.Listeners.Tell("notes");
                }

                if (
                    written
                    && !before.SequenceEqual(GoneBy(journal, notes))
                    && (
                        session.Now is not { Good: { Plan.Job.IsPlannedBySessions: false } } seen
                        || seen.Tried != seen.Turn
                    )
                )
                {
                    // The rest is planned from what is glued and laid; what is being laid may have looked before.
                    session.LayAgain();
                }

                return new(written, told);
            }
            catch (OutputException e)
            {
                return new(false, [e.Message]) { IsHeldUp = true };
            }
        }
    }

    /// <summary>What gluing is planned by of what these notes are of: planks that are glued by the journal, and what else is laid, with its hour.</summary>
    private static string[] GoneBy(ProgressJournal of, IEnumerable<ProgressTick> notes)
    {
        ImmutableDictionary<(string Plank, string Field), ProgressTick> last = of.Last;
        return
        [
            .. notes
                .Select(n => n.Plank)
                .Distinct()
                .Where(p =>
                    last.TryGetValue((p, ProgressField.State), out ProgressTick? tick)
                    && (tick.Value == "glued" || LaidPart.MomentOf(tick.Value) is not null)
                )
                .Select(p => $"{p} {last[(p, ProgressField.State)].Value}"),
        ];
    }

    public void Dispose()
    {
        lock (gate)
        {
            journal?.Dispose();
        }
    }
}
