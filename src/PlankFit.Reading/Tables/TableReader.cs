using PlankFit.Reading.Keys;
using PlankFit.Reading.Text;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Tables;

/// <summary>
/// Takes values out of one table by its described keys, and by nothing else, so that <see cref="Close"/> can name every other as unknown. Each getter returns
/// null where the key is absent or its value is none of its kind; the fault is then already written down. A figure beyond its key's limits is a fault too, and is
/// returned, so that what hangs on it is judged as well.
/// </summary>
/// <param name="name">How messages call the table.</param>
/// <param name="path">Its keys from the top of the file, with a point after each.</param>
internal sealed class TableReader(
    TomlTable table,
    string name,
    string path,
    JobTable keys,
    JobFaults faults
)
{
    public Place At => table.At;

    public string Name => name;

    public JobFaults Faults => faults;

    /// <exception cref="ArgumentException">The key is no key of the table.</exception>
    public TomlEntry? Find(JobKey key)
    {
        if (keys.Find(key.Name) is null)
        {
            throw new ArgumentException($"{name} is described without the key {key.Name}");
        }

        faults.Ask(path + key.Name);
        return table.Find(key.Name);
    }

    public bool Has(JobKey key) => Find(key) is not null;

    /// <summary>Whether the key's value is a table in braces or under a head.</summary>
    public bool HasTable(JobKey key) => Find(key)?.Value is TomlTable;

    public Place PlaceOf(JobKey key) => table.Find(key.Name)?.Value.At ?? table.At;

    /// <summary>Where each value stands, those of tables within in their turn.</summary>
    public IEnumerable<(string Path, Place At)> Places() => Places(table, path);

    /// <summary>The lines at which a key's tables begin, and those within them.</summary>
    public IEnumerable<(int Line, string Key)> Heads() =>
        table.Entries.SelectMany(e => Heads(e.Value).Select(line => (line, e.Key)));

    private static IEnumerable<(string Path, Place At)> Places(TomlTable table, string path) =>
        table.Entries.SelectMany(e =>
            e.Value is TomlTable inner
                ? Places(inner, $"{path}{e.Key}.").Prepend((path + e.Key, inner.At))
                : [(path + e.Key, e.Value.At)]
        );

    private static IEnumerable<int> Heads(TomlNode node) =>
        node switch
        {
            TomlTable inner => inner.Entries.SelectMany(e => Heads(e.Value)).Prepend(inner.At.Line),
            TomlArray { OfTables: true } several => several.Items.SelectMany(Heads),
            _ => [],
        };

    public void Missing(JobKey key, string accepted) =>
        faults.Missing(table.At, $"{name} has no \"{key.Name}\": {accepted}");

    /// <summary>The table of that key; null where there is none.</summary>
    /// <param name="own">The keys where those described are not all: names that the job itself gives.</param>
    public TableReader? Table(TableKey key, JobTable? own = null)
    {
        switch (Find(key))
        {
            case null:
                return null;
            case { Value: TomlTable inner }:
                return Inner(
                    inner,
                    key.Head is { } head ? $"[{head}]" : $"{name} {key.Name}",
                    own is null ? key : key with { Table = own }
                );
            case { } entry:
                Wrong(entry, $"must be a table: {key.Line}");
                return null;
        }
    }

    /// <summary>One of the tables of a key.</summary>
    public TableReader Inner(TomlTable inner, string shownAs, OfTablesKey key) =>
        new(inner, shownAs, path + key.Name + ".", key.Table, faults);

    /// <summary>The table of a key that takes one in braces as well as several.</summary>
    public TableReader InBraces(TablesKey key) =>
        Find(key)?.Value is TomlTable inner
            ? Inner(inner, $"{name} {key.Name}", key)
            : throw new ArgumentException($"{name} {key.Name} is no table in braces", nameof(key));

    public void Wrong(JobKey key, string what)
    {
        if (Find(key) is { } entry)
        {
            Wrong(entry, what);
        }
    }

    public void Doubtful(JobKey key, string what, bool isCause = false)
    {
        if (Find(key) is { } entry)
        {
            faults.Warning(
                entry.Value.At,
                $"{name} {key.Name} = {Written.Of(entry.Value)}: {what}",
                isCause
            );
        }
    }

    /// <summary>Names every key that the table does not have.</summary>
    public void Close()
    {
        string[] known = [.. keys.Keys.Select(k => k.Name)];
        foreach (TomlEntry entry in table.Entries.Where(e => !known.Contains(e.Key)))
        {
            string? near = NearestName.Of(entry.Key, known);
            faults.Unknown(
                entry.At,
                $"{Quoted.Of(entry.Key)} is not known in {name}"
                    + (near is null ? "" : $"; did you mean \"{near}\"?")
                    + $" (known: {string.Join(", ", known)})"
            );
        }
    }

    public void Wrong(TomlEntry entry, string what) =>
        faults.Error(entry.Value.At, $"{name} {entry.Key} = {Written.Of(entry.Value)}: {what}");
}
