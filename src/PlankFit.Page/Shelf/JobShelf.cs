using System.Collections.Immutable;
using PlankFit.Reading.Text;

namespace PlankFit.Pages.Shelf;

/// <summary>The jobs that may be looked at, each by its number from 1: nothing else on the disk is ever asked for by name.</summary>
internal sealed record JobShelf(ImmutableArray<string> Paths)
{
    private const string Usual = "job.toml";
    private const int MostOffered = 200;

    /// <summary>Where a new hull's folder is made; null where one job was named, and no other is to be had.</summary>
    public string? NewOnesGoTo { get; private init; }

    /// <param name="named">
    /// The job that was asked for, or its folder; null for all that lie in the folder, in a folder of it, and in those of its hulls, and so for a folder in which no job lies.
    /// </param>
    /// <exception cref="FileNotFoundException">There is no such job.</exception>
    /// <exception cref="InvalidDataException">What was named is another file than a job.</exception>
    public static JobShelf Of(string? named, string folder)
    {
        if (named is not null)
        {
            string path = Path.GetFullPath(named, folder);
            if (Directory.Exists(path))
            {
                string usual = Path.Combine(path, Usual);
                return File.Exists(usual) ? new([usual]) : Of(null, path);
            }

            if (!File.Exists(path))
            {
                throw new FileNotFoundException($"there is no job {named}.");
            }

            string file = Path.GetFileName(path);
            return
                TextFile.Read(path, file).Text is { } text
                && FileLook.Mistaken(text, FileForm.Job, file) is { } mistaken
                ? throw new InvalidDataException($"{named}: {mistaken}.")
                : new([path]);
        }

        string hulls = Path.Combine(folder, "hulls");
        string[] folders =
        [
            folder,
            .. Directory.EnumerateDirectories(folder),
            .. Directory.Exists(hulls) ? Directory.EnumerateDirectories(hulls) : [],
        ];
        ImmutableArray<string> paths =
        [
            .. folders
                .Select(f => Path.Combine(f, Usual))
                .Where(File.Exists)
                .Order(StringComparer.Ordinal)
                .Take(MostOffered),
        ];
        return new(paths) { NewOnesGoTo = Directory.Exists(hulls) ? hulls : folder };
    }

    /// <summary>With one more, the last.</summary>
    public JobShelf With(string path) => this with { Paths = Paths.Add(path) };

    /// <summary>What a person tells a job by: the folder that it lies in, and its name where that is not the usual one.</summary>
    public string NameOf(int number)
    {
        string path = Paths[number - 1],
            file = Path.GetFileName(path),
            folder = Path.GetFileName(Path.GetDirectoryName(path) ?? "");
        return file == Usual && folder.Length > 0 ? folder : $"{folder}/{file}";
    }
}
