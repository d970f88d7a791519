using PlankFit.Draughting.Files;
using PlankFit.Hashing;
using PlankFit.Reading.Text;

namespace PlankFit.Pages.Sessions;

/// <param name="Message">Why it was not saved.</param>
/// <param name="Theirs">What stands on the disk instead of what was read, to be shown and asked about; null where that is not why.</param>
/// <param name="Hash">Of what stands there.</param>
internal sealed record SaveAnswer(bool Saved, string Message, string? Theirs, string? Hash)
{
    public static readonly SaveAnswer Done = new(true, "", null, null);
}

/// <summary>Saves a job file: nothing that another program wrote there meanwhile is lost without having been seen.</summary>
internal static class JobSaving
{
    /// <param name="read">What was read from the disk, or written there, last.</param>
    /// <param name="over">The hash of what may be replaced although it is not that.</param>
    public static SaveAnswer Save(string path, byte[] bytes, byte[] read, string? over)
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
            return SaveAnswer.Done;
        }
        catch (OutputException e)
        {
            return new(false, e.Message, null, null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new(false, $"{name} cannot be read: {e.Message}", null, null);
        }
    }
}
