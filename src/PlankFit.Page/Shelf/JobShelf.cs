using System.Collections.Immutable;

namespace PlankFit.Pages.Shelf;

/// <summary>The jobs that may be looked at, each by its number from 1: nothing else on the disk is ever asked for by name.</summary>
internal sealed record JobShelf(ImmutableArray<string> Paths)
{
    private const string Usual = "job.toml";
    private const int MostOffered = 200;

    /// <summary>Where a new hull's folder is made; null where one job was named, and no other is to be had.</summary>
    public string? NewOnesGoTo { get; private init; }

    /// <param name="named">The job that was asked for; null for all that lie in the folder, in a folder of it, and in those of its hulls.</param>
    /// <exception cref="FileNotFoundException">There is no such job.</exception>
    public static JobShelf Of(string? named, string folder)
    {
        if (named is not null)
        {
            string path = Path.GetFullPath(
                Directory.Exists(named) ? Path.Combine(named, Usual) : named,
                folder
            );
            return File.Exists(path)
                ? new([path])
                : throw new FileNotFoundException($"there is no job {named}.");
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
