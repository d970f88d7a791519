using System.Runtime.InteropServices;
using System.Text;

namespace PlankFit.Draughting.Files;

/// <summary>
/// Makes what was renamed in a folder outlast a loss of power: the folder itself is brought to the disk (fsync, POSIX.1-2017). .NET opens no folder, so the C
/// library is asked. Windows has nothing of the kind, and brings renames to its journal by itself.
/// </summary>
public static class FolderSync
{
    private const int ReadOnly = 0;

    /// <summary>Best effort: there are file systems that cannot, and what was written is whole without it.</summary>
    public static void Of(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        int handle = Open(Encoding.UTF8.GetBytes(folder + '\0'), ReadOnly);
        if (handle >= 0)
        {
            _ = Sync(handle);
            _ = Close(handle);
        }
    }

    [DllImport("libc", EntryPoint = "open")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open(byte[] path, int flags);

    [DllImport("libc", EntryPoint = "fsync")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Sync(int handle);

    [DllImport("libc", EntryPoint = "close")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Close(int handle);
}
