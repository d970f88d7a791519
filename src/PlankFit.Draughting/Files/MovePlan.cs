using System.Collections.Immutable;

namespace PlankFit.Draughting.Files;

/// <summary>What a run's files ask of a folder, looked through before anything is moved.</summary>
internal static class MovePlan
{
    /// <param name="before">The folder's list of files as it is.</param>
    /// <param name="news">The files of the run.</param>
    /// <param name="stale">What the same command wrote earlier and no longer does.</param>
    /// <param name="index">The new list of files, staged.</param>
    /// <exception cref="OutputException">Something is in the way that is not ours, or no longer what we wrote; all of it is named.</exception>
    public static MoveJournal Of(
        string folder,
        FileIndex before,
        IReadOnlyDictionary<string, FileMark> news,
        IReadOnlyCollection<string> stale,
        FileMark index
    )
    {
        ILookup<string, IndexedFile> listed = before.Files.ToLookup(
            f => f.Name,
            StringComparer.Ordinal
        );
        string[] names = [.. news.Keys.Concat(stale).Order(StringComparer.Ordinal)];
        var there = new InTheWay[names.Length];
        Parallel.For(0, names.Length, i => there[i] = InTheWay.At(folder, names[i]));
        var faults = new List<(string Name, string Why)>();
        ImmutableArray<FileMove>.Builder moves = ImmutableArray.CreateBuilder<FileMove>();
        foreach ((string? name, InTheWay found) in names.Zip(there))
        {
            FileMark? after = news.GetValueOrDefault(name);
            if (after is null && found.File is null)
            {
                continue; // gone already, or in its place stands something that is not ours
            }

            if ((found.Fault ?? NotOurs(found.File, listed[name].FirstOrDefault())) is { } fault)
            {
                faults.Add((name, fault));
            }

            moves.Add(new(name, found.File, after));
        }

        if (faults.Count > 0)
        {
            throw OutputException.Refused(folder, faults);
        }

        moves.Add(new(FileIndex.FileName, InTheWay.At(folder, FileIndex.FileName).File, index));
        return new(moves.ToImmutable(), NewFolders(folder, news.Keys));
    }

    private static string? NotOurs(FileMark? found, IndexedFile? listed) =>
        found is null || (listed is not null && (listed.Mark ?? found) == found) ? null
        : listed is null
            ? "a file of that name is there that PlankFit did not write. Move or rename it, or choose another folder."
        : "it was changed since PlankFit wrote it. Move it away to keep it, or delete it.";

    private static ImmutableArray<string> NewFolders(string folder, IEnumerable<string> names) =>
        [
            .. names
                .SelectMany(Above)
                .Distinct(StringComparer.Ordinal)
                .Where(above => !Directory.Exists(Path.Combine(folder, above)))
                .Order(StringComparer.Ordinal), // an outer folder's name is the beginning of the inner ones'
        ];

    /// <summary>The folders that a name goes through.</summary>
    private static IEnumerable<string> Above(string name)
    {
        for (int slash = name.IndexOf('/'); slash >= 0; slash = name.IndexOf('/', slash + 1))
        {
            yield return name[..slash];
        }
    }
}
