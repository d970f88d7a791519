using System.Text;

namespace PlankFit.Draughting.Files;

/// <summary>Moves that a run began and did not end, because it was killed or the power failed: they are finished where the folder is as it left it, else taken back.</summary>
public static class UnfinishedMove
{
    /// <summary>Mends a folder that a run was killed in. Does nothing where none was, where another run is at it, or where it cannot be done now: the next run that writes there says why.</summary>
    /// <returns>What was done, for the person at the terminal; null where there was nothing to do.</returns>
    public static string? Mend(string folder)
    {
        string? told = null;
        if (StageFolder.IsIn(folder))
        {
            AtomicFile.Quietly(() =>
            {
                try
                {
                    using var stage = StageFolder.Hold(folder, "mending");
                    told = Mend(stage);
                }
                catch (OutputException) { }
            });
        }

        return told;
    }

    /// <exception cref="OutputException">Somebody has changed files since, so that it can neither be finished nor taken back.</exception>
    internal static string? Mend(StageFolder stage)
    {
        string? told = null;
        if (Mover(stage) is { } mover)
        {
            mover.Run();
            told = mover.GoesBack
                ? $"An earlier run was cut off while its files were moved into {stage.Folder}: what it had moved is taken back."
                : $"An earlier run was cut off while its files were moved into {stage.Folder}: the move is finished.";
        }

        stage.Clear();
        return told;
    }

    /// <summary>What moves the rest of an unfinished move; null where nothing is unfinished.</summary>
    internal static FileMover? Mover(StageFolder stage)
    {
        if (!stage.IsUnfinished)
        {
            return null;
        }

        bool back = File.Exists(stage.BackJournalPath);
        string path = back ? stage.BackJournalPath : stage.JournalPath;
        MoveJournal journal =
            MoveJournal.Parse(File.ReadAllText(path, Encoding.UTF8))
            ?? throw new OutputException(
                $"Cannot write into {stage.Folder}: a run was cut off there, and its journal, {path}, is damaged. Move the folder away, or choose another.",
                path,
                halfDone: true
            );
        var mover = new FileMover(stage, journal, back);
        if (!back && journal.Moves.All(m => CanBePlaced(stage, m)))
        {
            return mover;
        }

        (string Name, string Why)[] changed =
        [
            .. journal
                .Moves.Select(m => (m.Name, Why: NotToBeTakenBack(stage, m)!))
                .Where(c => c.Why is not null),
        ];
        if (changed.Length > 0)
        {
            throw OutputException.Refused(stage.Folder, changed).AsHalfDone();
        }

        if (!back)
        {
            mover.TakeBack();
        }

        return mover;
    }

    /// <summary>Whether a file is new and whole in the stage with the old state in its place, or in its place already.</summary>
    private static bool CanBePlaced(StageFolder stage, FileMove move)
    {
        (FileMark? there, string? fault) = InTheWay.At(stage.Folder, move.Name);
        if (fault is not null)
        {
            return false;
        }

        if (move.After is null)
        {
            return there is null || there == move.Before;
        }

        string staged = stage.New(move.Name);
        return File.Exists(staged)
            ? FileMark.Of(staged) == move.After && there == move.Before
            : there == move.After;
    }

    /// <summary>Where a file that was moved in is neither that any more nor what was there before, somebody has worked on it since: it is not written over.</summary>
    private static string? NotToBeTakenBack(StageFolder stage, FileMove move)
    {
        if (move.After is null || File.Exists(stage.New(move.Name)))
        {
            return null; // what is there was never replaced
        }

        (FileMark? there, string? fault) = InTheWay.At(stage.Folder, move.Name);
        return fault
            ?? (
                there is null || there == move.Before || there == move.After
                    ? null
                    : "it was changed after a run was cut off here. Move it away, and run again: the rest is then taken back."
            );
    }
}
