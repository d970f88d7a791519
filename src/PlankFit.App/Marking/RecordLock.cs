using PlankFit.Draughting.Files;
using PlankFit.Hashing;
using PlankFit.Planking.Laying;

namespace PlankFit.App.Marking;

/// <summary>
/// One `plankfit sawn` at a time on a record: a hidden file beside it, locked by the system for as long as the process lives, so that one that was killed holds up
/// nobody. Where the file system knows no locks, the comparison before writing is what is left.
/// </summary>
internal sealed class RecordLock : IDisposable
{
    private const int EveryMilliseconds = 100;

    /// <summary>A minute.</summary>
    public const int MostWaits = 600;

    private readonly FileStream held;
    private readonly string path;

    private RecordLock(FileStream held, string path) => (this.held, this.path) = (held, path);

    public static string FileOf(string record) =>
        Path.Combine(Path.GetDirectoryName(record) ?? "", $".{Path.GetFileName(record)}.lock");

    /// <summary>Waits until whoever holds it is done, a minute at most.</summary>
    /// <param name="record">The record's own path, links resolved.</param>
    /// <exception cref="OutputException">Another still holds it, or the folder cannot be written to.</exception>
    public static RecordLock Of(
        string record,
        IProgress<PlanProgress> progress,
        CancellationToken stop,
        int mostWaits
    )
    {
        string path = FileOf(record);
        for (int i = 0; ; i++)
        {
            stop.ThrowIfCancellationRequested();
            if (Taken(path, record) is { } taken)
            {
                return taken;
            }

            if (i == mostWaits)
            {
                throw new OutputException(
                    $"Cannot write {record}: another `plankfit sawn` is at work on it. Wait until that has ended and run again.",
                    record
                );
            }

            progress.Report(new("waiting for another `plankfit sawn` on the same record", 0));
            stop.WaitHandle.WaitOne(EveryMilliseconds);
        }
    }

    public void Dispose()
    {
        // Deleted while it is still held: nobody can have locked it in between. Windows deletes it by itself.
        if (!OperatingSystem.IsWindows())
        {
            Deleted(path);
        }

        held.Dispose();
    }

    private static RecordLock? Taken(string path, string record)
    {
        if (new FileInfo(path).LinkTarget is not null)
        {
            throw new OutputException(
                $"Cannot write {record}: {path} is a link, where PlankFit keeps a lock. Take it away.",
                record
            );
        }

        FileStream stream;
        try
        {
            stream = new(
                path,
                FileMode.OpenOrCreate,
                FileAccess.ReadWrite,
                FileShare.None,
                1,
                OperatingSystem.IsWindows() ? FileOptions.DeleteOnClose : FileOptions.None
            );
        }
        catch (Exception e) when (Busy(e))
        {
            // It may be gone by now, its holder being done: tried again all the same.
            return null;
        }
        catch (Exception e) when (OutputException.IsOne(e))
        {
            throw OutputException.From(e, record);
        }

        // Whoever held it may have deleted it between our opening it and our locking it. Then it is nobody's lock: what stands under its name is not what we hold.
        int mark = 1 + BitConverter.ToInt32([.. Unguessable.Bytes(3), 0]);
        stream.SetLength(mark);
        if (new FileInfo(path) is { Exists: true } there && there.Length == mark)
        {
            return new(stream, path);
        }

        stream.Dispose();
        return null;
    }

    /// <summary>Held by another: EWOULDBLOCK (Linux 11, macOS 35), and Windows' sharing violation.</summary>
    private static bool Busy(Exception e) =>
        e is IOException { HResult: 11 or 35 or unchecked((int)0x80070020) };

    private static void Deleted(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception e) when (OutputException.IsOne(e)) { }
    }
}
