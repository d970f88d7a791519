using System.Collections.Immutable;
using PlankFit.Planking.Units;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Lengths;
using PlankFit.Reading.Text;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Tables;

/// <summary>A list of lengths, such as those in which stock comes.</summary>
internal static class LengthList
{
    /// <summary>The lengths in mm, the least first; empty where the key is absent or anything in it is wrong, which is then written down.</summary>
    public static ImmutableArray<double> Of(TableReader table, LengthsKey key, LengthUnit units)
    {
        switch (table.Find(key)?.Value)
        {
            case null:
                return [];
            case TomlArray { OfTables: false } array when table.TooMany(key.Name, array, key.Most):
                return [];
            case TomlArray { OfTables: false, Items.Count: > 0 } array:
                ImmutableArray<double?> read =
                [
                    .. array.Items.Select(item => One(table, key, item, units)),
                ];
                return read.Any(r => r is null) ? [] : [.. read.Select(r => r!.Value).Order()];
            default:
                table.Wrong(key, "must be a list of lengths: [2400, 3000]");
                return [];
        }
    }

    private static double? One(TableReader table, LengthsKey key, TomlNode item, LengthUnit units)
    {
        LengthReading reading = item switch
        {
            TomlString text => LengthNotation.Read(text.Value, units),
            TomlNumber { Exact: { } exact } => LengthNotation.OfNumber(exact, units),
            _ => LengthReading.Wrong("is not a length"),
        };
        string shown = item switch
        {
            TomlString text => Quoted.Of(text.Value),
            TomlNumber number => number.Text,
            _ => "an entry",
        };
        if (!reading.Ok)
        {
            table.Faults.Error(
                item.At,
                $"{table.Name} {key.Name}: {shown} {reading.Fault}; {LengthNotation.Accepted(units)}"
            );
            return null;
        }

        if (!(reading.Mm > 0))
        {
            table.Faults.Error(item.At, $"{table.Name} {key.Name}: {shown} must be greater than 0");
            return null;
        }

        return reading.Mm;
    }
}
