using System.Collections.Immutable;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Help;

/// <summary>A key at its place in the job file.</summary>
/// <param name="Path">With the tables that it lies in: "layer.lap.width".</param>
/// <param name="In">The keys that lead there, the outermost first.</param>
public sealed record KeyPath(string Path, JobKey Key, ImmutableArray<KeyPath> In)
{
    /// <summary>The keys of the file, each followed by those of its table.</summary>
    public static readonly ImmutableArray<KeyPath> All = [.. Within(JobKeys.File, [])];

    /// <summary>The key's table; null for one that has none.</summary>
    public JobTable? Table =>
        Key switch
        {
            OfTablesKey of => of.Table,
            EitherKey either => either.Other.Table,
            _ => null,
        };

    /// <summary>A table with a head of its own, or several.</summary>
    public bool IsHeaded => Key is TablesKey { Head: not null } or TableKey { Head: not null };

    /// <summary>Those directly within.</summary>
    public IEnumerable<KeyPath> Inner => All.Where(k => k.In.LastOrDefault()?.Path == Path);

    private static IEnumerable<KeyPath> Within(JobTable table, ImmutableArray<KeyPath> above)
    {
        foreach (JobKey key in table.Keys)
        {
            string path = above.IsEmpty ? key.Name : $"{above[^1].Path}.{key.Name}";
            var here = new KeyPath(path, key, above);
            yield return here;
            if (here.Table is { } inner)
            {
                foreach (KeyPath below in Within(inner, above.Add(here)))
                {
                    yield return below;
                }
            }
        }
    }
}
