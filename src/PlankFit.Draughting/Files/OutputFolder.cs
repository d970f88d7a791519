using System.Collections.Concurrent;
using System.Text;

namespace PlankFit.Draughting.Files;

/// <summary>
/// The files of one run. They are written into a hidden folder inside the target and moved to their places all together by <see cref="Commit"/>; a run that
/// fails, is stopped, or is not committed leaves the earlier files whole. One that is killed while it moves them leaves a journal, by which the next run
/// mends the folder. It is not a new folder and one swap, since the folder holds other commands' files and the user's own, and no system swaps two
/// folders in one step that is the same everywhere. Files may be written from several threads.
/// </summary>
public sealed class OutputFolder : IDisposable
{
    private readonly string command;
    private readonly StageFolder stage;
    private readonly Stack<string> madeFolders;
    private readonly CancellationToken cancel;
    private readonly ConcurrentDictionary<string, FileMark?> files = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, bool> made = new(StringComparer.Ordinal);

    private OutputFolder(
        string command,
        StageFolder stage,
        Stack<string> madeFolders,
        CancellationToken cancel
    ) =>
        (this.command, this.stage, this.madeFolders, this.cancel) = (
            command,
            stage,
            madeFolders,
            cancel
        );

    public string Folder => stage.Folder;

    /// <summary>Mends what a killed run left there as well.</summary>
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
        Stack<string> made = Missing(folder);
        try
        {
            if (InTheWay.IsLink(folder))
            {
                throw new OutputException(
                    $"Cannot write into {folder}: it is a symbolic link, and links are not followed. Name the folder that it leads to, or choose another.",
                    folder
                );
            }

            if (File.Exists(folder))
            {
                throw new OutputException(
                    $"Cannot write into {folder}: it is a file, not a folder. Rename it, or choose another folder.",
                    folder
                );
            }

            Directory.CreateDirectory(folder);
            var stage = StageFolder.Hold(folder, command);
            try
            {
                UnfinishedMove.Mend(stage);
                return new(command, stage, made, cancel);
            }
            catch
            {
                stage.Dispose();
                throw;
            }
        }
        catch (Exception failure)
        {
            RemoveEmpty(made);
            if (OutputException.IsOne(failure))
            {
                throw OutputException.FromFolder(failure, folder);
            }

            throw;
        }
    }

    /// <param name="name">The file's path from the folder, with forward slashes.</param>
    /// <exception cref="OutputException">The file system refused; the run is then to be given up.</exception>
    public void Write(string name, Action<Stream> write)
    {
        cancel.ThrowIfCancellationRequested();
        if (
            !FileIndex.IsSafe(name)
            || name == FileIndex.FileName
            || name.StartsWith(StageFolder.Name, StringComparison.Ordinal)
        )
        {
            throw new ArgumentException(
                $"\"{name}\" is no name for a file of a run.",
                nameof(name)
            );
        }

        if (!files.TryAdd(name, null))
        {
            throw new ArgumentException($"\"{name}\" is written twice in one run.", nameof(name));
        }

        files[name] = Stage(name, write);
    }

    public void Write(string name, ReadOnlyMemory<byte> content) =>
        Write(name, stream => stream.Write(content.Span));

    /// <summary>Moves everything into place and removes what this command wrote earlier and no longer does. Not stopped half way once begun.</summary>
    /// <returns>The names written, in order.</returns>
    /// <exception cref="OutputException">
    /// Something is in the way that is not ours, or a move was refused; everything is as it was, or <see cref="OutputException.HalfDone"/> says that it is not.
    /// </exception>
    public IReadOnlyList<string> Commit()
    {
        Ready().Run();
        return [.. files.Keys.Order(StringComparer.Ordinal)];
    }

    /// <summary>Looks whether all can be moved, and writes the journal of the moves: from here on the run is carried out, by the mover or by the next run.</summary>
    internal FileMover Ready()
    {
        cancel.ThrowIfCancellationRequested();
        var files = this.files.ToDictionary(f => f.Key, f => f.Value!, StringComparer.Ordinal);
        try
        {
            FileIndex before =
                FileIndex.Read(Folder)
                ?? throw OutputException.Refused(
                    Folder,
                    [
                        (
                            FileIndex.FileName,
                            "something of that name is there that PlankFit did not write. Move or rename it, or choose another folder."
                        ),
                    ]
                );
            string[] stale = [.. before.Of(command).Where(name => !files.ContainsKey(name))];
            FileMark index = Stage(FileIndex.FileName, before.With(command, files).Write);
            MoveJournal journal = MovePlan.Of(Folder, before, files, stale, index);
            WriteJournal(journal);
            return new FileMover(stage, journal, back: false);
        }
        catch (Exception failure) when (OutputException.IsOne(failure))
        {
            throw OutputException.FromFolder(failure, Folder);
        }
    }

    public void Dispose()
    {
        stage.Dispose();
        RemoveEmpty(madeFolders);
    }

    private void WriteJournal(MoveJournal journal)
    {
        string writing = stage.JournalPath + ".writing";
        using (var file = new FileStream(writing, FileMode.Create, FileAccess.Write))
        {
            file.Write(Encoding.UTF8.GetBytes(journal.ToText()));
            DiskSync.Flush(file);
        }

        File.Move(writing, stage.JournalPath);
    }

    private FileMark Stage(string name, Action<Stream> write)
    {
        const int Buffer = 32 * 1024;
        string path = stage.New(name);
        try
        {
            string folder = Path.GetDirectoryName(path)!;
            if (made.TryAdd(folder, true) || !Directory.Exists(folder))
            {
                Directory.CreateDirectory(folder);
            }

            using var stream = new FileStream(
                path,
                FileMode.Create,
                FileAccess.ReadWrite,
                FileShare.None,
                Buffer
            );
            write(stream);
            stream.Flush();
            return FileMark.Of(stream);
        }
        catch (Exception failure) when (OutputException.IsOne(failure))
        {
            throw OutputException.From(failure, Path.Combine(Folder, name));
        }
    }

    /// <summary>The folders of a path that are not there yet, the innermost first to be taken.</summary>
    private static Stack<string> Missing(string folder)
    {
        var missing = new List<string>();
        for (
            string? at = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
            at is not null && !Path.Exists(at);
            at = Path.GetDirectoryName(at)
        )
        {
            missing.Add(at);
        }

        missing.Reverse();
        return new(missing);
    }

    private static void RemoveEmpty(Stack<string> folders)
    {
        while (folders.TryPop(out string? folder))
        {
            AtomicFile.Quietly(() => Directory.Delete(folder, recursive: false));
        }
    }
}
