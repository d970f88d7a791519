namespace PlankFit.Draughting.Files;

/// <summary>A file could not be written. The message names it, says why and what to do, in words for the person at the bench.</summary>
public sealed class OutputException(
    string message,
    string path,
    Exception? inner = null,
    bool halfDone = false
) : Exception(message, inner)
{
    public string Path { get; } = path;

    /// <summary>Files of two runs stand mixed in the folder; what is needed to mend that is kept in it, and the next run does so once it can.</summary>
    public bool HalfDone { get; } = halfDone;

    internal OutputException AsHalfDone() => new(Message, Path, InnerException, halfDone: true);

    /// <summary>The failures of a file system, in words; anything else is a bug and is left as it is.</summary>
    public static bool IsOne(Exception failure) =>
        failure
            is IOException
                or UnauthorizedAccessException
                or NotSupportedException
                or System.Security.SecurityException;

    public static OutputException From(Exception failure, string path) =>
        new($"Cannot write {path}: {Reason(failure, Directory.Exists(path))}", path, failure);

    /// <summary>The same where nothing can be written into a folder.</summary>
    public static OutputException FromFolder(Exception failure, string folder) =>
        new($"Cannot write into {folder}: {Reason(failure, false)}", folder, failure);

    /// <summary>Things in a folder that a run would have to replace and must not.</summary>
    /// <param name="faults">At least one; why, as the second half of "Cannot write X: …".</param>
    internal static OutputException Refused(
        string folder,
        IReadOnlyList<(string Name, string Why)> faults
    )
    {
        const int Named = 5;
        string path = System.IO.Path.Combine(folder, faults[0].Name);
        var alike = faults.Where(f => f.Why == faults[0].Why).Select(f => f.Name).ToList();
        var others = alike.Skip(1).Take(Named - 1).ToList();
        int more = alike.Count - 1 - others.Count;
        string also =
            others.Count == 0
                ? ""
                : $" The same holds for {string.Join(", ", others)}{(more > 0 ? $" and {more} more" : "")}.";
        return new($"Cannot write {path}: {faults[0].Why}{also}", path);
    }

    internal static string Reason(Exception failure, bool folderInTheWay)
    {
        // Error numbers: of Linux (ENOSPC 28, EDQUOT 122, EROFS 30, ENOTDIR 20, EISDIR 21), of macOS (EDQUOT 69), and Windows' own two for a full disk.
        const int WindowsDiskFull = unchecked((int)0x80070070);
        const int WindowsHandleDiskFull = unchecked((int)0x80070027);
        switch (failure)
        {
            case IOException { HResult: 28 or WindowsDiskFull or WindowsHandleDiskFull }:
                return "the disk is full. Free some space and run again.";
            case IOException { HResult: 122 or 69 }:
                return "your share of the disk is used up. Free some space and run again.";
            case IOException { HResult: 30 }:
                return "the disk can only be read. Choose another folder.";
            case PathTooLongException:
                return "the path is too long for this system. Choose a folder nearer the root.";
            case UnauthorizedAccessException or IOException when folderInTheWay:
            case IOException { HResult: 21 }:
                return "a folder of that name is in the way. Rename it, or choose another folder.";
            case UnauthorizedAccessException or System.Security.SecurityException:
                return "you have no permission to write there. Choose another folder, or have its permissions changed.";
            case IOException { HResult: 20 }:
                return "a part of its path is a file, not a folder. Rename that file, or choose another folder.";
            case DirectoryNotFoundException:
                return "its folder does not exist. Make the folder, or choose another.";
            default:
                return $"{failure.Message.TrimEnd('.')}. Mend that, or choose another folder.";
        }
    }
}
