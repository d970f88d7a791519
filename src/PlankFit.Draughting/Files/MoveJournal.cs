using System.Collections.Immutable;
using System.Text;
using PlankFit.Hashing;

namespace PlankFit.Draughting.Files;

/// <summary>
/// The moves of one run, written down before the first is made. While it stands in the stage, the moves are to be finished; under its second name, they are to be
/// taken back; once it is gone, the run is done.
/// </summary>
/// <param name="Moves">In their order; the list of files (<see cref="FileIndex"/>) is the last.</param>
/// <param name="NewFolders">Folders to be made for them, outer ones first.</param>
internal sealed record MoveJournal(
    ImmutableArray<FileMove> Moves,
    ImmutableArray<string> NewFolders
)
{
    private const string Heading =
        "# PlankFit is moving files into the folder around this one. The next run of any of its commands on it finishes this or takes it back.";

    /// <summary>The text of a journal, which ends with a checksum of all that stands before.</summary>
    public string ToText()
    {
        StringBuilder text = new StringBuilder(Heading).Append('\n');
        foreach (string folder in NewFolders)
        {
            text.Append("folder\t").Append(folder).Append('\n');
        }

        foreach ((string? name, FileMark? before, FileMark? after) in Moves)
        {
            text.Append(
                $"move\t{name}\t{before?.ToString() ?? "-\t-"}\t{after?.ToString() ?? "-\t-"}\n"
            );
        }

        return $"{text}end\t{Sum(text.ToString())}\n";
    }

    /// <summary>The journal of a text; null where it is not whole, or names what is outside the folder.</summary>
    public static MoveJournal? Parse(string text)
    {
        int end = text.LastIndexOf("end\t", StringComparison.Ordinal);
        if (end < 0 || text[end..] != $"end\t{Sum(text[..end])}\n")
        {
            return null;
        }

        ImmutableArray<FileMove>.Builder moves = ImmutableArray.CreateBuilder<FileMove>();
        ImmutableArray<string>.Builder folders = ImmutableArray.CreateBuilder<string>();
        foreach (
            string? line in text[..end].Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1)
        )
        {
            switch (line.Split('\t'))
            {
                case ["folder", var folder] when FileIndex.IsSafe(folder):
                    folders.Add(folder);
                    break;
                case ["move", var name, var size, var sha, var newSize, var newSha]
                    when FileIndex.IsSafe(name):
                    moves.Add(
                        new(name, FileMark.Parse(size, sha), FileMark.Parse(newSize, newSha))
                    );
                    break;
                default:
                    return null;
            }
        }

        return new(moves.ToImmutable(), folders.ToImmutable());
    }

    private static string Sum(string text) => Sha256Hash.HexOf(Encoding.UTF8.GetBytes(text));
}
