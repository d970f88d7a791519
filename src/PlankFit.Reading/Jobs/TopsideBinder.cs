using System.Collections.Immutable;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Jobs;

/// <summary>[setting-up.topside]: its thickness, which skin laps which, and how it stands at the chine.</summary>
internal static class TopsideBinder
{
    private const double ThickestMm = 300;

    private const string Degrees =
        "degrees off plumb, more than -60 and less than 80, positive where the topside spreads going up";

    public static TopsideSpec? Bind(
        TableReader settingUp,
        LengthUnit units,
        ImmutableArray<NamedLine>.Builder lines,
        ImmutableArray<NamedLine>.Builder stations
    )
    {
        if (settingUp.Table("topside", "[setting-up.topside]") is not { } table)
        {
            return null;
        }

        double? thickness = SettingUpBinder.Size(
            table,
            "thickness",
            units,
            ThickestMm,
            required: true
        );
        ChineLap? lap = table.Choice(
            "lap",
            [
                ("bottom laps topside", ChineLap.BottomLapsTopside),
                ("topside laps bottom", ChineLap.TopsideLapsBottom),
                ("mitre", ChineLap.Mitre),
            ],
            required: true
        );
        TopsideSlope? slope = Slope(table, lines, stations);
        double? mitred = table.Length("mitre-forward-of", units);
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
        bool drawn = table.Find("sheer") is not null,
            given = table.Find("flare") is not null;
        if (drawn == given)
        {
            table.Faults.Missing(
                table.At,
                $"{table.Name}: say how the topside stands at the chine with one of sheer (a line of the offsets, to which its sections run straight from the chine) or flare ({Degrees})"
            );
            return null;
        }

        if (drawn)
        {
            if (table.Text("sheer") is not { } name)
            {
                return null;
            }

            lines.Add(new("sheer", name, table.PlaceOf("sheer")) { Table = table.Name });
            return new TopsideSlope.ToLine(name);
        }

        if (table.Find("flare")!.Value is not TomlArray)
        {
            return Flare(table, "flare") is { } even
                ? new TopsideSlope.Flare([new(null, even)])
                : null;
        }

        var read = ImmutableArray.CreateBuilder<FlareAt>();
        ImmutableArray<TableReader> rows = table.Tables("flare", "setting-up.topside.flare");
        foreach (TableReader row in rows)
        {
            string? station = row.Text("station", "the name of a station of the table");
            double? degrees = Flare(row, "degrees");
            if (station is not null)
            {
                if (read.Any(f => f.Station == station))
                {
                    row.Wrong("station", "is given twice");
                }

                stations.Add(new("station", station, row.PlaceOf("station")) { Table = row.Name });
            }

            if (station is not null && degrees is { } d)
            {
                read.Add(new(station, d));
            }

            row.Close();
        }

        if (rows.IsEmpty)
        {
            table.Wrong("flare", "names no station: { station = \"4\", degrees = 12 }");
        }

        return read.Count > 0 ? new TopsideSlope.Flare(read.ToImmutable()) : null;
    }

    private static double? Flare(TableReader table, string key)
    {
        double? degrees = table.Number(key, Degrees, required: true);
        if (degrees is <= -60 or >= 80)
        {
            table.Wrong(key, Degrees);
            return null;
        }

        return degrees;
    }
}
