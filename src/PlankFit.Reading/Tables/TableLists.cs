using System.Collections.Immutable;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Text;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Tables;

/// <summary>Values of a table that are lists, with every fault of their entries.</summary>
internal static class TableLists
{
    /// <summary>A list of texts that the builder chose; what will not do is a fault, and left out.</summary>
    public static ImmutableArray<(string Text, Place At)> Texts(this TableReader table, ListKey key)
    {
        if (table.Find(key) is not { } entry)
        {
            return [];
        }

        if (entry.Value is not TomlArray { OfTables: false } array)
        {
            table.Wrong(key, "must be a list of texts: [\"bilge diagonal\"]");
            return [];
        }

        if (table.TooMany(key.Name, array, key.Most))
        {
            return [];
        }

        ImmutableArray<(string, Place)>.Builder texts = ImmutableArray.CreateBuilder<(
            string,
            Place
        )>();
        foreach (TomlNode item in array.Items)
        {
            if (item is not TomlString text || string.IsNullOrWhiteSpace(text.Value))
            {
                table.Faults.Error(
                    item.At,
                    $"{key.Name}: {Written.Of(item)} must be a text in quotes"
                );
            }
            else if (Name.Fault(text.Value) is { } fault)
            {
                table.Faults.NoName(item.At, $"{key.Name}: {Written.Of(item)}: {fault}");
            }
            else
            {
                texts.Add((text.Value, text.At));
            }
        }

        return texts.ToImmutable();
    }

    /// <summary>A list of plain numbers within the key's limits; null where the key is absent or anything in it is wrong, which is then written down.</summary>
    public static ImmutableArray<double>? Numbers(this TableReader table, NumbersKey key)
    {
        if (table.Find(key) is not { } entry)
        {
            return null;
        }

        if (
            entry.Value is not TomlArray { OfTables: false, Items.Count: > 0 } array
            || array.Items.Any(i => Of(i) is not { } value || !key.Limits.Hold(value))
        )
        {
            table.Wrong(entry, key.Accepted);
            return null;
        }

        return table.TooMany(key.Name, array, key.Most)
            ? null
            : [.. array.Items.Select(i => Of(i)!.Value)];

        double? Of(TomlNode item) =>
            item switch
            {
                TomlNumber number => number.Value,
                TomlString text => Quantity.Read(text.Value, key.Units) is { } read
                    ? read.Number * read.Factor
                    : null,
                _ => null,
            };
    }

    /// <summary>The tables of [[key]], with their numbers in their names.</summary>
    public static ImmutableArray<TableReader> Tables(this TableReader table, TablesKey key)
    {
        if (table.Find(key) is not { } entry)
        {
            return [];
        }

        if (entry.Value is not TomlArray array)
        {
            table.Faults.Error(
                entry.At,
                $"\"{key.Name}\" is given once; it is one of several: write {key.Line} in double brackets"
            );
            return entry.Value is TomlTable single
                ? [table.Inner(single, $"[{key.Head}]", key)]
                : [];
        }

        if (table.TooMany(key.Head, array, key.Most))
        {
            return [];
        }

        ImmutableArray<TableReader>.Builder tables = ImmutableArray.CreateBuilder<TableReader>();
        foreach (TomlNode item in array.Items)
        {
            if (item is TomlTable inner)
            {
                tables.Add(table.Inner(inner, $"{key.Line} {tables.Count + 1}", key));
            }
            else
            {
                table.Faults.Error(
                    item.At,
                    $"{key.Name}: {Written.Of(item)} must be a table: {key.Line}"
                );
            }
        }

        return tables.ToImmutable();
    }

    /// <summary>Whether the list is longer than it may be, which is then written down at the first entry that is too many.</summary>
    public static bool TooMany(this TableReader table, string shownAs, TomlArray array, int most)
    {
        if (array.Items.Count <= most)
        {
            return false;
        }

        table.Faults.Error(
            array.Items[most].At,
            Bounds.Beyond(
                array.Items.Count,
                most,
                array.OfTables ? $"[[{shownAs}]]" : $"entries in {shownAs}"
            )
        );
        return true;
    }
}
