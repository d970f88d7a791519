using System.Collections.Concurrent;

namespace PlankFit.Export.Files;

/// <summary>
/// The files of one run. They are written into a hidden folder inside the target and moved to their places all together by <see cref="Commit"/>; a run that
/// fails, is stopped, or is not committed leaves the earlier files whole. Files may be written from several threads. Nothing is forced through to the
/// platter: after a loss of power the run is to be repeated.
/// </summary>
public sealed class OutputFolder : IDisposable
{
    private const string StageName = ".plankfit-writing";

    private readonly string _command;
    private readonly string _stage;
    private readonly bool _wasThere;
    private readonly CancellationToken _cancel;
    private readonly FileStream _lock;
    private readonly ConcurrentDictionary<string, bool> _names = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, bool> _made = new(StringComparer.Ordinal);

    private OutputFolder(
        string folder,
        string command,
        bool wasThere,
        FileStream held,
        CancellationToken cancel
    )
    {
        (Folder, _command, _wasThere, _lock, _cancel) = (folder, command, wasThere, held, cancel);
        _stage = Path.Combine(folder, StageName);
    }

    public string Folder { get; }

    /// <param name="folder">Made where it is not there yet.</param>
    /// <param name="command">Which command this is: it owns the files it writes, see <see cref="FileIndex"/>.</param>
    /// <exception cref="OutputException">The folder cannot be written, or another run is writing there.</exception>
    public static OutputFolder Begin(
        string folder,
        string command,
        CancellationToken cancel = default
    )
    {
        cancel.ThrowIfCancellationRequested();
        var wasThere = Directory.Exists(folder);
        try
        {
            if (File.Exists(folder))
            {
                throw new OutputException(
                    $"Cannot write into {folder}: it is a file, not a folder. Rename it, or choose another folder.",
                    folder
                );
            }

            Directory.CreateDirectory(folder);
            var stage = Path.Combine(folder, StageName);
            Directory.CreateDirectory(stage);
            var held = Hold(folder, stage);
            try
            {
                RemoveLeftovers(stage);
            }
            catch
            {
                held.Dispose();
                throw;
            }

            return new(folder, command, wasThere, held, cancel);
        }
        catch (Exception failure) when (OutputException.IsOne(failure))
        {
            throw OutputException.FromFolder(failure, folder);
        }
    }

    /// <param name="name">The file's path from the folder, with forward slashes.</param>
    /// <exception cref="OutputException">The file system refused; the run is then to be given up.</exception>
    public void Write(string name, Action<Stream> write)
    {
        _cancel.ThrowIfCancellationRequested();
        if (
            !FileIndex.IsSafe(name)
            || name == FileIndex.FileName
            || name.StartsWith(StageName, StringComparison.Ordinal)
        )
        {
            throw new ArgumentException(
                $"\"{name}\" is no name for a file of a run.",
                nameof(name)
            );
        }

        if (!_names.TryAdd(name, true))
        {
            throw new ArgumentException($"\"{name}\" is written twice in one run.", nameof(name));
        }

        Stage(name, write);
    }

    public void Write(string name, ReadOnlyMemory<byte> content) =>
        Write(name, stream => stream.Write(content.Span));

    /// <summary>Moves everything into place and removes what this command wrote earlier and no longer does. Not stopped half way once begun.</summary>
    /// <returns>The names written, in order.</returns>
    /// <exception cref="OutputException">A move was refused; everything has been put back as it was.</exception>
    public IReadOnlyList<string> Commit()
    {
        _cancel.ThrowIfCancellationRequested();
        var names = _names.Keys.ToHashSet(StringComparer.Ordinal);
        string[] inOrder = [.. names.Order(StringComparer.Ordinal)];
        var before = FileIndex.Read(Folder);
        Stage(FileIndex.FileName, before.With(_command, names).Write);
        using var swap = new FileSwap(
            Folder,
            Path.Combine(_stage, "new"),
            Path.Combine(_stage, "old")
        );
        foreach (var name in inOrder)
        {
            swap.Place(name);
        }

        foreach (var stale in before.Of(_command).Where(name => !names.Contains(name)))
        {
            swap.Remove(stale);
        }

        swap.Place(FileIndex.FileName);
        swap.Done();
        return inOrder;
    }

    public void Dispose()
    {
        AtomicFile.Quietly(() => RemoveLeftovers(_stage));
        _lock.Dispose();
        AtomicFile.Quietly(() => Directory.Delete(_stage, recursive: true));
        if (!_wasThere)
        {
            AtomicFile.Quietly(() => Directory.Delete(Folder, recursive: false)); // only where it is empty
        }
    }

    private void Stage(string name, Action<Stream> write)
    {
        var path = Path.Combine(_stage, "new", name);
        try
        {
            var folder = Path.GetDirectoryName(path)!;
            if (_made.TryAdd(folder, true) || !Directory.Exists(folder))
            {
                Directory.CreateDirectory(folder);
            }

            AtomicFile.Fill(path, write);
        }
        catch (Exception failure) when (OutputException.IsOne(failure))
        {
            throw OutputException.From(failure, Path.Combine(Folder, name));
        }
    }

    private static FileStream Hold(string folder, string stage)
    {
        var path = Path.Combine(stage, "lock");
        try
        {
            return new FileStream(path, FileMode.OpenOrCreate, FileAccess.Write, FileShare.None);
        }
        // A lock held by another process: EAGAIN on Linux and macOS, a sharing violation on Windows.
        catch (IOException failure) when (failure.HResult is 11 or 35 or unchecked((int)0x80070020))
        {
            throw new OutputException(
                $"Cannot write into {folder}: another run is writing there. Wait until it has ended, then run again.",
                folder,
                failure
            );
        }
    }

    /// <summary>What a run that was killed left behind.</summary>
    private static void RemoveLeftovers(string stage)
    {
        foreach (var part in (string[])["new", "old"])
        {
            var path = Path.Combine(stage, part);
            if (Directory.Exists(path))
            {
                Directory.Delete(path, recursive: true);
            }
        }
    }
}
