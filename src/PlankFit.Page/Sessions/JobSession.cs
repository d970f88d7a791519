using System.Collections.Immutable;
using PlankFit.App.Showing;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Offsets;
using PlankFit.Reading.Text;

namespace PlankFit.Pages.Sessions;

/// <summary>
/// A job that is looked at and changed. Its text is the state: a change is another text, which is read and laid as `lay` reads and lays a file. One text is laid at a
/// time and never given up, since whoever drags a value would else see nothing until he stops; the newest waits, and what came between is passed over.
/// </summary>
internal sealed class JobSession : IAsyncDisposable
{
    private readonly Lock gate = new();
    private readonly Lock saving = new();
    private readonly SemaphoreSlim wishes = new(0, 1);
    private readonly CancellationTokenSource stop = new();
    private readonly Task work;
    private readonly FolderWatch watch;
    private History history;
    private byte[] onDisk;
    private int turn = 1;
    private int tried;
    private Laid? good;
    private LaidPlanks? planks;
    private ShownJob? goodJob;
    private BottomPlan? beforeGesture;
    private ImmutableArray<Finding> faults = [];
    private ShownJob? read;
    private TableInHand? tableOnDisk;

    /// <summary>Files outside the job's folder that the job named on the disk, where its builder wrote them: no text from a browser adds to them.</summary>
    private ImmutableHashSet<string> trusted;

    /// <param name="path">The job file.</param>
    public JobSession(string path)
    {
        Path = path;
        var file = TextFile.Read(path, System.IO.Path.GetFileName(path));
        onDisk = file.Bytes;
        trusted = [.. JobReader.Named(file)];
        history = History.Of(file.Text ?? "");
        if (file.Fault is { } fault)
        {
            // Nothing to lay: the fault is all that there is to show.
            (faults, tried) = ([fault], turn);
        }
        else
        {
            wishes.Release();
        }

        work = Task.Run(Work);
        watch = new(System.IO.Path.GetDirectoryName(path)!, Changed);
    }

    public string Path { get; }

    public Listeners Listeners { get; } = new();

    public Seen Now
    {
        get
        {
            lock (gate)
            {
                return new(history, turn, tried, good, faults)
                {
                    Planks = planks,
                    Read = read,
                    OnDisk = tableOnDisk,
                    IsSaved = IsSaved,
                };
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
            string text = history.Present.Text;
            return JobChange.Of(text, address, typed) is { } changed
                ? Take(history.With(changed, ChangeWords.Of(text, address, typed), gesture))
                : null;
        }
    }

    /// <summary>A cell of the table of offsets anew, in the same history as the job's text.</summary>
    /// <param name="line">From 1; <paramref name="column"/> likewise.</param>
    /// <param name="was">What stands there as far as the page knows.</param>
    /// <returns>Null where there is no such cell, it holds something else by now, or what was typed is no cell's value.</returns>
    public int? Mend(
        int line,
        int column,
        string was,
        string typed,
        IReadOnlyList<string>? names = null
    ) =>
        Mend(
            table =>
                TableMending.IsNamed(table, line, column, names)
                    ? TableMending.With(table, line, column, was, typed)
                    : null,
            $"{(was.Length > 0 ? was : "nothing")} to {(typed.Length > 0 ? typed.Trim() : "nothing")}"
        );

    /// <summary>The table of offsets made into another, in the same history.</summary>
    /// <param name="mend">Null where it cannot be made of that table.</param>
    /// <param name="done">What undoing it takes back, without the table's name.</param>
    public int? Mend(Func<TableInHand, TableInHand?> mend, string done)
    {
        lock (gate)
        {
            return
                Now.Table is { } table
                && mend(table) is { } mended
                // The text may name another by now, which is not read yet: the change would be lost.
                && TableMending.Applies(history.Present.Text, mended)
                ? Take(
                    mended == table
                        ? history
                        : history.WithTable(history.Present.Text, mended, $"{done} in {table.File}")
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
            return Take(history.With(text, "the text of the job", ""));
        }
    }

    /// <summary>The newest text made into another, as one step.</summary>
    /// <param name="change">Null where it cannot be made in that text.</param>
    /// <param name="done">What undoing it takes back.</param>
    public int? Rewrite(Func<string, string?> change, string done)
    {
        lock (gate)
        {
            return change(history.Present.Text) is { } text
                ? Take(history.With(text, done, ""))
                : null;
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
                    turn,
                    TextFile.Decode(Bytes(history.Present.Text), System.IO.Path.GetFileName(Path)),
                    new(MayRead, history.Present.Table)
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
            return gesture.Length > 0 && gesture != history.Gesture ? turn : Take(history.Undone());
        }
    }

    public int Redo()
    {
        lock (gate)
        {
            return Take(history.Redone());
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
                (step, was) = (history.Present, onDisk);
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
                    onDisk = Bytes(text);
                    if (step.Table is not null && ReferenceEquals(step, history.Present))
                    {
                        tableOnDisk = TableMending.Saved(text, step.Table) ?? tableOnDisk;
                        Take(history.WithTable(text, null, answer.Message));
                    }
                }
            }

            return answer;
        }
    }

    public async ValueTask DisposeAsync()
    {
        watch.Dispose();
        await stop.CancelAsync();
        await work;
        stop.Dispose();
        wishes.Dispose();
    }

    /// <summary>What is shown is what stands on the disk, the table too.</summary>
    private bool IsSaved =>
        Bytes(history.Present.Text).AsSpan().SequenceEqual(onDisk)
        && !TableMending.Applies(history.Present.Text, history.Present.Table);

    private byte[] Bytes(string text) => JobSaving.Bytes(text, onDisk);

    private int Take(History next)
    {
        if (ReferenceEquals(next, history))
        {
            return turn;
        }

        if (next.Gesture.Length == 0 || next.Gesture != history.Gesture)
        {
            beforeGesture = good?.Plan;
        }

        history = next;
        return Wish();
    }

    private int Wish()
    {
        turn++;
        if (wishes.CurrentCount == 0)
        {
            wishes.Release();
        }

        Listeners.Tell("state");
        return turn;
    }

    /// <summary>Another program changed a file of the folder. Its text of the job is taken over where nothing is unsaved here; else saving will ask.</summary>
    /// <param name="name">Null where it may be any.</param>
    private void Changed(string? name)
    {
        lock (gate)
        {
            if (stop.IsCancellationRequested)
            {
                return;
            }

            string job = System.IO.Path.GetFileName(Path);
            if (name != job)
            {
                // The record, the table, readings, boards: what the job names is read at every laying.
                Wish();
            }

            if (name is not null && name != job)
            {
                return;
            }

            bool saved = IsSaved;
            var file = TextFile.Read(Path, job);
            if (saved && file.Text is { } text && !file.Bytes.AsSpan().SequenceEqual(onDisk))
            {
                onDisk = file.Bytes;
                trusted = [.. JobReader.Named(file)];
                Take(history.With(text, $"{job}, changed by another program", ""));
            }
        }
    }

    private async Task Work()
    {
        try
        {
            while (true)
            {
                await wishes.WaitAsync(stop.Token);
                int of;
                byte[] bytes;
                ShownJob? before;
                BottomPlan? against;
                TableInHand? table;
                lock (gate)
                {
                    (of, bytes, table, before, against) = (
                        turn,
                        Bytes(history.Present.Text),
                        history.Present.Table,
                        goodJob,
                        beforeGesture
                    );
                }

                LaidPlanks? early = null;
                ShownJob shown = TextLaying.Of(
                    Path,
                    bytes,
                    new(MayRead, table),
                    before,
                    stop.Token,
                    plan =>
                    {
                        early = new(of, plan);
                        lock (gate)
                        {
                            planks = early;
                        }

                        Listeners.Tell("planks");
                    }
                );
                Laid? laid = shown.Plan is { } plan
                    ? new(
                        early ?? new(of, plan),
                        plan,
                        shown.Findings,
                        TextLaying.Said(against, plan)
                    )
                    {
                        Shown = shown,
                        Against = against,
                    }
                    : null;
                lock (gate)
                {
                    tried = of;
                    read = shown.Table is null ? read : shown;
                    // One that was in hand is not the disk's.
                    tableOnDisk =
                        shown.Table is { } laidTo && laidTo != table ? laidTo : tableOnDisk;
                    (good, goodJob, faults) = laid is null
                        ? (good, goodJob, shown.Findings)
                        : (laid, shown, []);
                    // Where the rest was refused, its planks are not to be seen either.
                    planks = good?.Planks;
                }

                Listeners.Tell("laid");
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // The server ends.
        }
    }

    /// <summary>Whether a file that a text of the job names may be read: what lies in its folder, and what its builder named on the disk.</summary>
    public bool MayRead(string named) => trusted.Contains(named) || JobFolder.Holds(Path, named);
}
