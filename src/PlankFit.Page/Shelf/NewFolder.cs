using System.Text;
using PlankFit.Draughting.Files;
using PlankFit.Hashing;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Text;

namespace PlankFit.Pages.Shelf;

/// <summary>The folder of a new hull, made whole or not at all, beside the others and nowhere else; nothing that is there is touched.</summary>
internal static class NewFolder
{
    public const int Longest = 60;

    private const string Signs = " -_.,'()&+";

    /// <summary>Names that Windows keeps for itself, whatever stands behind a point.</summary>
    private static readonly HashSet<string> Kept = new(
        Enumerable
            .Range(1, 9)
            .SelectMany(n => new[] { $"COM{n}", $"LPT{n}" })
            .Concat(["CON", "PRN", "AUX", "NUL", "CONIN$", "CONOUT$"]),
        StringComparer.OrdinalIgnoreCase
    );

    /// <summary>What is wrong with a text as the name of a folder on any system, as a sentence; null where it will do.</summary>
    public static string? Fault(string? name) =>
        string.IsNullOrWhiteSpace(name) ? "Give the folder a name."
        : Name.Fault(name) is { } fault ? $"That name will not do for a folder: {fault}."
        : name.Length > Longest ? $"That name is too long for a folder: {Longest} signs at most."
        : name.FirstOrDefault(c => !char.IsLetterOrDigit(c) && !Signs.Contains(c))
            is var odd
                and not '\0'
            ? $"A folder's name takes letters, digits, blanks and {Signs.Trim()}; it has {odd}."
        : name[0] is '.' or ' ' || name[^1] is '.' or ' '
            ? "A folder's name begins and ends with a letter, a digit or a sign other than point and blank."
        : Kept.Contains(name.Split('.')[0].TrimEnd())
            ? "Windows keeps that name for itself: choose another."
        : null;

    /// <summary>Makes the folder with the job and its table in it.</summary>
    /// <param name="parent">Where the others lie.</param>
    /// <returns>Where the job file lies.</returns>
    /// <exception cref="OutputException">There is something of that name, or the disk refused.</exception>
    public static string Make(string parent, string name, string job, string table)
    {
        if (Fault(name) is { } fault)
        {
            throw new OutputException(fault, name);
        }

        string folder = Path.Combine(parent, name),
            stage = Path.Combine(
                parent,
                $".{Convert.ToHexStringLower(Unguessable.Bytes(8))}.plankfit-new"
            );
        if (Path.Exists(folder) || new FileInfo(folder).LinkTarget is not null)
        {
            throw new OutputException(
                $"There is something called {name} already, and nothing is written over: choose another name.",
                folder
            );
        }

        try
        {
            Directory.CreateDirectory(stage);
            DurableFile.Write(
                Path.Combine(stage, NewJob.Table),
                Encoding.UTF8.GetBytes(Ended(table))
            );
            DurableFile.Write(Path.Combine(stage, "job.toml"), Encoding.UTF8.GetBytes(Ended(job)));
            Directory.Move(stage, folder);
            FolderSync.Of(parent);
            return Path.Combine(folder, "job.toml");
        }
        catch (Exception failure)
        {
            Remove(stage);
            if (failure is not OutputException && OutputException.IsOne(failure))
            {
                throw OutputException.From(failure, folder);
            }

            throw;
        }
    }

    private static void Remove(string stage)
    {
        try
        {
            if (Directory.Exists(stage))
            {
                Directory.Delete(stage, recursive: true);
            }
        }
        catch (Exception e) when (OutputException.IsOne(e))
        {
            // What was wrong before is told, and not that this could not be tidied away either.
        }
    }

    private static string Ended(string text) => text.EndsWith('\n') ? text : text + "\n";
}
