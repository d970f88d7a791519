using System.Collections.Immutable;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Units;
using PlankFit.Planking.Wood;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Jobs;

/// <summary>[timber] and [[timber.species]]: what the planks are made of, and how dry.</summary>
internal static class TimberBinder
{
    public static TimberSpec? Bind(TableReader? table, LengthUnit units)
    {
        if (table is null)
        {
            return null;
        }

        ImmutableArray<Species> woods = SpeciesBinder.Bind(
            table.Tables("species", "timber.species")
        );
        double? clamps = table.Length("clamp-spacing", units);
        if (clamps <= 0)
        {
            table.Wrong("clamp-spacing", "must be greater than 0");
        }

        var spec = new TimberSpec(woods)
        {
            Species = SpeciesBinder.Named(table, woods, "planks"),
            Workshop = MoistureOf(table, "workshop-moisture"),
            Service = MoistureOf(table, "service-moisture"),
            Grain =
                table.Choice(
                    "grain",
                    [("flat", Grain.Flat), ("quarter", Grain.Quarter)],
                    required: false
                ) ?? TimberSpec.Default.Grain,
            Grade =
                table.Choice(
                    "boards",
                    [("clear", BoardGrade.Clear), ("knotty", BoardGrade.Knotty)],
                    required: false
                ) ?? TimberSpec.Default.Grade,
            FaceGrain =
                table.Choice(
                    "face-grain",
                    [("along", FaceGrain.Along), ("across", FaceGrain.Across)],
                    required: false
                ) ?? TimberSpec.Default.FaceGrain,
            ClampSpacingMm = clamps ?? (LengthUnits.IsMetric(units) ? 300 : LengthUnits.MmPerFoot),
        };
        table.Close();
        return spec;
    }

    /// <summary>Percent, or the air in which the wood has come to rest.</summary>
    private static MoistureGiven? MoistureOf(TableReader table, string key)
    {
        const string accepted =
            "accepted: percent of the oven-dry weight from 0 to 30, or { temperature = \"20 C\", humidity = 50 }";
        if (table.Find(key) is not { } entry)
        {
            return null;
        }

        if (entry.Value is not TomlTable)
        {
            double? percent = table.Number(key, accepted);
            if (percent is < 0 or > Moisture.SaturationPercent)
            {
                table.Wrong(key, accepted);
                return null;
            }

            return percent is { } m ? new(m, null) : null;
        }

        TableReader air = table.Table(key, $"{table.Name} {key}")!;
        double? fahrenheit = Temperature(air);
        double? humidity = air.Number(
            "humidity",
            "accepted: relative humidity in percent, 0 to 98",
            required: true
        );
        if (humidity is < 0 or > 98)
        {
            air.Wrong("humidity", "accepted: relative humidity in percent, 0 to 98");
            humidity = null;
        }

        air.Close();
        return fahrenheit is { } f && humidity is { } h
            ? new(
                Moisture.AtRest(f, h / 100),
                $"at rest in air of {air.Text("temperature")} and {NumberText.Trimmed(h, 1)} % humidity"
            )
            : null;
    }

    private static double? Temperature(TableReader air)
    {
        const string accepted =
            "accepted: degrees with their scale, \"20 C\" or \"68 F\", from -20 to 70 C";
        if (air.Text("temperature", accepted) is not { } text)
        {
            return null;
        }

        if (Quantity.Read(text, [("C", 1), ("°C", 1), ("F", 2), ("°F", 2)]) is not { } read)
        {
            air.Wrong("temperature", accepted);
            return null;
        }

        double f = read.Factor == 1 ? Moisture.Fahrenheit(read.Number) : read.Number;
        if (f is < -4 or > 158)
        {
            air.Wrong("temperature", accepted);
            return null;
        }

        return f;
    }
}
