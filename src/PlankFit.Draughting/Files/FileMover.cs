namespace PlankFit.Draughting.Files;

/// <summary>One step of moving a run's files into place, and the file that it is about.</summary>
internal sealed record MoveStep(string Name, Action Do);

/// <summary>
/// Moves the files of a journal into place, or takes the moves back. Each step can be made again after it was made, whole or in part, so that a run that was
/// killed between two of them, or within one, is carried on from the first. Each file is at every moment whole, either the old one or the new.
/// </summary>
internal sealed class FileMover
{
    private readonly StageFolder stage;
    private readonly MoveJournal journal;

    public FileMover(StageFolder stage, MoveJournal journal, bool back) =>
        (this.stage, this.journal, GoesBack) = (stage, journal, back);

    /// <summary>Whether the moves are taken back.</summary>
    public bool GoesBack { get; private set; }

    /// <summary>All steps from the first; the last removes the journal, and then all is done.</summary>
    public IEnumerable<MoveStep> Steps() => GoesBack ? BackSteps() : ForwardSteps();

    /// <summary>Makes all steps; where one cannot be made, all are taken back.</summary>
    /// <exception cref="OutputException">A step was refused; see <see cref="OutputException.HalfDone"/>.</exception>
    public void Run()
    {
        if (TryAll(Steps()) is not { } refused)
        {
            return;
        }

        if (!GoesBack)
        {
            try
            {
                TakeBack();
            }
            catch (Exception failure) when (OutputException.IsOne(failure))
            {
                throw refused.AsHalfDone();
            }

            if (TryAll(Steps()) is null)
            {
                throw refused;
            }
        }

        throw refused.AsHalfDone();
    }

    /// <summary>From now on the steps are those back, whoever makes them.</summary>
    public void TakeBack()
    {
        File.Move(stage.JournalPath, stage.BackJournalPath);
        GoesBack = true;
    }

    private OutputException? TryAll(IEnumerable<MoveStep> steps)
    {
        foreach ((string? name, Action? act) in steps)
        {
            try
            {
                act();
            }
            catch (Exception failure) when (OutputException.IsOne(failure))
            {
                return OutputException.From(failure, Target(name));
            }
        }

        return null;
    }

    private IEnumerable<MoveStep> ForwardSteps() =>
        [
            .. journal.NewFolders.Select(f => new MoveStep(
                f,
                () => Directory.CreateDirectory(Target(f))
            )),
            .. journal.Moves.Select(m => new MoveStep(
                m.Name,
                m.After is null ? () => TakeAway(m.Name) : () => Place(m.Name)
            )),
            .. journal
                .Moves.Where(m => m.After is null)
                .Select(m => new MoveStep(m.Name, () => RemoveEmptied(m.Name))),
            new(FileIndex.FileName, () => File.Delete(stage.JournalPath)),
        ];

    private IEnumerable<MoveStep> BackSteps() =>
        [
            .. journal
                .Moves.Reverse()
                .Select(m => new MoveStep(
                    m.Name,
                    m.After is null ? () => Return(m.Name) : () => Unplace(m)
                )),
            .. journal
                .NewFolders.Reverse()
                .Select(f => new MoveStep(f, () => RemoveIfEmpty(Target(f)))),
            new(FileIndex.FileName, () => File.Delete(stage.BackJournalPath)),
        ];

    private void Place(string name)
    {
        (string? from, string? to, string? kept) = (stage.New(name), Target(name), stage.Old(name));
        if (!File.Exists(from))
        {
            return; // placed already
        }

        if (File.Exists(to))
        {
            MakeFolderOf(kept);
            File.Replace(from, to, kept, ignoreMetadataErrors: true);
        }
        else
        {
            File.Move(from, to);
        }
    }

    private void TakeAway(string name)
    {
        (string? to, string? kept) = (Target(name), stage.Old(name));
        if (File.Exists(to))
        {
            MakeFolderOf(kept);
            File.Move(to, kept, overwrite: true);
        }
    }

    private void Unplace(FileMove move)
    {
        (string? from, string? to, string? kept) = (
            stage.New(move.Name),
            Target(move.Name),
            stage.Old(move.Name)
        );
        if (File.Exists(from))
        {
            return; // never placed: what is there is the old file, whether it is kept as well or not
        }

        if (move.Before is not null)
        {
            if (File.Exists(kept))
            {
                File.Move(kept, to, overwrite: true);
            }
        }
        else if (File.Exists(to))
        {
            MakeFolderOf(from);
            File.Move(to, from);
        }
    }

    private void Return(string name)
    {
        (string? to, string? kept) = (Target(name), stage.Old(name));
        if (File.Exists(kept) && !File.Exists(to))
        {
            MakeFolderOf(to);
            File.Move(kept, to);
        }
    }

    private void RemoveEmptied(string name)
    {
        for (
            string? above = Path.GetDirectoryName(name);
            !string.IsNullOrEmpty(above);
            above = Path.GetDirectoryName(above)
        )
        {
            RemoveIfEmpty(Target(above));
        }
    }

    private static void RemoveIfEmpty(string folder)
    {
        if (Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any())
        {
            Directory.Delete(folder, recursive: false);
        }
    }

    private static void MakeFolderOf(string file) =>
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);

    private string Target(string name) => Path.Combine(stage.Folder, name);
}
