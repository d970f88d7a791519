using System.Collections.Immutable;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Jobs;

/// <summary>[setting-up]: what the bottom is set up on, and the corner at its chine.</summary>
internal static class SettingUpBinder
{
    // Beyond these a unit has most likely been mistaken, mm: our own bounds, wide, no source.
    private const double ThickestMm = 300;
    private const double WidestMm = 1000;

    public static SettingUpBinding Bind(TableReader? table, LengthUnit units)
    {
        if (table is null)
        {
            return new(null, [], []);
        }

        var usual = new SettingUpSpec();
        var lines = ImmutableArray.CreateBuilder<NamedLine>();
        var stations = ImmutableArray.CreateBuilder<NamedLine>();
        var spec = new SettingUpSpec
        {
            Frames =
            [
                .. PlaceList
                    .Of(table, "frames", units)
                    .Select(p => new FramePosition(p.Written, p.Mm)),
            ],
            RibbandMm = Size(table, "ribbands", units, ThickestMm, orNone: true) ?? usual.RibbandMm,
            FrameMm = Size(table, "frame-thickness", units, ThickestMm) ?? usual.FrameMm,
            TransomMm = Size(table, "transom-thickness", units, ThickestMm),
            Face =
                table.Choice(
                    "frame-face",
                    [
                        ("by bevel", FrameFace.ByBevel),
                        ("forward", FrameFace.Forward),
                        ("after", FrameFace.After),
                    ],
                    required: false
                ) ?? usual.Face,
            WaterlinesMm = [.. PlaceList.Of(table, "waterlines", units).Select(p => p.Mm).Order()],
            ChineLogMm = Size(table, "chine-log", units, WidestMm),
            Backbone = Backbone(table, units, lines),
            Topside = TopsideBinder.Bind(table, units, lines, stations),
            ClothRadiusMm = Size(table, "cloth-radius", units, ThickestMm) ?? usual.ClothRadiusMm,
            ChinePiece = Piece(table, units),
        };
        foreach (string key in new[] { "chine-log", "chine-piece", "cloth-radius" })
        {
            if (table.Find("topside") is null)
            {
                table.Wrong(
                    key,
                    "is of the corner of bottom and topside, and no topside is named: give topside with thickness, lap and sheer or flare"
                );
            }
        }

        table.Close();
        return new(spec, lines.ToImmutable(), stations.ToImmutable());
    }

    private static BackboneWidth? Backbone(
        TableReader table,
        LengthUnit units,
        ImmutableArray<NamedLine>.Builder lines
    )
    {
        const string key = "backbone-half-width";
        if (table.Find(key)?.Value is not TomlTable)
        {
            return Size(table, key, units, WidestMm) is { } mm ? new BackboneWidth.Even(mm) : null;
        }

        TableReader width = table.Table(key, $"{table.Name} {key}")!;
        string? name = width.Text("line", "the name of a half-breadth row of the offsets");
        if (name is not null)
        {
            lines.Add(new("line", name, width.PlaceOf("line")) { Table = width.Name });
        }

        width.Close();
        return name is null ? null : new BackboneWidth.Line(name);
    }

    private static ChinePieceSpec? Piece(TableReader table, LengthUnit units)
    {
        if (table.Table("chine-piece", "[setting-up.chine-piece]") is not { } piece)
        {
            return null;
        }

        double? width = Size(piece, "width", units, WidestMm, required: true),
            up = Size(piece, "up", units, WidestMm);
        piece.Close();
        return width is { } w ? new(w, up ?? w) : null;
    }

    /// <summary>A length greater than 0 (or, where there may be none, not less), and doubted where it is unlikely.</summary>
    internal static double? Size(
        TableReader table,
        string key,
        LengthUnit units,
        double mostMm,
        bool required = false,
        bool orNone = false
    )
    {
        double? mm = table.Length(key, units, required);
        if (mm < 0 || (mm == 0 && !orNone))
        {
            table.Wrong(key, orNone ? "must not be less than 0" : "must be greater than 0");
            return null;
        }

        if (mm > mostMm)
        {
            table.Doubtful(key, "is unlikely large: is the unit right?");
        }

        return mm;
    }
}

/// <summary>[setting-up] as read, with the lines and stations of the table that it names.</summary>
internal sealed record SettingUpBinding(
    SettingUpSpec? Spec,
    ImmutableArray<NamedLine> Lines,
    ImmutableArray<NamedLine> Stations
);
