using System.Collections.Immutable;
using System.Text;

namespace PlankFit.Draughting.Files;

/// <summary>A file that a command of ours has written.</summary>
/// <param name="Name">Its path from the folder, with forward slashes.</param>
/// <param name="Mark">What was written; null where an older list does not say.</param>
public sealed record IndexedFile(string Command, string Name, FileMark? Mark);

/// <summary>
/// The list of what the program has written into a folder, and which of its commands did: so that a later run replaces and takes away what it names as long as
/// nobody has changed it, and nothing else.
/// </summary>
public sealed record FileIndex(ImmutableArray<IndexedFile> Files)
{
    public const string FileName = "files.txt";
    private const string Ours = "# Written here by PlankFit";
    private const string Heading =
        Ours
        + ": command, file, bytes, SHA-256. A later run of the command replaces or removes these, and no other file.";

    public static readonly FileIndex Empty = new([]);

    /// <summary>The index in a folder; an empty one where there is none; null where a file of that name is there that is not ours.</summary>
    public static FileIndex? Read(string folder)
    {
        var file = new FileInfo(Path.Combine(folder, FileName));
        if (!file.Exists && file.LinkTarget is null)
        {
            return Empty;
        }

        // Without a size it is no list, and perhaps a pipe, which would not let go of its reader.
        if (file.LinkTarget is not null || file.Length == 0)
        {
            return null;
        }

        string[] lines = File.ReadAllLines(file.FullName, Encoding.UTF8);
        return lines is [var first, ..] && first.StartsWith(Ours, StringComparison.Ordinal)
            ? new([.. lines.Skip(1).Select(Line).OfType<IndexedFile>()])
            : null;
    }

    public IEnumerable<string> Of(string command) =>
        Files.Where(f => f.Command == command).Select(f => f.Name);

    /// <summary>With a command's files replaced; a file has one owner, the last that wrote it.</summary>
    public FileIndex With(string command, IReadOnlyDictionary<string, FileMark> files) =>
        new([
            .. Files
                .Where(f => f.Command != command && !files.ContainsKey(f.Name))
                .Concat(files.Select(f => new IndexedFile(command, f.Key, f.Value)))
                .OrderBy(f => f.Command, StringComparer.Ordinal)
                .ThenBy(f => f.Name, StringComparer.Ordinal),
        ]);

    public void Write(Stream stream)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true);
        writer.NewLine = "\n";
        writer.WriteLine(Heading);
        foreach (IndexedFile file in Files)
        {
            writer.WriteLine(
                file.Mark is null
                    ? $"{file.Command}\t{file.Name}"
                    : $"{file.Command}\t{file.Name}\t{file.Mark}"
            );
        }
    }

    /// <summary>Whether a name stays inside the folder: an index that was meddled with must not reach out of it.</summary>
    public static bool IsSafe(string name) =>
        name.Length > 0
        && !name.Contains('\\', StringComparison.Ordinal)
        && !name.Any(char.IsControl)
        && !Path.IsPathRooted(name)
        && !(name.Length > 1 && name[1] == ':')
        && name.Split('/').All(part => part is not ("" or "." or ".."));

    private static IndexedFile? Line(string line) =>
        line.Split('\t') switch
        {
            [var command, var name] when IsSafe(name) => new(command, name, null),
            [var command, var name, var bytes, var sha]
                when IsSafe(name) && FileMark.Parse(bytes, sha) is { } mark => new(
                command,
                name,
                mark
            ),
            _ => null,
        };
}
