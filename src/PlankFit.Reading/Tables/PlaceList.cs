using System.Collections.Immutable;
using PlankFit.Planking.Units;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Lengths;
using PlankFit.Reading.Text;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Tables;

/// <summary>A list of positions or heights, of either sign, each with what the file writes: the name by which a builder knows it.</summary>
internal static class PlaceList
{
    /// <summary>In the file's order; empty where the key is absent or anything in it is wrong, which is then written down.</summary>
    public static ImmutableArray<(string Written, double Mm)> Of(
        TableReader table,
        PlacesKey key,
        LengthUnit units
    )
    {
        switch (table.Find(key)?.Value)
        {
            case null:
                return [];
            case TomlArray { OfTables: false } array when table.TooMany(key.Name, array, key.Most):
                return [];
            case TomlArray { OfTables: false } array:
                ImmutableArray<(string, double)>.Builder read = ImmutableArray.CreateBuilder<(
                    string,
                    double
                )>();
                foreach (TomlNode item in array.Items)
                {
                    if (One(table, key, item, units) is { } place)
                    {
                        read.Add(place);
                    }
                }

                return read.ToImmutable();
            default:
                table.Wrong(key, "must be a list of lengths: [2400, 3000]");
                return [];
        }
    }

    private static (string, double)? One(
        TableReader table,
        PlacesKey key,
        TomlNode item,
        LengthUnit units
    )
    {
        (string written, LengthReading reading) = item switch
        {
            TomlString text => (text.Value.Trim(), LengthNotation.Read(text.Value, units)),
            TomlNumber { Exact: { } exact } number => (
                number.Text,
                LengthNotation.OfNumber(exact, units)
            ),
            TomlNumber number => (number.Text, LengthReading.Wrong("is not a length")),
            _ => ("an entry", LengthReading.Wrong("is not a length")),
        };
        // What is written is the place's name on paper.
        string? fault = reading.Ok
            ? Name.Fault(written)
            : $"{reading.Fault}; {LengthNotation.Accepted(units)}";
        if (fault is null)
        {
            return (written, reading.Mm);
        }

        table.Faults.Error(item.At, $"{table.Name} {key.Name}: {Quoted.Of(written)} {fault}");
        return null;
    }
}
