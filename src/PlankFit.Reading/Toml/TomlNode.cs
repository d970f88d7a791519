using PlankFit.Reading.Text;

namespace PlankFit.Reading.Toml;

/// <summary>A value of a TOML file with its place, so that every fault can say its line and column.</summary>
internal abstract record TomlNode(Place At);

internal sealed record TomlString(Place At, string Value) : TomlNode(At);

/// <param name="Text">As written.</param>
internal sealed record TomlNumber(Place At, string Text, double Value, decimal? Exact)
    : TomlNode(At);

/// <summary>A truth value or a date: nothing that a job takes, kept for the message.</summary>
internal sealed record TomlOther(Place At, string Text, string What) : TomlNode(At);

/// <param name="OfTables">Written as [[name]].</param>
internal sealed record TomlArray(Place At, List<TomlNode> Items, bool OfTables) : TomlNode(At);

/// <summary>A table in the making and when made: keys in the order of the file.</summary>
internal sealed record TomlTable(Place At) : TomlNode(At)
{
    private readonly List<TomlEntry> entries = [];
    private readonly Dictionary<string, TomlEntry> byKey = new(StringComparer.Ordinal);

    public IReadOnlyList<TomlEntry> Entries => entries;

    /// <summary>Opened by its own [name]; a second one is a fault.</summary>
    public bool Opened { get; set; }

    public TomlEntry? Find(string key) => byKey.GetValueOrDefault(key);

    public void Add(TomlEntry entry)
    {
        entries.Add(entry);
        byKey.Add(entry.Key, entry);
    }
}

internal sealed record TomlEntry(string Key, Place At, TomlNode Value);
