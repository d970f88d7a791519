using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using PlankFit.Draughting.Files;
using PlankFit.Hashing;
using PlankFit.Planking.Findings;

namespace PlankFit.App.Noting;

/// <summary>
/// What was noted of planks, in a file beside the job to which lines are only ever added, a note a line. The last note of a plank and field holds. A note is on the
/// disk before it is answered; of a line that a crash has torn off nothing is left at the next opening, and nothing else is lost. Whoever writes holds the file.
/// </summary>
public sealed class ProgressJournal : IDisposable
{
    public const string FileName = "done-so-far.jsonl";

    private const int MarkLength = 12;

    private readonly Lock gate = new();
    private readonly FileStream file;
    private readonly FileStream held;
    private long whole;
    private readonly Dictionary<(string Client, long N), (string Plank, string Field)> known = [];
    private NotePlaces places = NotePlaces.Empty;

    private ProgressJournal(FileStream file, FileStream held) =>
        (this.file, this.held) = (file, held);

    /// <summary>The place of the newest note; 0 where there is none.</summary>
    public long Newest { get; private set; }

    /// <summary>Lines, from 1, that are no notes of this program: they stay as they are and say nothing.</summary>
    private ImmutableArray<int> Strange { get; set; } = [];

    /// <summary>What a person should be told of them; empty where there are none.</summary>
    public string StrangeTold =>
        JournalLines.Told(Strange) is { } told ? $"{FileName}: {told}." : "";

    /// <summary>What holds now.</summary>
    public ImmutableDictionary<(string Plank, string Field), ProgressTick> Last
    {
        get
        {
            lock (gate)
            {
                return places.Last;
            }
        }
    }

    /// <summary>By which a reading is known again wherever it is written: no two have the same.</summary>
    public static string MarkOf(string client, long n) =>
        Sha256Hash.HexOf(
            Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{client} {n}"))
        )[..MarkLength];

    /// <summary>By mark, all that was ever noted and whether it holds no more: it was taken back, or noted anew.</summary>
    public IReadOnlyDictionary<string, bool> Replaced
    {
        get
        {
            lock (gate)
            {
                return known.ToDictionary(
                    k => MarkOf(k.Key.Client, k.Key.N),
                    k =>
                        places.Last[k.Value] is var holds
                        && ((holds.Client, holds.N) != k.Key || holds.Value.Length == 0)
                );
            }
        }
    }

    /// <exception cref="OutputException">Another program has it open, or it cannot be read or written.</exception>
    public static ProgressJournal Open(string path)
    {
        FileStream? file = null,
            held = null;
        try
        {
            // Held by a file of its own, so that whoever only looks at the journal may look at any time.
            held = new(
                Path.Combine(Path.GetDirectoryName(path) ?? "", $".{Path.GetFileName(path)}.held"),
                FileMode.OpenOrCreate,
                FileAccess.Write,
                FileShare.None,
                bufferSize: 1,
                FileOptions.DeleteOnClose
            );
            file = new(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read);
            var journal = new ProgressJournal(file, held);
            journal.ReadAll();
            return journal;
        }
        catch (Exception e) when (OutputException.IsOne(e))
        {
            file?.Dispose();
            held?.Dispose();
            throw OutputException.From(e, path);
        }
    }

    /// <summary>What holds by the journal, whoever writes in it; empty where there is none. A line that is being written is not there yet.</summary>
    /// <exception cref="OutputException">It cannot be read.</exception>
    public static ImmutableDictionary<(string Plank, string Field), ProgressTick> Peek(
        string path
    ) => Looked(path).Last;

    /// <summary>The same with the lines that are no notes of this program.</summary>
    /// <exception cref="OutputException">It cannot be read.</exception>
    public static (
        ImmutableDictionary<(string Plank, string Field), ProgressTick> Last,
        ImmutableArray<int> Strange
    ) Looked(string path)
    {
        try
        {
            using var file = new FileStream(
                path,
                FileMode.Open,
                FileAccess.Read,
                FileShare.ReadWrite | FileShare.Delete
            );
            ImmutableDictionary<(string, string), ProgressTick> last = ImmutableDictionary<
                (string, string),
                ProgressTick
            >.Empty;
            var read = JournalLines.Of(file);
            foreach (ProgressTick tick in read.Ticks)
            {
                last = last.SetItem((tick.Plank, tick.Field), tick);
            }

            return (last, read.Strange);
        }
        catch (FileNotFoundException)
        {
            return (ImmutableDictionary<(string, string), ProgressTick>.Empty, []);
        }
        catch (Exception e) when (OutputException.IsOne(e))
        {
            throw OutputException.From(e, path);
        }
    }

    /// <summary>Writes down what is not written down yet, all of it or, where one will not do, none.</summary>
    /// <returns>What a person should be told: a fault that kept all from being written, or that a note took the place of another's that its writer had not seen.</returns>
    /// <exception cref="OutputException">The file system refused; nothing of it holds.</exception>
    public (bool Written, ImmutableArray<string> Told) Add(IReadOnlyList<ProgressTick> ticks)
    {
        foreach (ProgressTick tick in ticks)
        {
            string? fault =
                tick.Client.Length is < 1 or > 64 || tick.At.Length > 64
                    ? "comes from nowhere"
                    : ProgressField.Fault(tick);
            if (fault is not null)
            {
                return (
                    false,
                    [
                        $"{(tick.Blank is { } b ? NotePlaces.WhereOf(b) : PlainText.Of(tick.Plank))}: {fault}",
                    ]
                );
            }
        }

        lock (gate)
        {
            List<ProgressTick> taken = [];
            ImmutableArray<string>.Builder told = ImmutableArray.CreateBuilder<string>();
            var inBatch = new HashSet<(string, long)>();
            // What will hold, of which nothing does before it is on the disk.
            NotePlaces soon = places;
            foreach (ProgressTick tick in ticks)
            {
                if (!known.ContainsKey((tick.Client, tick.N)) && inBatch.Add((tick.Client, tick.N)))
                {
                    (ProgressTick next, string? said) = soon.PlaceOf(
                        tick with
                        {
                            Seq = Newest + taken.Count + 1,
                            TypedIn = null,
                        }
                    );
                    if (said is not null)
                    {
                        told.Add(said);
                    }

                    taken.Add(next);
                    soon = soon.With(next);
                }
            }

            Write(taken);
            taken.ForEach(Take);

            return (true, told.ToImmutable());
        }
    }

    public void Dispose()
    {
        file.Dispose();
        held.Dispose();
    }

    private void Write(List<ProgressTick> ticks)
    {
        if (ticks.Count == 0)
        {
            return;
        }

        try
        {
            // What a failure left behind the last whole note goes first.
            file.SetLength(whole);
            file.Position = whole;
            file.Write(
                Encoding.UTF8.GetBytes(
                    string.Concat(
                        ticks.Select(t => JsonSerializer.Serialize(t, JournalLines.Form) + "\n")
                    )
                )
            );
            file.Flush(flushToDisk: true);
            whole = file.Position;
        }
        catch (Exception e) when (OutputException.IsOne(e))
        {
            throw OutputException.From(e, file.Name);
        }
    }

    private void Take(ProgressTick tick)
    {
        known[(tick.Client, tick.N)] = (tick.Plank, tick.Field);
        Newest = Math.Max(Newest, tick.Seq);
        places = places.With(tick);
    }

    private void ReadAll()
    {
        // A line that was torn off is overwritten by the next note.
        var read = JournalLines.Of(file);
        (whole, Strange) = (read.Whole, read.Strange);
        read.Ticks.ForEach(Take);
    }
}
