using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;

namespace PlankFit.Reading.Jobs;

/// <summary>[[behind]]: what lies behind the planks.</summary>
internal static class FramingBinder
{
    /// <summary>Beyond this a unit has most likely been mistaken, mm: our own bound, wide, no source.</summary>
    private const double WidestMm = 1000;

    private const string WhereIsIt =
        "say where its centre runs with one of line, from-keel, from-chine, position or station; a place with a length has from-keel or from-chine and position or station";

    public static FramingBinding Bind(ImmutableArray<TableReader> tables, LengthUnit units)
    {
        var specs = ImmutableArray.CreateBuilder<FramingSpec>();
        var lines = ImmutableArray.CreateBuilder<NamedLine>();
        var stations = ImmutableArray.CreateBuilder<NamedLine>();
        foreach (TableReader table in tables)
        {
            if (One(table, units, lines, stations) is { } spec)
            {
                if (specs.Any(s => s.Name == spec.Name))
                {
                    table.Wrong("name", "another thing behind has this name already");
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
        string? name = table.Text("name", "the name that stands on patterns and lists");
        FramingKind? kind = table.Choice(
            "kind",
            [
                ("stringer", FramingKind.Stringer),
                ("frame", FramingKind.Frame),
                ("floor", FramingKind.Floor),
                ("solid", FramingKind.Solid),
                ("open", FramingKind.Open),
            ],
            required: true
        );
        ImmutableArray<Side> sides =
            table.Choice<ImmutableArray<Side>>(
                "side",
                [
                    ("both", [Side.Starboard, Side.Port]),
                    ("starboard", [Side.Starboard]),
                    ("port", [Side.Port]),
                ],
                required: false
            ) ?? [Side.Starboard, Side.Port];
        double? width = Positive(table, "width", units, required: true),
            length = Positive(table, "length", units, required: false);
        if (width > WidestMm)
        {
            table.Doubtful(
                "width",
                "is unlikely wide for a thing behind the planks: is the unit right?"
            );
        }

        FramingLine? line = Line(table, units, length, lines, stations);
        double? from = table.Length("from", units),
            to = table.Length("to", units),
            outFrom = Distance(table, "out-from", units),
            outTo = Distance(table, "out-to", units);
        InOrder(table, "from", from, "to", to);
        InOrder(table, "out-from", outFrom, "out-to", outTo);
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
        string? drawn = table.Text("line"),
            station = table.Text("station");
        double? keel = Distance(table, "from-keel", units),
            chine = Distance(table, "from-chine", units),
            position = table.Length("position", units);
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
        string[] keys = ["line", "from-keel", "from-chine", "position", "station"];
        if (drawn is not null)
        {
            lines.Add(new("line", drawn, table.PlaceOf("line")) { Table = table.Name });
        }

        if (station is not null)
        {
            stations.Add(new("station", station, table.PlaceOf("station")) { Table = table.Name });
        }

        if (
            keys.Count(k => table.Find(k) is not null)
            != along.Concat(across).Count(l => l is not null)
        )
        {
            // One of them is written wrongly, and that has been said.
            return null;
        }

        FramingLine[] alongs = [.. along.OfType<FramingLine>()],
            acrosses = [.. across.OfType<FramingLine>()];
        switch (alongs.Length, acrosses.Length)
        {
            case (1, 0) or (0, 1) when table.Find("length") is null:
                return alongs.Concat(acrosses).Single();
            case (1, 1) when alongs[0] is not FramingLine.Offsets && length is not null:
                return new FramingLine.Spot(alongs[0], acrosses[0]);
            case (1, 1) when alongs[0] is not FramingLine.Offsets && table.Find("length") is null:
                table.Missing(
                    "length",
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
        foreach (string key in new[] { "from", "to" })
        {
            if (!runsOn)
            {
                table.Wrong(
                    key,
                    "is for a thing that runs along the hull; one across it has out-from and out-to, distances from the keel, and a place has its length"
                );
            }
        }

        foreach (string key in new[] { "out-from", "out-to" })
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

    private static double? Positive(TableReader table, string key, LengthUnit units, bool required)
    {
        double? mm = table.Length(key, units, required);
        if (mm <= 0)
        {
            table.Wrong(key, "must be greater than 0");
            return null;
        }

        return mm;
    }

    private static double? Distance(TableReader table, string key, LengthUnit units)
    {
        double? mm = table.Length(key, units);
        if (mm < 0)
        {
            table.Wrong(key, "must be 0 or more");
        }

        return mm;
    }

    private static void InOrder(TableReader table, string a, double? from, string b, double? to)
    {
        if (from >= to)
        {
            table.Wrong(b, $"must be greater than {a}");
        }
    }
}

/// <summary>What lies behind as read, and the lines and stations of the table that it names.</summary>
internal sealed record FramingBinding(
    ImmutableArray<FramingSpec> Specs,
    ImmutableArray<NamedLine> Lines,
    ImmutableArray<NamedLine> Stations
);
