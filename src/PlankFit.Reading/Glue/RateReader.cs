using PlankFit.Planking.Glue.Mixing;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Glue;

/// <summary>How much of a mix lies on an area, as it is written: by mass, or by how far a volume of it goes.</summary>
internal static class RateReader
{
    /// <summary>The least, the usual and the most, g/m².</summary>
    /// <param name="kgPerLitre">Of what is put on; null where nothing says.</param>
    /// <returns>Null where any of it will not do, which is then written down.</returns>
    public static Estimate? Of(TableReader table, RatesKey key, double? kgPerLitre)
    {
        if (table.Find(key) is not { } entry)
        {
            if (key.Required)
            {
                table.Missing(key, key.Accepted);
            }

            return null;
        }

        if (entry.Value is not TomlArray { OfTables: false, Items.Count: 3 } array)
        {
            table.Wrong(entry, key.Accepted);
            return null;
        }

        double?[] read = [.. array.Items.Select(i => One(table, key, i, kgPerLitre))];
        if (read is not [{ } least, { } usual, { } most])
        {
            return null;
        }

        if (least <= usual && usual <= most)
        {
            return new(least, usual, most);
        }

        table.Wrong(
            entry,
            array.Items.All(i =>
                i is TomlString text && Quantity.Read(text.Value, AreaUnits.Spread) is not null
            )
                ? "the farther it goes the less lies on the area: write the farthest first, then the usual, then the least far"
                : "the least first, then the usual, then the most"
        );
        return null;
    }

    private static double? One(TableReader table, RatesKey key, TomlNode item, double? kgPerLitre)
    {
        double? gsm = null;
        switch (item)
        {
            case TomlNumber number:
                gsm = number.Value;
                break;
            case TomlString text when Quantity.Read(text.Value, AreaUnits.OfMix) is { } mass:
                gsm = mass.Number * mass.Factor;
                break;
            case TomlString text when Quantity.Read(text.Value, AreaUnits.Spread) is { } spread:
                if (kgPerLitre is not { } dense)
                {
                    Wrong(
                        "how far a volume goes is a mass only by its density, and no table of the job gives that: write grams a square metre, or \"4 oz/yd2\""
                    );
                    return null;
                }

                gsm = 1000 * dense / (spread.Number * spread.Factor);
                break;
            case TomlString { Value: var words } when IsOfNoCountry(words):
                Wrong(
                    "a US gallon holds 3.785 litres and an imperial one 4.546: say which, \"300 ft2/US gal\" or \"300 ft2/imp gal\", and quarts likewise"
                );
                return null;
        }

        if (gsm is { } found && key.Limits.Hold(found))
        {
            return found;
        }

        Wrong(gsm is null ? key.Accepted : $"must come to {key.Limits.InWords(Limits.Plain)} g/m2");
        return null;

        void Wrong(string what) =>
            table.Faults.Error(item.At, $"{table.Name} {key.Name}: {Written.Of(item)}: {what}");
    }

    private static bool IsOfNoCountry(string text) =>
        new[] { "gal", "gallon", "qt", "quart" }.Any(u =>
            text.TrimEnd().EndsWith("/" + u, StringComparison.Ordinal)
        );
}
