namespace PlankFit.Draughting.Files;

/// <summary>One file that cannot be made again: on the disk, whole, before the one that it replaces is gone.</summary>
public static class DurableFile
{
    /// <summary>
    /// Writes beside the place, brings it to the disk, and moves it into place. Who may read and write it is kept. The place must not be a symbolic link: give what
    /// the link means. One at a time: whoever calls holds a lock, and what one that was killed left beside the place is taken over by the next.
    /// </summary>
    /// <exception cref="OutputException">The file system refused; the file is as it was.</exception>
    public static void Write(string path, byte[] bytes)
    {
        string full = Path.GetFullPath(path),
            folder = Path.GetDirectoryName(full) ?? full,
            beside = Path.Combine(folder, $".{Path.GetFileName(full)}.writing");
        try
        {
            File.Delete(beside);
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
        using var stream = new FileStream(
            path,
            FileMode.CreateNew,
            FileAccess.Write,
            FileShare.None
        );
        if (modeOf is not null && !OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(stream.SafeFileHandle, File.GetUnixFileMode(modeOf));
        }

        stream.Write(bytes);
        stream.Flush(flushToDisk: true);
    }
}
