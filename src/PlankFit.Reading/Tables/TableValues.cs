using PlankFit.Planking.Units;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Lengths;
using PlankFit.Reading.Text;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Tables;

/// <summary>Single values of a table, held to what their keys say.</summary>
internal static class TableValues
{
    /// <summary>A text that the builder chose; what <see cref="Name"/> does not take is a fault.</summary>
    public static string? Text(this TableReader table, TextKey key) =>
        table.Words(key, key.AskedFor);

    /// <summary>One of a few words.</summary>
    public static T? Choice<T>(this TableReader table, ChoiceKey<T> key)
        where T : struct
    {
        if (table.Words(key, key.Required ? key.Accepted : null) is not { } text)
        {
            return null;
        }

        foreach ((string word, T value) in key.Choices)
        {
            if (word == text)
            {
                return value;
            }
        }

        string? near = NearestName.Of(text, key.Words);
        table.Wrong(
            key,
            "is not known"
                + (near is null ? "" : $" (did you mean \"{near}\"?)")
                + "; "
                + key.Accepted
        );
        return null;
    }

    /// <summary>The same, or the key's default.</summary>
    public static T ChoiceOrDefault<T>(this TableReader table, ChoiceKey<T> key)
        where T : struct => table.Choice(key) ?? key.DefaultChoice ?? default;

    /// <summary>A length in mm, in the job's units or with its own.</summary>
    public static double? Length(this TableReader table, LengthKey key, LengthUnit units)
    {
        if (table.Find(key) is not { } entry)
        {
            if (key.Required)
            {
                table.Missing(key, LengthNotation.Accepted(units));
            }

            return null;
        }

        LengthReading reading = entry.Value switch
        {
            TomlString text => LengthNotation.Read(text.Value, units),
            TomlNumber { Exact: { } exact } => LengthNotation.OfNumber(exact, units),
            TomlNumber number => LengthReading.Wrong(
                double.IsFinite(number.Value) ? LengthFaults.TooLong : "is not a finite number"
            ),
            _ => LengthReading.Wrong("is not a length"),
        };
        if (!reading.Ok)
        {
            table.Wrong(entry, $"{reading.Fault}; {LengthNotation.Accepted(units)}");
            return null;
        }

        if (!key.Limits.Hold(reading.Mm))
        {
            table.Wrong(entry, key.BeyondIn(table.Faults.Shown));
        }
        else if (key.Likely is { } likely && !likely.Holds(reading.Mm))
        {
            table.Doubtful(
                key,
                likely.About(reading.Mm, mm => LengthText.FormatExact(mm, table.Faults.Shown)),
                likely.IsOfUnit
            );
        }

        return reading.Mm;
    }

    /// <summary>The same, or the key's default, which it must have.</summary>
    public static double LengthOrDefault(this TableReader table, LengthKey key, LengthUnit units) =>
        table.Length(key, units) ?? key.DefaultMm!.Value;

    public static double? Number(this TableReader table, NumberKey key)
    {
        if (table.Find(key) is not { } entry)
        {
            if (key.Required)
            {
                table.Missing(key, key.Accepted);
            }

            return null;
        }

        double? written = entry.Value switch
        {
            TomlNumber number => number.Value,
            TomlString text when Tables.Quantity.Read(text.Value, key.Units) is { } read =>
                read.Number * read.Factor,
            _ => null,
        };
        if (written is not { } value || !double.IsFinite(value))
        {
            table.Wrong(
                entry,
                (
                    written is not null ? "is not a finite number; "
                    : key.Units.IsEmpty ? "must be a plain number, without quotes or unit; "
                    : ""
                ) + key.Accepted
            );
            return null;
        }

        if (!key.Holds(value))
        {
            table.Wrong(entry, key.Beyond + key.Accepted);
        }
        else if (key.Likely is { } likely && !likely.Holds(value))
        {
            table.Doubtful(key, likely.Words);
        }

        return value;
    }

    /// <summary>The same, or the key's default, which it must have.</summary>
    public static double NumberOrDefault(this TableReader table, NumberKey key) =>
        table.Number(key) ?? key.DefaultValue!.Value;

    /// <summary>A number with or without its unit, in the first of the key's.</summary>
    public static double? Quantity(this TableReader table, QuantityKey key)
    {
        TomlEntry? entry = table.Find(key);
        double? value = entry?.Value switch
        {
            null => null,
            TomlString text => Tables.Quantity.Read(text.Value, key.Units) is { } read
                ? read.Number * read.Factor
                : double.NaN,
            _ => table.Number(
                new NumberKey(key.Name, key.Example, key.Kind, key.What)
                {
                    AcceptedWords = key.Accepted,
                }
            ),
        };
        if (value is not { } found)
        {
            return null;
        }

        if (!key.Limits.Hold(found))
        {
            table.Wrong(entry!, key.Accepted);
        }
        else if (!key.Likely.Holds(found))
        {
            table.Doubtful(key, key.Likely.Words, key.Likely.IsOfUnit);
        }

        return found;
    }

    /// <summary>true or false, without quotes.</summary>
    public static bool YesNo(this TableReader table, YesNoKey key)
    {
        switch (table.Find(key))
        {
            case null:
                return key.DefaultValue;
            case { Value: TomlOther { Text: "true" or "false" } truth }:
                return truth.Text == "true";
            case { } entry:
                table.Wrong(entry, "accepted: true or false, without quotes");
                return key.DefaultValue;
        }
    }

    private static string? Words(this TableReader table, JobKey key, string? askedFor)
    {
        if (table.Find(key) is not { } entry)
        {
            if (askedFor is not null)
            {
                table.Missing(key, askedFor);
            }

            return null;
        }

        if (entry.Value is not TomlString text)
        {
            table.Wrong(entry, "must be a text in quotes");
            return null;
        }

        if (string.IsNullOrWhiteSpace(text.Value))
        {
            table.Wrong(entry, "is empty");
            return null;
        }

        if (Name.Fault(text.Value) is { } fault)
        {
            table.Faults.NoName(text.At, $"{table.Name} {key.Name} = {Written.Of(text)}: {fault}");
            return null;
        }

        return text.Value;
    }
}
