using System.Runtime.InteropServices;

namespace PlankFit.Draughting.Files;

/// <summary>Forces what was written through to the disk.</summary>
internal static class DiskSync
{
    /// <summary>
    /// The file itself; on Linux all other files of its disk with it, in one call: a sync for each of several hundred files would take seconds.
    /// Elsewhere the others are known by their marks should the power fail.
    /// </summary>
    public static void Flush(FileStream file)
    {
        file.Flush(flushToDisk: true);
        if (OperatingSystem.IsLinux())
        {
            // Not every disk can: what it says is of no use to the run.
            _ = syncfs(file.SafeFileHandle);
        }
    }

    [DllImport("libc")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int syncfs(SafeHandle file);
}
