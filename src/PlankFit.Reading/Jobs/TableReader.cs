using PlankFit.Planking.Units;
using PlankFit.Reading.Lengths;
using PlankFit.Reading.Text;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Jobs;

/// <summary>
/// Takes values out of one table by key and remembers which keys were asked for, so that <see cref="Close"/> can name every other as unknown. Each
/// getter returns null where the key is absent or its value is wrong; the fault is then already written down.
/// </summary>
internal sealed class TableReader(TomlTable table, string name, JobFaults faults)
{
    private readonly List<string> known = [];

    public Place At => table.At;

    public string Name => name;

    public JobFaults Faults => faults;

    public TomlEntry? Find(string key)
    {
        known.Add(key);
        return table.Find(key);
    }

    public Place PlaceOf(string key) => table.Find(key)?.Value.At ?? table.At;

    public void Missing(string key, string accepted) =>
        faults.Missing(table.At, $"{name} has no \"{key}\": {accepted}");

    /// <summary>A text that the builder chose; what <see cref="PlankFit.Reading.Text.Name"/> does not take is a fault.</summary>
    public string? Text(string key, string? requiredAs = null)
    {
        if (Find(key) is not { } entry)
        {
            if (requiredAs is not null)
            {
                Missing(key, requiredAs);
            }

            return null;
        }

        if (entry.Value is not TomlString text)
        {
            Wrong(entry, "must be a text in quotes");
            return null;
        }

        if (string.IsNullOrWhiteSpace(text.Value))
        {
            Wrong(entry, "is empty");
            return null;
        }

        if (PlankFit.Reading.Text.Name.Fault(text.Value) is { } fault)
        {
            faults.NoName(text.At, $"{name} {key} = {Written.Of(text)}: {fault}");
            return null;
        }

        return text.Value;
    }

    /// <summary>One of a few words.</summary>
    public T? Choice<T>(string key, IReadOnlyList<(string Word, T Value)> choices, bool required)
        where T : struct
    {
        string accepted = "accepted: " + string.Join(" or ", choices.Select(c => $"\"{c.Word}\""));
        if (Text(key, required ? accepted : null) is not { } text)
        {
            return null;
        }

        foreach ((string word, T value) in choices)
        {
            if (word == text)
            {
                return value;
            }
        }

        string? near = NearestName.Of(text, choices.Select(c => c.Word));
        Wrong(
            table.Find(key)!,
            "is not known" + (near is null ? "" : $" (did you mean \"{near}\"?)") + "; " + accepted
        );
        return null;
    }

    /// <summary>A length in mm, in the job's units or with its own.</summary>
    public double? Length(string key, LengthUnit units, bool required = false)
    {
        if (Find(key) is not { } entry)
        {
            if (required)
            {
                Missing(key, LengthNotation.Accepted(units));
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
            Wrong(entry, $"{reading.Fault}; {LengthNotation.Accepted(units)}");
            return null;
        }

        return reading.Mm;
    }

    public double? Number(string key, string accepted, bool required = false)
    {
        if (Find(key) is not { } entry)
        {
            if (required)
            {
                Missing(key, accepted);
            }

            return null;
        }

        if (entry.Value is TomlNumber number && double.IsFinite(number.Value))
        {
            return number.Value;
        }

        Wrong(
            entry,
            (
                entry.Value is TomlNumber
                    ? "is not a finite number; "
                    : "must be a plain number, without quotes or unit; "
            ) + accepted
        );
        return null;
    }

    /// <summary>true or false, without quotes.</summary>
    public bool? YesNo(string key)
    {
        switch (Find(key))
        {
            case null:
                return null;
            case { Value: TomlOther { Text: "true" or "false" } truth }:
                return truth.Text == "true";
            case { } entry:
                Wrong(entry, "accepted: true or false, without quotes");
                return null;
        }
    }

    public TableReader? Table(string key, string shownAs)
    {
        switch (Find(key)?.Value)
        {
            case null:
                return null;
            case TomlTable inner:
                return new(inner, shownAs, faults);
            default:
                Wrong(
                    table.Find(key)!,
                    $"must be a table: {(shownAs.StartsWith('[') && shownAs.EndsWith(']') ? shownAs : key + " = { cut = \"fit\" }")}"
                );
                return null;
        }
    }

    public void Wrong(string key, string what)
    {
        if (table.Find(key) is { } entry)
        {
            Wrong(entry, what);
        }
    }

    public void Doubtful(string key, string what)
    {
        if (table.Find(key) is { } entry)
        {
            faults.Warning(entry.Value.At, $"{name} {key} = {Written.Of(entry.Value)}: {what}");
        }
    }

    /// <summary>Names every key that nobody asked for.</summary>
    public void Close()
    {
        foreach (TomlEntry entry in table.Entries.Where(e => !known.Contains(e.Key)))
        {
            string? near = NearestName.Of(entry.Key, known);
            faults.Unknown(
                entry.At,
                $"{Quoted.Of(entry.Key)} is not known in {name}"
                    + (near is null ? "" : $"; did you mean \"{near}\"?")
                    + $" (known: {string.Join(", ", known.Distinct())})"
            );
        }
    }

    private void Wrong(TomlEntry entry, string what) =>
        faults.Error(entry.Value.At, $"{name} {entry.Key} = {Written.Of(entry.Value)}: {what}");
}
