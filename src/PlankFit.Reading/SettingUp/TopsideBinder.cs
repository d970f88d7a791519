using System.Collections.Immutable;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.SettingUp;

/// <summary>[setting-up.topside]: its thickness, which skin laps which, and how it stands at the chine.</summary>
internal static class TopsideBinder
{
    public static TopsideSpec? Bind(
        TableReader settingUp,
        LengthUnit units,
        ImmutableArray<NamedLine>.Builder lines,
        ImmutableArray<NamedLine>.Builder stations
    )
    {
        if (settingUp.Table(SettingUpKeys.Topside) is not { } table)
        {
            return null;
        }

        double? thickness = table.Length(TopsideKeys.Thickness, units);
        ChineLap? lap = table.Choice(TopsideKeys.Lap);
        TopsideSlope? slope = Slope(table, lines, stations);
        double? mitred = table.Length(TopsideKeys.MitreForwardOf, units);
        table.Close();
        return thickness is { } mm && lap is { } which && slope is not null
            ? new(mm, which, slope) { MitreForwardOfMm = mitred }
            : null;
    }

    private static TopsideSlope? Slope(
        TableReader table,
        ImmutableArray<NamedLine>.Builder lines,
        ImmutableArray<NamedLine>.Builder stations
    )
    {
        bool drawn = table.Has(TopsideKeys.Sheer),
            given = table.Has(TopsideKeys.Flare);
        if (drawn == given)
        {
            table.Faults.Missing(
                table.At,
                $"{table.Name}: say how the topside stands at the chine with one of sheer (a line of the offsets, to which its sections run straight from the chine) or flare ({TopsideKeys.FlareEven.Accepted})"
            );
            return null;
        }

        if (drawn)
        {
            if (table.Text(TopsideKeys.Sheer) is not { } name)
            {
                return null;
            }

            lines.Add(new("sheer", name, table.PlaceOf(TopsideKeys.Sheer)) { Table = table.Name });
            return new TopsideSlope.ToLine(name);
        }

        if (table.Find(TopsideKeys.Flare)!.Value is not TomlArray)
        {
            return table.Number(TopsideKeys.FlareEven) is { } even
                ? new TopsideSlope.Flare([new(null, even)])
                : null;
        }

        ImmutableArray<FlareAt>.Builder read = ImmutableArray.CreateBuilder<FlareAt>();
        ImmutableArray<TableReader> rows = table.Tables(TopsideKeys.FlareRows);
        foreach (TableReader row in rows)
        {
            string? station = row.Text(TopsideKeys.Station);
            double? degrees = row.Number(TopsideKeys.Degrees);
            if (station is not null)
            {
                if (read.Any(f => f.Station == station))
                {
                    row.Wrong(TopsideKeys.Station, "is given twice");
                }

                stations.Add(
                    new("station", station, row.PlaceOf(TopsideKeys.Station)) { Table = row.Name }
                );
            }

            if (station is not null && degrees is { } d)
            {
                read.Add(new(station, d));
            }

            row.Close();
        }

        if (rows.IsEmpty)
        {
            table.Wrong(TopsideKeys.Flare, "names no station: { station = \"4\", degrees = 12 }");
        }

        return read.Count > 0 ? new TopsideSlope.Flare(read.ToImmutable()) : null;
    }
}
