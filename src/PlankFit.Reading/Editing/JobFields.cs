using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Reading.Help;
using PlankFit.Reading.Keys;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace PlankFit.Reading.Editing;

/// <summary>Every value of a job file with its place in the text, and what may stand beside it.</summary>
public static class JobFields
{
    private static readonly ImmutableDictionary<string, JobKey> Described =
        KeyPath.All.ToImmutableDictionary(k => k.Path, k => k.Key);

    private static readonly ILookup<string, KeyPath> Within = KeyPath.All.ToLookup(k =>
        k.In.LastOrDefault()?.Path ?? ""
    );

    /// <summary>In the order of the file, what a table leaves out after what it has. Empty where the text cannot be read at all: its faults are the reader's to tell.</summary>
    /// <param name="text">Without a byte order mark, which would shift every place.</param>
    public static ImmutableArray<JobField> Of(string text)
    {
        try
        {
            return [.. Read(text)];
        }
        catch (Exception e) when (e is TomlException or ArgumentException)
        {
            // What the parser gives up on; see TomlText.
            return [];
        }
    }

    private static List<JobField> Read(string text)
    {
        DocumentSyntax document = SyntaxParser.Parse(text, "", validate: false);
        List<JobField> fields = [];
        if (document.HasErrors)
        {
            return fields;
        }

        var counts = new Dictionary<string, int>();
        foreach (TableSyntaxBase table in document.Tables)
        {
            string[] path = Names(table.Name);
            if (path.Length == 0)
            {
                continue;
            }

            string plain = string.Join('.', path);
            if (table is TableArraySyntax)
            {
                counts[plain] = counts.GetValueOrDefault(plain, -1) + 1;
            }

            string address = "";
            for (int i = 0; i < path.Length; i++)
            {
                string above = string.Join('.', path[..(i + 1)]);
                address +=
                    (i == 0 ? "" : ".")
                    + path[i]
                    + (counts.TryGetValue(above, out int n) ? Index(n) : "");
            }

            // The end of a line belongs to what stands on it, so that places are counted from the value or the head's name.
            SyntaxNode last = table.Items.LastOrDefault()?.Value ?? (SyntaxNode)table.Name!;
            List<JobField> own = [];
            foreach (KeyValueSyntax item in table.Items)
            {
                Add(own, text, address, plain, item);
            }

            fields.AddRange(own);
            fields.AddRange(LeftOut(text, address, plain, own, End(last)));
        }

        return fields;
    }

    /// <summary>Keys of the table that could be given and are not; tables of their own are not among them.</summary>
    private static IEnumerable<JobField> LeftOut(
        string text,
        string address,
        string plain,
        List<JobField> given,
        int end
    )
    {
        int newLine = text.IndexOf('\n', Math.Min(end, text.Length)),
            at = newLine < 0 ? text.Length : newLine + 1;
        var there = given.Select(f => f.Address).ToHashSet();
        return Within[plain]
            .Where(k =>
                k.Key is not OfTablesKey
                && !there.Contains($"{address}.{k.Key.Name}")
                && !there.Any(a =>
                    a.StartsWith($"{address}.{k.Key.Name}.", StringComparison.Ordinal)
                    || a.StartsWith($"{address}.{k.Key.Name}[", StringComparison.Ordinal)
                )
            )
            .Select(k => new JobField($"{address}.{k.Key.Name}", address, Plain(k.Key))
            {
                Line = 1 + text.AsSpan(0, at).Count('\n'),
                Span = (at, at),
            });
    }

    private static void Add(
        List<JobField> fields,
        string text,
        string table,
        string plain,
        KeyValueSyntax? item
    )
    {
        if (item?.Key is not { } name || item.Value is not { } value)
        {
            return;
        }

        string[] path = Names(name);
        if (path.Length == 0)
        {
            return;
        }

        string inTable = string.Join('.', [table, .. path[..^1]]),
            key = string.Join('.', [plain, .. path]);
        Add(fields, text, ($"{inTable}.{path[^1]}", inTable, key), value);
    }

    private static void Add(
        List<JobField> fields,
        string text,
        (string Address, string Table, string Key) at,
        ValueSyntax value
    )
    {
        switch (value)
        {
            case InlineTableSyntax inline:
                foreach (InlineTableItemSyntax item in inline.Items)
                {
                    Add(fields, text, at.Address, at.Key, item.KeyValue);
                }

                return;
            case ArraySyntax array when array.Items.Any(i => i.Value is InlineTableSyntax):
                int n = 0;
                foreach (ArrayItemSyntax item in array.Items)
                {
                    if (item.Value is { } one)
                    {
                        Add(fields, text, (at.Address + Index(n++), at.Address, at.Key), one);
                    }
                }

                return;
        }

        if (!Described.TryGetValue(at.Key, out JobKey? key))
        {
            return;
        }

        int from = value.Span.Start.Offset,
            to = End(value);
        fields.Add(
            new(at.Address, at.Table, Plain(key))
            {
                Written = value is StringValueSyntax s ? s.Value ?? "" : text[from..to],
                Line = value.Span.Start.Line + 1,
                Span = (from, to),
            }
        );
    }

    private static JobKey Plain(JobKey key) => key is EitherKey either ? either.Plain : key;

    private static int End(SyntaxNode node) => node.Span.End.Offset + 1;

    private static string Index(int n) => string.Create(CultureInfo.InvariantCulture, $"[{n}]");

    private static string[] Names(KeySyntax? key)
    {
        if (key is null)
        {
            return [];
        }

        string?[] names = [Name(key.Key), .. key.DotKeys.Select(d => Name(d.Key))];
        return names.All(n => n is { Length: > 0 }) ? [.. names.OfType<string>()] : [];
    }

    private static string? Name(BareKeyOrStringValueSyntax? key) =>
        key switch
        {
            BareKeySyntax bare => bare.Key?.Text?.Trim(),
            StringValueSyntax quoted => quoted.Value,
            _ => null,
        };
}
