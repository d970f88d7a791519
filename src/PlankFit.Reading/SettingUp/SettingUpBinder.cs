using System.Collections.Immutable;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.SettingUp;

/// <summary>[setting-up]: what the bottom is set up on, and the corner at its chine.</summary>
internal static class SettingUpBinder
{
    public static SettingUpBinding Bind(TableReader? table, LengthUnit units)
    {
        if (table is null)
        {
            return new(null, [], []);
        }

        ImmutableArray<NamedLine>.Builder lines = ImmutableArray.CreateBuilder<NamedLine>();
        ImmutableArray<NamedLine>.Builder stations = ImmutableArray.CreateBuilder<NamedLine>();
        var spec = new SettingUpSpec
        {
            Frames =
            [
                .. PlaceList
                    .Of(table, SettingUpKeys.Frames, units)
                    .Select(p => new FramePosition(p.Written, p.Mm)),
            ],
            RibbandMm = table.LengthOrDefault(SettingUpKeys.Ribbands, units),
            FrameMm = table.LengthOrDefault(SettingUpKeys.Frame, units),
            TransomMm = table.Length(SettingUpKeys.Transom, units),
            Face = table.ChoiceOrDefault(SettingUpKeys.Face),
            WaterlinesMm =
            [
                .. PlaceList.Of(table, SettingUpKeys.Waterlines, units).Select(p => p.Mm).Order(),
            ],
            ChineLogMm = table.Length(SettingUpKeys.ChineLog, units),
            Backbone = Backbone(table, units, lines),
            Topside = TopsideBinder.Bind(table, units, lines, stations),
            ClothRadiusMm = table.LengthOrDefault(SettingUpKeys.ClothRadius, units),
            ChinePiece = Piece(table, units),
        };
        if (!table.Has(SettingUpKeys.Topside))
        {
            foreach (JobKey key in SettingUpKeys.OfCorner)
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
        if (!table.HasTable(SettingUpKeys.Backbone))
        {
            return table.Length(SettingUpKeys.BackboneEven, units) is { } mm
                ? new BackboneWidth.Even(mm)
                : null;
        }

        TableReader width = table.Table(SettingUpKeys.BackboneTable)!;
        string? name = width.Text(SettingUpKeys.BackboneLine);
        if (name is not null)
        {
            lines.Add(
                new("line", name, width.PlaceOf(SettingUpKeys.BackboneLine)) { Table = width.Name }
            );
        }

        width.Close();
        return name is null ? null : new BackboneWidth.Line(name);
    }

    private static ChinePieceSpec? Piece(TableReader table, LengthUnit units)
    {
        if (table.Table(SettingUpKeys.ChinePiece) is not { } piece)
        {
            return null;
        }

        double? width = piece.Length(SettingUpKeys.PieceWidth, units),
            up = piece.Length(SettingUpKeys.PieceUp, units);
        piece.Close();
        return width is { } w ? new(w, up ?? w) : null;
    }
}

/// <summary>[setting-up] as read, with the lines and stations of the table that it names.</summary>
internal sealed record SettingUpBinding(
    SettingUpSpec? Spec,
    ImmutableArray<NamedLine> Lines,
    ImmutableArray<NamedLine> Stations
);
