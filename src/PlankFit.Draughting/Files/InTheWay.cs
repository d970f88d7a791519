namespace PlankFit.Draughting.Files;

/// <summary>What stands in a folder where a file of ours is to go: an ordinary file, nothing, or something that is not to be touched.</summary>
/// <param name="File">The ordinary file's mark; null where there is none.</param>
/// <param name="Fault">Why nothing can be put there, as the second half of "Cannot write X: …"; else null.</param>
internal readonly record struct InTheWay(FileMark? File, string? Fault)
{
    /// <summary>Looks without following any symbolic link below the folder.</summary>
    /// <param name="name">From the folder, with forward slashes.</param>
    public static InTheWay At(string folder, string name)
    {
        for (int slash = name.IndexOf('/'); slash >= 0; slash = name.IndexOf('/', slash + 1))
        {
            string part = name[..slash];
            var above = new FileInfo(Path.Combine(folder, part));
            if (IsNothing(above))
            {
                return default;
            }

            if (Link(above, part) is { } link)
            {
                return new(null, link);
            }

            if (!above.Attributes.HasFlag(FileAttributes.Directory))
            {
                return new(
                    null,
                    $"{part} is a file, not a folder. Rename it, or choose another folder."
                );
            }
        }

        var there = new FileInfo(Path.Combine(folder, name));
        if (IsNothing(there))
        {
            return default;
        }

        if (Link(there, "it") is { } itself)
        {
            return new(null, itself);
        }

        if (there.Attributes.HasFlag(FileAttributes.Directory))
        {
            return new(
                null,
                "a folder of that name is in the way. Rename it, or choose another folder."
            );
        }

        try
        {
            return new(FileMark.Of(there.FullName), null);
        }
        catch (Exception failure) when (OutputException.IsOne(failure))
        {
            return new(null, OutputException.Reason(failure, folderInTheWay: false));
        }
    }

    /// <summary>Whether a path is itself a symbolic link, or a junction, wherever it leads.</summary>
    public static bool IsLink(string path) => new FileInfo(path).LinkTarget is not null;

    // A link that leads nowhere is there all the same: its attributes say so, `Exists` does not.
    private static bool IsNothing(FileInfo file) => file.Attributes == (FileAttributes)(-1);

    private static string? Link(FileInfo file, string called) =>
        file.LinkTarget is { } target
            ? $"{called} is a symbolic link (to {target}), and links are not followed. Remove the link, or choose another folder."
            : null;
}
