using System.Collections.Immutable;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Help;

/// <summary>What can be said of the job file's tables and keys, in words.</summary>
public static class KeyHelp
{
    private const int NameWidth = 29;
    private const int TextWidth = 100;

    /// <summary>The lines about that table or key; all tables where none is named.</summary>
    /// <returns>Null where nothing has that name; <see cref="Nearest"/> has what was probably meant.</returns>
    public static ImmutableArray<string>? Of(string? name)
    {
        if (name is null)
        {
            return [.. Whole()];
        }

        string path = Path(name);
        KeyPath[] found =
        [
            .. KeyPath.All.Where(k => k.Path == path) is var exact && exact.Any()
                ? exact
                : KeyPath.All.Where(k => k.Key.Name == path),
        ];
        return found.Length == 0
            ? null
            : [.. found.SelectMany((k, i) => i == 0 ? One(k) : One(k).Prepend(""))];
    }

    /// <summary>The names of tables and keys that a mistyped one most likely stands for, at most three.</summary>
    public static ImmutableArray<string> Nearest(string name)
    {
        string path = Path(name),
            last = path.Split('.')[^1];
        string? whole = NearestName.Of(path, KeyPath.All.Select(k => k.Path)),
            key = NearestName.Of(last, KeyPath.All.Select(k => k.Key.Name));
        return
        [
            .. new[] { whole }
                .OfType<string>()
                .Concat(KeyPath.All.Where(k => k.Key.Name == key).Select(k => k.Path))
                .Distinct()
                .Take(3),
        ];
    }

    /// <summary>As somebody writes it who has the job before him: [[ends.zone]], or "ends.zone".</summary>
    private static string Path(string name) => name.Trim().Trim('[', ']', '"').Trim();

    private static IEnumerable<string> Whole()
    {
        yield return "The tables of a job file (job.toml) and their keys.";
        yield return "";
        yield return "A length is a number in the job's units, or a text with its own: \"9 mm\", \"3/8 in\", \"2 1/2 in\",";
        yield return "\"5'-4 3/4\\\"\", or feet-inches-eighths \"5-4-6\". Here lengths are in millimetres. Positions are along the";
        yield return "hull, in the sense of the table of offsets.";
        yield return "plankfit help layer tells of one table, plankfit help layer.width of one key.";
        foreach (KeyPath table in KeyPath.All.Where(k => k.IsHeaded))
        {
            yield return "";
            foreach (string line in Table(table))
            {
                yield return line;
            }
        }
    }

    private static IEnumerable<string> One(KeyPath key) =>
        key.IsHeaded
            ? Table(key)
                .Concat(key.Inner.Where(k => k.IsHeaded).SelectMany(k => Table(k).Prepend("")))
            : KeyWords.Of(key);

    private static IEnumerable<string> Table(KeyPath table)
    {
        yield return table.Key.Line + (table.Key.Required ? ", which every job has" : "");
        foreach (string line in TextLines.Of(table.Key.What, TextWidth))
        {
            yield return line;
        }

        if (table.Key.Default is { } usual)
        {
            foreach (string line in TextLines.Of("Where there is none: " + usual + ".", TextWidth))
            {
                yield return line;
            }
        }

        // Edges and moistures have their own tables in common: told once.
        var told = new HashSet<JobTable>();
        foreach (KeyPath key in table.Inner.Where(k => !k.IsHeaded))
        {
            IEnumerable<KeyPath> inner = key.Table is { } own && told.Add(own) ? key.Inner : [];
            foreach (
                string line in Short(key, "  ").Concat(inner.SelectMany(k => Short(k, "    ")))
            )
            {
                yield return line;
            }
        }
    }

    /// <summary>Name, what it is, kind and default.</summary>
    private static IEnumerable<string> Short(KeyPath key, string indent)
    {
        string usual =
            key.Key.Required ? "; must be given"
            : key.Key.Default is { } words ? $"; {words} where left out"
            : "";
        string name = indent + key.Key.Name;
        foreach (
            string line in TextLines.Of(
                $"{key.Key.What} ({key.Key.Kind}{usual})",
                TextWidth - NameWidth - 1
            )
        )
        {
            yield return $"{name.PadRight(NameWidth)} {line}";
            name = "";
        }
    }
}
