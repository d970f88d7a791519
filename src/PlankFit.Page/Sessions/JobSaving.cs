using System.Text;
using PlankFit.Draughting.Files;
using PlankFit.Hashing;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Text;

namespace PlankFit.Pages.Sessions;

/// <param name="Message">Why it was not saved.</param>
/// <param name="Theirs">What stands on the disk instead of what was read, to be shown and asked about; null where that is not why.</param>
/// <param name="Hash">Of what stands there.</param>
internal sealed record SaveAnswer(bool Saved, string Message, string? Theirs, string? Hash)
{
    public static SaveAnswer Done(string told) => new(true, told, null, null);

    public static SaveAnswer No(string why) => new(false, why, null, null);
}

/// <summary>Saves a job file: nothing that another program wrote there meanwhile is lost without having been seen.</summary>
internal static class JobSaving
{
    /// <summary>A text as it stands in the file: the mark that a file may begin with is no part of the text and stays where it was.</summary>
    public static byte[] Bytes(string text, byte[] onDisk)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        return onDisk is [0xEF, 0xBB, 0xBF, ..] ? [0xEF, 0xBB, 0xBF, .. bytes] : bytes;
    }

    /// <summary>A text from a browser that names a file it may not read is not saved: else the next who opens the file would take the name for its builder's own.</summary>
    /// <returns>Null where it may be saved.</returns>
    public static SaveAnswer? Refused(string path, byte[] text, Func<string, bool> mayRead) =>
        JobReader
            .Named(TextFile.Decode(text, Path.GetFileName(path)))
            .FirstOrDefault(n => !mayRead(n))
            is { } outside
            ? SaveAnswer.No(
                $"it names {outside}, which is not in the job's folder: put it there, or name it with an editor in the file itself"
            )
            : null;

    /// <summary>Saves a table that was mended first, so that the job names a file that is there; where the job then is not saved, it is as if nothing had been.</summary>
    /// <param name="bytes">Makes a text what stands in the file.</param>
    /// <returns>With the text that was saved, which names the new table.</returns>
    public static (SaveAnswer Answer, string Text) Save(
        string path,
        Step step,
        Func<string, byte[]> bytes,
        byte[] read,
        string? over
    )
    {
        if (!TableMending.Applies(step.Text, step.Table))
        {
            return (Save(path, bytes(step.Text), read, over, ""), step.Text);
        }

        try
        {
            (string name, bool isNew) = TableMending.Save(path, step.Table!);
            if (TableMending.Named(step.Text, name) is not { } text)
            {
                return (SaveAnswer.No("the job cannot be read as it is"), step.Text);
            }

            SaveAnswer answer = Save(
                path,
                bytes(text),
                read,
                over,
                $"the mended table saved as {name}"
            );
            if (!answer.Saved && isNew)
            {
                File.Delete(Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, name));
            }

            return (answer, text);
        }
        catch (OutputException e)
        {
            return (SaveAnswer.No(e.Message), step.Text);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (SaveAnswer.No(e.Message), step.Text);
        }
    }

    /// <param name="read">What was read from the disk, or written there, last.</param>
    /// <param name="over">The hash of what may be replaced although it is not that.</param>
    /// <param name="told">What is told of it where it is saved.</param>
    private static SaveAnswer Save(
        string path,
        byte[] bytes,
        byte[] read,
        string? over,
        string told
    )
    {
        string real = LinkedFile.Real(path),
            name = Path.GetFileName(path);
        try
        {
            byte[] there = File.Exists(real) ? File.ReadAllBytes(real) : [];
            string hash = Sha256Hash.HexOf(there);
            if (!there.AsSpan().SequenceEqual(read) && hash != over)
            {
                return new(
                    false,
                    $"{name} was changed by another program since it was read here",
                    TextFile.Decode(there, name).Text ?? "(not a text)",
                    hash
                );
            }

            DurableFile.Write(real, bytes);
            return SaveAnswer.Done(told);
        }
        catch (OutputException e)
        {
            return SaveAnswer.No(e.Message);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return SaveAnswer.No($"{name} cannot be read: {e.Message}");
        }
    }
}
