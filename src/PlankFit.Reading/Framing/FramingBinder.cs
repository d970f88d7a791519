using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Framing;

/// <summary>[[behind]]: what lies behind the planks.</summary>
internal static class FramingBinder
{
    private const string WhereIsIt =
        "say where its centre runs with one of line, from-keel, from-chine, position or station; a place with a length has from-keel or from-chine and position or station";

    public static FramingBinding Bind(ImmutableArray<TableReader> tables, LengthUnit units)
    {
        ImmutableArray<FramingSpec>.Builder specs = ImmutableArray.CreateBuilder<FramingSpec>();
        ImmutableArray<NamedLine>.Builder lines = ImmutableArray.CreateBuilder<NamedLine>();
        ImmutableArray<NamedLine>.Builder stations = ImmutableArray.CreateBuilder<NamedLine>();
        foreach (TableReader table in tables)
        {
            if (One(table, units, lines, stations) is { } spec)
            {
                if (specs.Any(s => s.Name == spec.Name))
                {
                    table.Wrong(FramingKeys.Name, "another thing behind has this name already");
                }

                specs.Add(spec);
            }

            table.Close();
        }

        return new(specs.ToImmutable(), lines.ToImmutable(), stations.ToImmutable());
    }

    private static FramingSpec? One(
        TableReader table,
        LengthUnit units,
        ImmutableArray<NamedLine>.Builder lines,
        ImmutableArray<NamedLine>.Builder stations
    )
    {
        string? name = table.Text(FramingKeys.Name);
        FramingKind? kind = table.Choice(FramingKeys.Kind);
        ImmutableArray<Side> sides = table.Choice(FramingKeys.Sides) ?? [Side.Starboard, Side.Port];
        double? width = table.Length(FramingKeys.Width, units),
            length = table.Length(FramingKeys.Length, units);
        FramingLine? line = Line(table, units, length, lines, stations);
        double? from = table.Length(FramingKeys.From, units),
            to = table.Length(FramingKeys.To, units),
            outFrom = table.Length(FramingKeys.OutFrom, units),
            outTo = table.Length(FramingKeys.OutTo, units);
        InOrder(table, FramingKeys.From, from, FramingKeys.To, to);
        InOrder(table, FramingKeys.OutFrom, outFrom, FramingKeys.OutTo, outTo);
        if (line is null || name is null || kind is null || width is null)
        {
            return null;
        }

        var spec = new FramingSpec(name, kind.Value, line, width.Value, from, to)
        {
            Only = sides.Length == 1 ? sides[0] : null,
            OutFromMm = outFrom,
            OutToMm = outTo,
            LengthMm = length,
        };
        OnlyWhere(table, spec);
        return spec;
    }

    private static FramingLine? Line(
        TableReader table,
        LengthUnit units,
        double? length,
        ImmutableArray<NamedLine>.Builder lines,
        ImmutableArray<NamedLine>.Builder stations
    )
    {
        string? drawn = table.Text(FramingKeys.Line),
            station = table.Text(FramingKeys.Station);
        double? keel = table.Length(FramingKeys.FromKeel, units),
            chine = table.Length(FramingKeys.FromChine, units),
            position = table.Length(FramingKeys.Position, units);
        FramingLine?[] along =

            [
                drawn is null ? null : new FramingLine.Offsets(drawn),
                keel is { } k ? new FramingLine.FromKeel(k) : null,
                chine is { } c ? new FramingLine.FromChine(c) : null,
            ],
            across =

            [
                position is { } x ? new FramingLine.AtPosition(x) : null,
                station is null ? null : new FramingLine.AtStation(station),
            ];
        if (drawn is not null)
        {
            lines.Add(new("line", drawn, table.PlaceOf(FramingKeys.Line)) { Table = table.Name });
        }

        if (station is not null)
        {
            stations.Add(
                new("station", station, table.PlaceOf(FramingKeys.Station)) { Table = table.Name }
            );
        }

        if (FramingKeys.Places.Count(table.Has) != along.Concat(across).Count(l => l is not null))
        {
            // One of them is written wrongly, and that has been said.
            return null;
        }

        FramingLine[] alongs = [.. along.OfType<FramingLine>()],
            acrosses = [.. across.OfType<FramingLine>()];
        switch (alongs.Length, acrosses.Length)
        {
            case (1, 0) or (0, 1) when !table.Has(FramingKeys.Length):
                return alongs.Concat(acrosses).Single();
            case (1, 1) when alongs[0] is not FramingLine.Offsets && length is not null:
                return new FramingLine.Spot(alongs[0], acrosses[0]);
            case (1, 1) when alongs[0] is not FramingLine.Offsets && !table.Has(FramingKeys.Length):
                table.Missing(
                    FramingKeys.Length,
                    "a place in the bottom has a width across the hull and a length along it"
                );
                return null;
            default:
                table.Faults.Missing(table.At, $"{table.Name}: {WhereIsIt}");
                return null;
        }
    }

    /// <summary>Keys that say nothing about this kind of line.</summary>
    private static void OnlyWhere(TableReader table, FramingSpec spec)
    {
        bool runsOn = spec.Line is not FramingLine.Spot && !spec.IsAcross;
        foreach (JobKey key in new[] { FramingKeys.From, FramingKeys.To })
        {
            if (!runsOn)
            {
                table.Wrong(
                    key,
                    "is for a thing that runs along the hull; one across it has out-from and out-to, distances from the keel, and a place has its length"
                );
            }
        }

        foreach (JobKey key in new[] { FramingKeys.OutFrom, FramingKeys.OutTo })
        {
            if (!spec.IsAcross)
            {
                table.Wrong(
                    key,
                    "is for a thing that lies across the hull, at a position or a station"
                );
            }
        }
    }

    private static void InOrder(TableReader table, JobKey a, double? from, JobKey b, double? to)
    {
        if (from >= to)
        {
            table.Wrong(b, $"must be greater than {a.Name}");
        }
    }
}

/// <summary>What lies behind as read, and the lines and stations of the table that it names.</summary>
internal sealed record FramingBinding(
    ImmutableArray<FramingSpec> Specs,
    ImmutableArray<NamedLine> Lines,
    ImmutableArray<NamedLine> Stations
);
