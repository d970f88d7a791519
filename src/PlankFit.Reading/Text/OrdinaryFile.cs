using System.Runtime.InteropServices;

namespace PlankFit.Reading.Text;

/// <summary>
/// Only ordinary files are opened for reading: a pipe lets its reader wait for ever, a device may never end. Every reader of the program's goes through
/// <see cref="TextFile"/>, which asks here first.
/// </summary>
internal static class OrdinaryFile
{
    /// <summary>Why a path is not to be opened, as the second half of "job.toml: …"; null where it may be. Links are followed: it is the user's own folder.</summary>
    public static string? Refusal(string path)
    {
        if (Directory.Exists(path))
        {
            return $"is a folder ({path}): name the file in it";
        }

        if (Kind(path) is { } kind)
        {
            return kind.Length == 0
                ? null
                : $"is {kind} ({path}), which is not read: name an ordinary file on the disk";
        }

        // A link says of itself that it exists wherever it leads, and its size is that of the path written in it.
        var at = new FileInfo(path);
        if (at.LinkTarget is not null)
        {
            at = new(at.ResolveLinkTarget(returnFinalTarget: true)!.FullName);
        }

        if (!at.Exists)
        {
            return $"there is no such file ({path})";
        }

        // Where the system does not tell what a thing is: pipes and devices have no size.
        return at.Length == 0
            ? $"is empty, or no ordinary file but a pipe or a device ({path}): name an ordinary file on the disk"
            : null;
    }

    /// <summary>What a path leads to, in words; "" for an ordinary file, null where the system does not say.</summary>
    private static string? Kind(string path)
    {
        // statx(2) of Linux, whose layout is the same on every processor: 16 bits of mode stand at byte 28 of 256.
        const int ThisFolder = -100;
        const uint TypeWanted = 1;
        const int ModeAt = 28;
        byte[] buffer = new byte[256];
        if (!OperatingSystem.IsLinux())
        {
            return null;
        }

        try
        {
            if (statx(ThisFolder, path, 0, TypeWanted, buffer) != 0)
            {
                return null;
            }
        }
        catch (EntryPointNotFoundException)
        {
            return null; // a C library from before 2018
        }

        const int TypeMask = 0xF000;
        return (BitConverter.ToUInt16(buffer, ModeAt) & TypeMask) switch
        {
            0x8000 => "",
            0x1000 => "a pipe",
            0x2000 or 0x6000 => "a device",
            0xC000 => "a socket",
            _ => "something that is not a file",
        };
    }

    [DllImport("libc", BestFitMapping = false, ThrowOnUnmappableChar = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int statx(
        int folder,
        [MarshalAs(UnmanagedType.LPUTF8Str)] string path,
        int flags,
        uint wanted,
        byte[] buffer
    );
}
