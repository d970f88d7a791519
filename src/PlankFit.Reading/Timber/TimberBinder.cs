using System.Collections.Immutable;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Units;
using PlankFit.Planking.Wood;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Timber;

/// <summary>[timber] and [[timber.species]]: what the planks are made of, and how dry.</summary>
internal static class TimberBinder
{
    public static TimberSpec? Bind(TableReader? table, LengthUnit units)
    {
        if (table is null)
        {
            return null;
        }

        ImmutableArray<Species> woods = SpeciesBinder.Bind(table.Tables(TimberKeys.Species));
        var spec = new TimberSpec(woods)
        {
            Species = SpeciesBinder.Named(table, woods, TimberKeys.Planks),
            Workshop = MoistureOf(table, TimberKeys.WorkshopPercent, TimberKeys.WorkshopAir),
            Service = MoistureOf(table, TimberKeys.ServicePercent, TimberKeys.ServiceAir),
            Grain = table.ChoiceOrDefault(TimberKeys.Sawn),
            Grade = table.ChoiceOrDefault(TimberKeys.Boards),
            FaceGrain = table.ChoiceOrDefault(TimberKeys.Face),
            ClampSpacingMm =
                table.Length(TimberKeys.Clamps, units)
                ?? (
                    LengthUnits.IsMetric(units)
                        ? TimberSpec.Default.ClampSpacingMm
                        : LengthUnits.MmPerFoot
                ),
        };
        table.Close();
        return spec;
    }

    /// <summary>Percent, or the air in which the wood has come to rest.</summary>
    private static MoistureGiven? MoistureOf(TableReader table, NumberKey inPercent, TableKey inAir)
    {
        if (!table.HasTable(inAir))
        {
            return table.Number(inPercent) is { } percent ? new(percent, null) : null;
        }

        TableReader air = table.Table(inAir)!;
        double? fahrenheit = Temperature(air),
            humidity = air.Number(TimberKeys.Humidity);
        air.Close();
        return fahrenheit is { } f && humidity is { } h && TimberKeys.Humidity.Limits.Hold(h)
            ? new(
                Moisture.AtRest(f, h / 100),
                $"at rest in air of {air.Text(TimberKeys.Temperature)} and {NumberText.Trimmed(h, 1)} % humidity"
            )
            : null;
    }

    private static double? Temperature(TableReader air)
    {
        if (air.Text(TimberKeys.Temperature) is not { } text)
        {
            return null;
        }

        if (
            Quantity.Read(text, [("C", 1), ("°C", 1), ("F", 2), ("°F", 2)]) is not { } read
            || !TimberKeys.Celsius.Hold(
                read.Factor == 1 ? read.Number : Moisture.Celsius(read.Number)
            )
        )
        {
            air.Wrong(TimberKeys.Temperature, TimberKeys.Temperature.AskedFor!);
            return null;
        }

        return read.Factor == 1 ? Moisture.Fahrenheit(read.Number) : read.Number;
    }
}
