using System.Globalization;

namespace PlankFit.Export.Files;

/// <summary>One file that cannot be made again: on the disk, whole, before the one that it replaces is gone.</summary>
public static class DurableFile
{
    /// <summary>
    /// Writes beside the place, brings it to the disk, and moves it into place. Who may read and write it is kept. The place must not be a symbolic link: give what
    /// the link means.
    /// </summary>
    /// <exception cref="OutputException">The file system refused; the file is as it was.</exception>
    public static void Write(string path, byte[] bytes)
    {
        string full = Path.GetFullPath(path),
            folder = Path.GetDirectoryName(full) ?? full,
            beside = Path.Combine(
                folder,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $".{Path.GetFileName(full)}.{Environment.ProcessId}.writing"
                )
            );
        try
        {
            Fill(beside, bytes, File.Exists(full) ? full : null);
            File.Move(beside, full, overwrite: true);
            FolderSync.Of(folder);
        }
        catch (Exception failure)
        {
            AtomicFile.Quietly(() => File.Delete(beside));
            if (OutputException.IsOne(failure))
            {
                throw OutputException.From(failure, path);
            }

            throw;
        }
    }

    private static void Fill(string path, byte[] bytes, string? modeOf)
    {
        using var stream = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None);
        if (modeOf is not null && !OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(stream.SafeFileHandle, File.GetUnixFileMode(modeOf));
        }

        stream.Write(bytes);
        stream.Flush(flushToDisk: true);
    }
}
