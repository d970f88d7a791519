using System.Text.RegularExpressions;

namespace PlankFit.Reading.Text;

/// <summary>What kind of file a text is, as far as its beginning says.</summary>
public enum FileForm
{
    Job,
    Offsets,
    Measured,
    Boards,
    Progress,

    /// <summary>Written by the program: the record of sawn planks, planking.json.</summary>
    Json,

    /// <summary>Lines of cells with another head than the tables that are read have.</summary>
    Cells,
}

/// <summary>
/// Tells a file that was named in another's place: read as what it is not, every line of it would be a fault of its own, and none of them the one that was made.
/// </summary>
public static partial class FileLook
{
    private const string ToStart =
        "to start one, copy the short job of README.md, \"Your own hull\", or that of `plankfit help hull`; or start the page without a job, where a new hull is made of its table";

    /// <summary>Null where the beginning says nothing, or nothing is there.</summary>
    public static FileForm? Of(string text)
    {
        string first = CsvLines.Split(text).FirstOrDefault(l => !string.IsNullOrWhiteSpace(l), "");
        if (JobHead().IsMatch(text))
        {
            return FileForm.Job;
        }

        if (first.TrimStart().StartsWith('{'))
        {
            return FileForm.Json;
        }

        char separator = CsvLines.Separator(first);
        string[] cells =
        [
            .. first.Split(separator).Select(c => c.Trim().Trim('"').ToLowerInvariant()),
        ];
        return cells switch
        {
            ["line", "measure", ..] => FileForm.Offsets,
            ["what", "where", "side", "value", ..] => FileForm.Measured,
            _ when cells.Contains("board") && cells.Contains("length") => FileForm.Boards,
            _ when cells.Contains("id") && cells.Contains("done-at") => FileForm.Progress,
            { Length: > 2 }
                when !first.Contains('=', StringComparison.Ordinal)
                    && !first.TrimStart().StartsWith('[') => FileForm.Cells,
            _ => null,
        };
    }

    /// <summary>Why a text is not what it was named as, and what to do; null where it looks like that, or like nothing known.</summary>
    /// <param name="file">By which the message names it.</param>
    public static string? Mistaken(string text, FileForm wanted, string file)
    {
        // A table of another head is told what its head should be.
        if (
            Of(text) is not { } form
            || form == wanted
            || (wanted != FileForm.Job && form == FileForm.Cells)
        )
        {
            return null;
        }

        string told = $"this looks like {Word(form)}, not {Word(wanted)}: ";
        return told + (wanted == FileForm.Job ? Instead(form, file) : Belongs(wanted));
    }

    /// <summary>A file in which there is nothing, named as a job.</summary>
    public static string EmptyJob =>
        $"the file is empty: a job has [job], [hull] and at least one [[layer]]; {ToStart}";

    private static string Instead(FileForm form, string file) =>
        form switch
        {
            FileForm.Offsets =>
                $"a job names it, offsets = \"{file}\" under [hull], and says what is laid on it; {ToStart}",
            FileForm.Boards =>
                $"a job names it, stock = \"{file}\" under [nest], or buy where it is what a yard sells: name that job",
            FileForm.Measured =>
                $"a job names it, measured = \"{file}\" under [as-built]: name that job",
            FileForm.Progress => "it lies beside the job that it goes with: name that job",
            FileForm.Json => "name the job that it was made from",
            _ => $"a job names its table and says what is laid on it; {ToStart}",
        };

    private static string Belongs(FileForm wanted) =>
        wanted switch
        {
            FileForm.Offsets =>
                "its first line is line,measure and then the names of the stations, and every further line a line of the hull (`plankfit help hull`)",
            FileForm.Boards =>
                "its first line names the columns, board,count,length,width,thickness and others (`plankfit help nest`)",
            _ => "its first line is what,where,side,value (`plankfit help as-built`)",
        };

    private static string Word(FileForm form) =>
        form switch
        {
            FileForm.Job => "a job",
            FileForm.Offsets => "a table of offsets",
            FileForm.Measured => "a list of what was measured",
            FileForm.Boards => "a list of boards",
            FileForm.Progress => "a list of what is glued down",
            FileForm.Json => "a record that the program writes",
            _ => "a table of some kind",
        };

    /// <summary>One of the heads that every job has, alone on its line.</summary>
    [GeneratedRegex(
        @"^[ \t]*\[(\[layer\]|job|hull)\][ \t]*(#.*)?\r?$",
        RegexOptions.CultureInvariant | RegexOptions.Multiline
    )]
    private static partial Regex JobHead();
}
