using System.Collections.Immutable;
using PlankFit.App.Showing;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Offsets;
using PlankFit.Reading.Text;

namespace PlankFit.Pages.Sessions;

/// <summary>
/// A job that is looked at and changed. Its text is the state: a change is another text, which is read and laid as `lay` reads and lays a file. One text is laid at a
/// time, its planks first; the newest waits, and what came between is passed over.
/// </summary>
internal sealed class JobSession : IAsyncDisposable
{
    private readonly Lock gate = new();
    private readonly Lock saving = new();
    private readonly Wishes wishes = new();
    private readonly PlanksFirst first;
    private readonly FolderWatch watch;
    private Seen now;
    private byte[] onDisk;

    /// <summary>What another program wrote there since, which is not taken over, since something is unsaved here; null where nothing is.</summary>
    private byte[]? theirs;
    private BottomPlan? beforeGesture;
    private int laying;

    /// <summary>Files outside the job's folder that the job named on the disk, where its builder wrote them: no text from a browser adds to them.</summary>
    private ImmutableHashSet<string> trusted;

    /// <param name="path">The job file.</param>
    public JobSession(string path)
    {
        (Path, first) = (path, new(Listeners));
        // What is changed from here on is told of, once all is there that it is told to.
        using Lock.Scope whole = gate.EnterScope();
        watch = new(System.IO.Path.GetDirectoryName(path)!, Changed);
        var file = TextFile.Read(path, System.IO.Path.GetFileName(path));
        onDisk = file.Bytes;
        trusted = [.. JobReader.Named(file)];
        var history = History.Of(file.Text ?? "");
        if (file.Fault is { } fault)
        {
            // Nothing to lay: the fault is all that there is to show.
            now = new(history, Turn: 1, Tried: 1, null, [fault]);
        }
        else
        {
            now = new(history, Turn: 1, Tried: 0, null, []);
            wishes.Wish();
        }

        wishes.Begin(LayNewest, Failed);
    }

    public string Path { get; }

    public Listeners Listeners { get; } = new();

    public Seen Now
    {
        get
        {
            lock (gate)
            {
                return now with { IsSaved = IsSaved };
            }
        }
    }

    /// <summary>Puts a value into the newest text.</summary>
    /// <param name="gesture">The same for all changes of one movement of the hand; empty for a change by itself.</param>
    /// <returns>The turn of the new text; null where there is no such field, or what was typed is no value.</returns>
    public int? Change(string address, string typed, string gesture)
    {
        lock (gate)
        {
            return JobChange.Of(Text, address, typed) is { } changed
                ? Take(now.History.With(changed, ChangeWords.Of(Text, address, typed), gesture))
                : null;
        }
    }

    /// <summary>The table of offsets made into another, in the same history.</summary>
    /// <param name="mend">Null where it cannot be made of that table.</param>
    /// <param name="done">What undoing it takes back, without the table's name.</param>
    public int? Mend(Func<TableInHand, TableInHand?> mend, string done)
    {
        lock (gate)
        {
            return
                now.Table is { } table
                && mend(table) is { } mended
                // The text may name another by now, which is not read yet: the change would be lost.
                && TableMending.Applies(Text, mended)
                ? Take(
                    mended == table
                        ? now.History
                        : now.History.WithTable(Text, mended, $"{done} in {table.File}")
                )
                : null;
        }
    }

    /// <summary>Puts a place along the hull into the newest text, in the sense and the unit of the job's own file.</summary>
    public int? Place(string address, double xMm, string gesture) =>
        Now.Planks is { } laid && PositionText.Of(laid.Plan.Job, xMm) is { } typed
            ? Change(address, typed, gesture)
            : null;

    /// <summary>The whole text anew.</summary>
    public int Rewrite(string text)
    {
        lock (gate)
        {
            return Take(now.History.With(text, "the text of the job", ""));
        }
    }

    /// <summary>The newest text made into another, as one step.</summary>
    /// <param name="change">Null where it cannot be made in that text.</param>
    /// <param name="done">What undoing it takes back.</param>
    public int? Rewrite(Func<string, string?> change, string done)
    {
        lock (gate)
        {
            return change(Text) is { } text ? Take(now.History.With(text, done, "")) : null;
        }
    }

    /// <summary>The newest text as a file would have it, its turn, and what is to be known of the files that it names, of the same moment: a table that is being mended among them.</summary>
    public (int Turn, TextFile Text, JobFiles Files) Newest
    {
        get
        {
            lock (gate)
            {
                return (
                    now.Turn,
                    TextFile.Decode(Bytes(Text), System.IO.Path.GetFileName(Path)),
                    new(MayRead, now.History.Present.Table)
                );
            }
        }
    }

    /// <summary>The same text once more, since what it names has changed.</summary>
    public void LayAgain()
    {
        lock (gate)
        {
            Wish();
        }
    }

    /// <param name="gesture">Only where the newest step is of that movement of the hand; empty for whatever it is.</param>
    public int Undo(string gesture = "")
    {
        lock (gate)
        {
            return gesture.Length > 0 && gesture != now.History.Gesture
                ? now.Turn
                : Take(now.History.Undone());
        }
    }

    public int Redo()
    {
        lock (gate)
        {
            return Take(now.History.Redone());
        }
    }

    /// <summary>Writes the newest text over the job file, whole or not at all; before it a table that was mended, under a name of its own.</summary>
    /// <param name="over">What stands there, as its hash, where it is to be replaced although it is not what was read.</param>
    public SaveAnswer Save(string? over)
    {
        // Two that save wait for one another; who looks or changes meanwhile does not wait for the disk.
        lock (saving)
        {
            byte[] was;
            Step step;
            lock (gate)
            {
                (step, was) = (now.History.Present, onDisk);
            }

            if (JobSaving.Refused(Path, Bytes(step.Text), MayRead) is { } refused)
            {
                return refused;
            }

            (SaveAnswer answer, string text) = JobSaving.Save(Path, step, Bytes, was, over);
            if (answer.Saved)
            {
                lock (gate)
                {
                    (onDisk, theirs) = (Bytes(text), null);
                    Listeners.Tell("state");
                    if (step.Table is not null && ReferenceEquals(step, now.History.Present))
                    {
                        now = now with
                        {
                            OnDisk = TableMending.Saved(text, step.Table) ?? now.OnDisk,
                        };
                        Take(now.History.WithTable(text, null, answer.Message));
                    }
                }
            }

            return answer;
        }
    }

    public ValueTask DisposeAsync()
    {
        watch.Dispose();
        return wishes.DisposeAsync();
    }

    /// <summary>What is shown is what stands on the disk, the table too.</summary>
    private bool IsSaved =>
        Bytes(Text).AsSpan().SequenceEqual(theirs ?? onDisk)
        && !TableMending.Applies(Text, now.History.Present.Table);

    /// <summary>The newest.</summary>
    private string Text => now.History.Present.Text;

    private byte[] Bytes(string text) => JobSaving.Bytes(text, onDisk);

    private int Take(History next)
    {
        if (ReferenceEquals(next, now.History))
        {
            return now.Turn;
        }

        if (next.Gesture.Length == 0 || next.Gesture != now.History.Gesture)
        {
            beforeGesture = now.Good?.Plan;
        }

        now = now with { History = next };
        return Wish();
    }

    private int Wish()
    {
        now = now with { Turn = now.Turn + 1 };
        wishes.Wish();
        Listeners.Tell("state");
        return now.Turn;
    }

    /// <summary>Another program changed a file of the folder. Its text of the job is taken over where nothing is unsaved here; else saving will ask.</summary>
    /// <param name="name">Null where it may be any.</param>
    private void Changed(string? name)
    {
        // What is being saved here is no other program's.
        lock (saving)
            lock (gate)
            {
                if (wishes.AreOver)
                {
                    return;
                }

                string job = System.IO.Path.GetFileName(Path);
                if (name != job)
                {
                    // The record, the table, readings, boards: what the job names is read at every laying.
                    Wish();
                    if (name is not null)
                    {
                        return;
                    }
                }

                var file = TextFile.Read(Path, job);
                bool isAsRead = file.Bytes.AsSpan().SequenceEqual(onDisk),
                    isUntouched =
                        Bytes(Text).AsSpan().SequenceEqual(onDisk)
                        && !TableMending.Applies(Text, now.History.Present.Table);
                if (isAsRead || !isUntouched || file.Text is not { } text)
                {
                    theirs = isAsRead ? null : file.Bytes;
                    Listeners.Tell("state");
                }
                else
                {
                    (onDisk, theirs) = (file.Bytes, null);
                    trusted = [.. JobReader.Named(file)];
                    Take(now.History.With(text, $"{job}, changed by another program", ""));
                }
            }
    }

    private void LayNewest(CancellationToken end, CancellationToken newer)
    {
        Seen of;
        byte[] bytes;
        BottomPlan? against;
        lock (gate)
        {
            (of, bytes, against) = (now, Bytes(Text), beforeGesture);
            laying = of.Turn;
        }

        TableInHand? table = of.History.Present.Table;
        ShownJob Lay(CancellationToken stop, Action<BottomPlan> planks) =>
            TextLaying.Of(Path, bytes, new(MayRead, table), of.Good?.Shown, stop, planks);
        void Show(LaidPlanks planks)
        {
            lock (gate)
            {
                now = now with { Planks = planks };
            }
        }

        if (first.Of(of.Turn, Lay, Show, end, newer) is not ({ } shown, var early))
        {
            return;
        }

        Laid? laid = shown.Plan is null ? null : Laid.Of(early, of.Turn, shown, against);
        lock (gate)
        {
            now = now.After(of.Turn, shown, laid, table);
        }

        Listeners.Tell("laid");
    }

    /// <summary>What was being laid is over, whatever befell it: told as the program's fault, and the next is laid as any other.</summary>
    private void Failed(Exception e)
    {
        lock (gate)
        {
            now = now.After(laying, TextLaying.Fault(Path, e), null, null);
        }

        Listeners.Tell("laid");
    }

    /// <summary>Whether a file that a text of the job names may be read: what lies in its folder, and what its builder named on the disk.</summary>
    public bool MayRead(string named) => trusted.Contains(named) || JobFolder.Holds(Path, named);
}
