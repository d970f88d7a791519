using System.Collections.Immutable;
using System.Text;

namespace PlankFit.Export.Files;

/// <summary>
/// The list of what the program has written into a folder, and which of its commands did: so that a later run of the same command can take away what it no
/// longer makes, and nothing that somebody else put there.
/// </summary>
/// <param name="Lines">The command and the file's path from the folder, with forward slashes.</param>
public sealed record FileIndex(ImmutableArray<(string Command, string Name)> Lines)
{
    public const string FileName = "files.txt";
    private const string Heading =
        "# Written here by PlankFit, a command and a file a line. The next run of a command removes what it no longer makes.";

    public static readonly FileIndex Empty = new([]);

    /// <summary>The index in a folder; an empty one where there is none or where it is not ours.</summary>
    public static FileIndex Read(string folder)
    {
        var path = Path.Combine(folder, FileName);
        if (!File.Exists(path))
        {
            return Empty;
        }

        var lines = File.ReadAllLines(path, Encoding.UTF8);
        if (lines.Length == 0 || lines[0] != Heading)
        {
            return Empty;
        }

        return new([
            .. lines
                .Skip(1)
                .Select(line => line.Split('\t', 2))
                .Where(parts => parts.Length == 2 && IsSafe(parts[1]))
                .Select(parts => (parts[0], parts[1])),
        ]);
    }

    public IEnumerable<string> Of(string command) =>
        Lines.Where(l => l.Command == command).Select(l => l.Name);

    /// <summary>With a command's lines replaced; a file has one owner, the last that wrote it.</summary>
    public FileIndex With(string command, IReadOnlySet<string> names) =>
        new([
            .. Lines
                .Where(l => l.Command != command && !names.Contains(l.Name))
                .Concat(names.Select(name => (Command: command, Name: name)))
                .OrderBy(l => l.Command, StringComparer.Ordinal)
                .ThenBy(l => l.Name, StringComparer.Ordinal),
        ]);

    public void Write(Stream stream)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true);
        writer.NewLine = "\n";
        writer.WriteLine(Heading);
        foreach (var (command, name) in Lines)
        {
            writer.WriteLine($"{command}\t{name}");
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
}
