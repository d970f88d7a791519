using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using PlankFit.Draughting.Files;
using PlankFit.Planking.Findings;

namespace PlankFit.App.Noting;

/// <summary>
/// What was noted of planks, in a file beside the job to which lines are only ever added, a note a line. The last note of a plank and field holds. A note is on the
/// disk before it is answered; of a line that a crash has torn off nothing is left at the next opening, and nothing else is lost. Whoever writes holds the file.
/// </summary>
public sealed class ProgressJournal : IDisposable
{
    public const string FileName = "done-so-far.jsonl";

    private static readonly JsonSerializerOptions Form = new(JsonSerializerDefaults.Web);

    private readonly Lock gate = new();
    private readonly FileStream file;
    private readonly FileStream held;
    private long whole;
    private readonly HashSet<(string Client, long N)> known = [];
    private ImmutableDictionary<(string Plank, string Field), ProgressTick> last =
        ImmutableDictionary<(string, string), ProgressTick>.Empty;

    private ProgressJournal(FileStream file, FileStream held) =>
        (this.file, this.held) = (file, held);

    /// <summary>The place of the newest note; 0 where there is none.</summary>
    public long Newest { get; private set; }

    /// <summary>What holds now.</summary>
    public ImmutableDictionary<(string Plank, string Field), ProgressTick> Last
    {
        get
        {
            lock (gate)
            {
                return last;
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
    public static ImmutableDictionary<(string Plank, string Field), ProgressTick> Peek(string path)
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
            foreach (ProgressTick tick in Ticks(file).Ticks)
            {
                last = last.SetItem((tick.Plank, tick.Field), tick);
            }

            return last;
        }
        catch (FileNotFoundException)
        {
            return ImmutableDictionary<(string, string), ProgressTick>.Empty;
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
                PlankId.Parse(tick.Plank) is null ? "is no plank"
                : tick.Client.Length is < 1 or > 64 || tick.At.Length > 64 ? "comes from nowhere"
                : ProgressField.Fault(tick.Field, tick.Value);
            if (fault is not null)
            {
                return (false, [$"{PlainText.Of(tick.Plank)}: {fault}"]);
            }
        }

        lock (gate)
        {
            List<ProgressTick> taken = [];
            var inBatch = new HashSet<(string, long)>();
            foreach (ProgressTick tick in ticks)
            {
                if (!known.Contains((tick.Client, tick.N)) && inBatch.Add((tick.Client, tick.N)))
                {
                    taken.Add(tick with { Seq = Newest + taken.Count + 1 });
                }
            }

            Write(taken);
            ImmutableArray<string>.Builder told = ImmutableArray.CreateBuilder<string>();
            foreach (ProgressTick tick in taken)
            {
                if (
                    last.TryGetValue((tick.Plank, tick.Field), out ProgressTick? was)
                    && was.Seq > tick.Seen
                    && was.Client != tick.Client
                    && was.Value != tick.Value
                )
                {
                    told.Add(
                        $"{tick.Plank}: its {tick.Field} was \"{PlainText.Of(was.Value)}\", noted by another at {PlainText.Of(was.At)}"
                    );
                }

                Take(tick);
            }

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
                    string.Concat(ticks.Select(t => JsonSerializer.Serialize(t, Form) + "\n"))
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
        known.Add((tick.Client, tick.N));
        Newest = Math.Max(Newest, tick.Seq);
        last = last.SetItem((tick.Plank, tick.Field), tick);
    }

    private void ReadAll()
    {
        // A line that was torn off is overwritten by the next note.
        (List<ProgressTick> ticks, whole) = Ticks(file);
        ticks.ForEach(Take);
    }

    /// <summary>The notes of all whole lines, and where these end.</summary>
    private static (List<ProgressTick> Ticks, long Whole) Ticks(FileStream file)
    {
        byte[] bytes = new byte[file.Length];
        file.ReadExactly(bytes);
        List<ProgressTick> ticks = [];
        int from = 0;
        while (Array.IndexOf(bytes, (byte)'\n', from) is var to && to >= 0)
        {
            // A line that is none is another hand's: it is passed over and stays.
            if (Read(bytes.AsSpan(from, to - from)) is { } tick)
            {
                ticks.Add(tick);
            }

            from = to + 1;
        }

        return (ticks, from);
    }

    private static ProgressTick? Read(ReadOnlySpan<byte> line)
    {
        try
        {
            return
                JsonSerializer.Deserialize<ProgressTick>(line, Form)
                    is {
                        Plank: { } plank,
                        Field: { } field,
                        Value: { } value,
                        Client: not null,
                        At: not null
                    } tick
                && PlankId.Parse(plank) is not null
                && ProgressField.Fault(field, value) is null
                ? tick
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
