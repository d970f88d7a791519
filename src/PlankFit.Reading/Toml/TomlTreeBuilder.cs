using System.Globalization;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Text;
using Tomlyn.Syntax;

namespace PlankFit.Reading.Toml;

/// <summary>From the parser's syntax to tables with places; keys and tables given twice are found here, since a message should name both lines.</summary>
internal sealed class TomlTreeBuilder(string file, List<Finding> findings)
{
    public TomlTable Build(DocumentSyntax document)
    {
        var root = new TomlTable(new(file, 1, 1));
        Fill(root, document.KeyValues);
        foreach (TableSyntaxBase syntax in document.Tables)
        {
            if (Path(syntax.Name) is not { Count: > 0 } path)
            {
                continue;
            }

            TomlTable? table =
                syntax is TableArraySyntax
                    ? Append(root, path, At(syntax))
                    : Open(root, path, At(syntax));
            if (table is not null)
            {
                Fill(table, syntax.Items);
            }
        }

        return root;
    }

    private TomlTable? Open(TomlTable root, List<string> path, Place at)
    {
        TomlTable? table = Descend(root, path, at);
        if (table is { Opened: true })
        {
            Fault(
                at,
                $"[{string.Join('.', path)}] is given twice, first on line {Line(table.At)}: put both together"
            );
        }

        if (table is not null)
        {
            table.Opened = true;
        }

        return table;
    }

    private TomlTable? Append(TomlTable root, List<string> path, Place at)
    {
        if (Descend(root, path[..^1], at) is not { } parent)
        {
            return null;
        }

        string key = path[^1];
        if (parent.Find(key) is not { } entry)
        {
            entry = new(key, at, new TomlArray(at, [], OfTables: true));
            parent.Add(entry);
        }

        if (entry.Value is not TomlArray { OfTables: true } array)
        {
            Fault(
                at,
                $"[[{string.Join('.', path)}]] is already given in another form on line {Line(entry.At)}"
            );
            return null;
        }

        var table = new TomlTable(at) { Opened = true };
        array.Items.Add(table);
        return table;
    }

    /// <summary>The table at the path, made where it is not there yet; the last of an array of tables where the path goes through one.</summary>
    private TomlTable? Descend(TomlTable from, List<string> path, Place at)
    {
        foreach (string key in path)
        {
            if (from.Find(key) is not { } entry)
            {
                entry = new(key, at, new TomlTable(at));
                from.Add(entry);
            }

            switch (entry.Value)
            {
                case TomlTable table:
                    from = table;
                    break;
                case TomlArray { OfTables: true, Items: [.., TomlTable last] }:
                    from = last;
                    break;
                default:
                    Fault(
                        at,
                        $"\"{key}\" is already given as a value on line {Line(entry.At)}: it cannot be a table as well"
                    );
                    return null;
            }
        }

        return from;
    }

    private void Fill(TomlTable table, SyntaxList<KeyValueSyntax> items)
    {
        foreach (KeyValueSyntax item in items)
        {
            Put(table, item);
        }
    }

    private void Put(TomlTable table, KeyValueSyntax? item)
    {
        if (
            item?.Key is not { } name
            || item.Value is not { } value
            || Path(name) is not { Count: > 0 } path
            || Node(value) is not { } node
        )
        {
            return;
        }

        Place at = At(item);
        if (Descend(table, path[..^1], at) is not { } holder)
        {
            return;
        }

        if (holder.Find(path[^1]) is { } first)
        {
            Fault(at, $"\"{path[^1]}\" is given twice, first on line {Line(first.At)}: keep one");
            return;
        }

        holder.Add(new(path[^1], at, node));
    }

    private TomlNode? Node(ValueSyntax value)
    {
        Place at = At(value);
        switch (value)
        {
            case StringValueSyntax s:
                return new TomlString(at, s.Value ?? "");
            case IntegerValueSyntax i:
                return Number(at, i.Token?.Text, i.Value);
            case FloatValueSyntax f:
                return Number(at, f.Token?.Text, f.Value);
            case BooleanValueSyntax b:
                return new TomlOther(at, b.Value ? "true" : "false", "a truth value");
            case ArraySyntax array:
                List<TomlNode> items = [];
                foreach (ArrayItemSyntax item in array.Items)
                {
                    if (item.Value is { } v && Node(v) is { } node)
                    {
                        items.Add(node);
                    }
                }

                return new TomlArray(at, items, OfTables: false);
            case InlineTableSyntax inline:
                var table = new TomlTable(at) { Opened = true };
                foreach (InlineTableItemSyntax item in inline.Items)
                {
                    Put(table, item.KeyValue);
                }

                return table;
            default:
                return new TomlOther(at, value.ToString()?.Trim() ?? "", "a date or time");
        }
    }

    private static TomlNumber Number(Place at, string? text, double value)
    {
        string written = text?.Trim() ?? value.ToString(CultureInfo.InvariantCulture);
        string digits = written.Replace("_", "", StringComparison.Ordinal);
        return decimal.TryParse(
            digits,
            NumberStyles.Float,
            CultureInfo.InvariantCulture,
            out decimal exact
        )
            ? new(at, written, value, exact)
            : new(at, written, value, Math.Abs(value) < 1e15 ? (decimal)value : null);
    }

    private static List<string> Path(KeySyntax? key)
    {
        List<string> path = [];
        if (key is null || Name(key.Key) is not { } first)
        {
            return path;
        }

        path.Add(first);
        foreach (DottedKeyItemSyntax item in key.DotKeys)
        {
            if (Name(item.Key) is not { } next)
            {
                return [];
            }

            path.Add(next);
        }

        return path;
    }

    private static string? Name(BareKeyOrStringValueSyntax? key) =>
        key switch
        {
            BareKeySyntax bare => bare.Key?.Text?.Trim(),
            StringValueSyntax quoted => quoted.Value,
            _ => null,
        };

    private Place At(SyntaxNode node) =>
        new(file, node.Span.Start.Line + 1, node.Span.Start.Column + 1);

    private static string Line(Place at) => at.Line.ToString(CultureInfo.InvariantCulture);

    private void Fault(Place at, string message) =>
        findings.Add(new(Severity.Error, at.ToString(), message));
}
