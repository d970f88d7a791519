using System.Collections.Immutable;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Help;

/// <summary>One key in full.</summary>
internal static class KeyWords
{
    private const int TextWidth = 100;

    public static IEnumerable<string> Of(KeyPath at)
    {
        JobKey key = at.Key;
        yield return at.Path;
        foreach (string line in TextLines.Of(key.What, TextWidth))
        {
            yield return line;
        }

        yield return "";
        foreach ((string name, string? words) in Facts(at))
        {
            if (words is null)
            {
                continue;
            }

            string indent = "";
            foreach (string line in TextLines.Of(words, TextWidth - 15))
            {
                yield return indent.Length == 0 ? $"{name + ":", -15}{line}" : indent + line;
                indent = new string(' ', 15);
            }
        }

        yield return "";
        yield return "In the job:";
        foreach (string line in Example(at))
        {
            yield return "    " + line;
        }

        foreach (KeyPath inner in at.Inner)
        {
            yield return "";
            foreach (string line in Of(inner))
            {
                yield return line;
            }
        }
    }

    private static IEnumerable<(string Name, string? Words)> Facts(KeyPath at)
    {
        JobKey key = at.Key;
        yield return ("takes", Kind(key));
        yield return (
            "if left out",
            key.Required ? "must be given" : key.Default ?? "nothing, it may be"
        );
        yield return ("limits", key.LimitWords);
        yield return ("asked about", key.LikelyWords);
        yield return ("source", key.Source);
    }

    private static string Kind(JobKey key) =>
        key switch
        {
            LengthKey =>
                "a length: a number in the job's units, or a text with its own, such as \"9 mm\", \"3/8 in\" or \"5-4-6\"",
            LengthsKey =>
                "a list of lengths, each a number in the job's units, or a text with its own",
            PlacesKey =>
                "a list of positions, each a number in the job's units, or a text with its own",
            RatesKey =>
                $"a list of amounts on an area, each a number of grams a square metre, or a text with its unit: {Units(AreaUnits.OfMix)}, or how far a volume of it goes: {Units(AreaUnits.Spread)}",
            NumbersKey { Units.IsEmpty: false } numbers =>
                $"a list of {numbers.Unit}, each a number, or a text with its unit: {Units(numbers.Units)}",
            NumberKey { Units.IsEmpty: false } number =>
                $"a number of {number.Unit}, or a text with its unit: {Units(number.Units)}",
            NumberKey number => $"a number: {number.Unit}",
            QuantityKey quantity =>
                $"a number of {quantity.Units[0].Unit}, or a text with its unit: {Units(quantity.Units)}",
            EitherKey either => $"{Kind(either.Plain)}; or {either.Other.Kind} in braces",
            _ => key.Kind,
        };

    private static string Units(ImmutableArray<(string Unit, double Factor)> units) =>
        string.Join(", ", units.Select(u => u.Unit));

    private static IEnumerable<string> Example(KeyPath at)
    {
        if (at.In.LastOrDefault() is not { } table)
        {
            yield return at.Key.Line;
        }
        else if (table.IsHeaded)
        {
            yield return table.Key.Line;
            yield return at.Key.Line;
        }
        else
        {
            if (table.In.LastOrDefault() is { } headed)
            {
                yield return headed.Key.Line;
            }

            string inBraces = $"{{ {at.Key.Line} }}";
            yield return table.Key is EitherKey { Other: TablesKey }
                ? $"{table.Key.Name} = [{inBraces}]"
                : $"{table.Key.Name} = {inBraces}";
        }
    }
}
