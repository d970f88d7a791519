using System.Collections.Immutable;
using System.Text;
using PlankFit.Draughting.Files;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Text;

namespace PlankFit.App.Marking;

/// <summary>The record of sawn planks on the disk, held by this process from reading it to writing it anew.</summary>
internal sealed class SawnRecord : IDisposable
{
    private readonly RecordLock held;
    private readonly byte[]? had;

    private SawnRecord(string path, RecordLock held, byte[]? had) =>
        (Path, this.held, this.had) = (path, held, had);

    /// <summary>The file itself, where the job names a link to it.</summary>
    public string Path { get; }

    public bool Exists => had is not null;

    /// <summary>Takes hold of the record, waiting for any other that has it.</summary>
    /// <exception cref="OutputException">It cannot be had, or cannot be written.</exception>
    public static SawnRecord Hold(
        string path,
        IProgress<PlanProgress> progress,
        CancellationToken stop,
        int mostWaits = RecordLock.MostWaits
    )
    {
        string real = LinkedFile.Real(path);
        var held = RecordLock.Of(real, progress, stop, mostWaits);
        try
        {
            Refuse(path, real);
            return new(real, held, Bytes(real));
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    /// <summary>The record anew, the one before it kept as the one backup.</summary>
    /// <exception cref="OutputException">Another has written it since it was taken hold of, or the file system refused.</exception>
    public void Replace(IEnumerable<SawnPlank> planks, ImmutableArray<BoardSawnInto> boards)
    {
        byte[]? now = Bytes(Path);
        if (now is null != had is null || (now is not null && !now.AsSpan().SequenceEqual(had)))
        {
            throw new OutputException(
                $"Cannot write {Path}: it was changed while the planks were worked out, and not by `plankfit sawn`. Look at it, and run again.",
                Path
            );
        }

        if (had is not null)
        {
            DurableFile.Write(Backup(), had);
        }

        DurableFile.Write(Path, Encoding.UTF8.GetBytes(SawnPlanksFile.Write(planks, boards)));
    }

    public void Dispose() => held.Dispose();

    /// <summary>Where the backup goes; a file of that name that is no record is the user's own.</summary>
    private string Backup()
    {
        string backup = SawnPlanksFile.BackupOf(Path);
        if (
            new FileInfo(backup).LinkTarget is not null
            || Directory.Exists(backup)
            || File.Exists(backup) && !IsRecord(backup)
        )
        {
            throw new OutputException(
                $"Cannot write {Path}: {backup} is where the record as it was is kept, and what is there is no record. Move it away.",
                Path
            );
        }

        return backup;
    }

    private static bool IsRecord(string path)
    {
        using FileStream stream = File.OpenRead(path);
        byte[] head = new byte[200];
        int length = stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        return Encoding
            .UTF8.GetString(head, 0, length)
            .Contains("\"plankfit-cut/", StringComparison.Ordinal);
    }

    private static void Refuse(string path, string real)
    {
        if (Directory.Exists(real))
        {
            throw new OutputException($"Cannot write {path}: it is a folder.", path);
        }

        if (!File.Exists(real))
        {
            if (new FileInfo(path).LinkTarget is { } target)
            {
                throw new OutputException(
                    $"Cannot write {path}: it is a link to {target}, which is not there. Mend the link, or take it away.",
                    path
                );
            }

            return;
        }

        if (
            OperatingSystem.IsWindows()
                ? new FileInfo(real).IsReadOnly
                : (File.GetUnixFileMode(real) & UnixFileMode.UserWrite) == 0
        )
        {
            throw new OutputException(
                $"Cannot write {real}: it is set to be read only. Allow writing, if the record is to be changed.",
                real
            );
        }
    }

    private static byte[]? Bytes(string path)
    {
        try
        {
            return File.Exists(path) ? File.ReadAllBytes(path) : null;
        }
        catch (Exception e) when (OutputException.IsOne(e))
        {
            throw OutputException.From(e, path);
        }
    }
}
