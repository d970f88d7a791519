using System.Globalization;

namespace PlankFit.Draughting.Files;

/// <summary>One file, written beside its place under another name and then moved into it: found whole, or as it was before.</summary>
public static class AtomicFile
{
    /// <param name="path">Its folder must exist.</param>
    /// <param name="write">Writes the content; may throw, and then nothing has happened.</param>
    /// <exception cref="OutputException">The file system refused.</exception>
    public static void Write(string path, Action<Stream> write, CancellationToken cancel = default)
    {
        cancel.ThrowIfCancellationRequested();
        string full = Path.GetFullPath(path);
        string process = Environment.ProcessId.ToString(CultureInfo.InvariantCulture);
        string beside = Path.Combine(
            Path.GetDirectoryName(full) ?? full,
            $".{Path.GetFileName(full)}.{process}.writing"
        );
        try
        {
            Fill(beside, write);
            cancel.ThrowIfCancellationRequested();
            File.Move(beside, full, overwrite: true);
        }
        catch (Exception failure)
        {
            Quietly(() => File.Delete(beside));
            if (OutputException.IsOne(failure))
            {
                throw OutputException.From(failure, path);
            }

            throw;
        }
    }

    internal static void Fill(string path, Action<Stream> write)
    {
        const int Buffer = 32 * 1024;
        using var stream = new FileStream(
            path,
            FileMode.Create,
            FileAccess.Write,
            FileShare.None,
            Buffer
        );
        write(stream);
        stream.Flush();
    }

    /// <summary>For tidying up after a failure: a second failure must not hide the first.</summary>
    internal static void Quietly(Action tidy)
    {
        try
        {
            tidy();
        }
        catch (Exception failure) when (OutputException.IsOne(failure)) { }
    }
}
