using System.Collections.Immutable;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Sheathing;

/// <summary>[[sheathing]]: how the cloths of the stack lie.</summary>
internal static class SheathingBinder
{
    /// <param name="layers">The bottom's, from the inside out.</param>
    /// <param name="stations">Takes the stations of the table that are named, to be looked for in it.</param>
    public static ImmutableArray<SheathingSpec> Bind(
        ImmutableArray<TableReader> tables,
        ImmutableArray<LayerSpec> layers,
        LengthUnit units,
        ICollection<NamedLine> stations
    )
    {
        ImmutableArray<SheathingSpec>.Builder specs = ImmutableArray.CreateBuilder<SheathingSpec>();
        int lapped = 0;
        foreach (TableReader table in tables)
        {
            if (One(table, layers, lapped, units, stations) is { } spec)
            {
                lapped += spec.Keel is ClothAtKeel.PastCentreLine { Mm: > 0 } ? 1 : 0;
                specs.Add(spec);
            }

            table.Close();
        }

        return specs.ToImmutable();
    }

    /// <summary>The layers with the laps under the keel that sheathing gives them.</summary>
    public static ImmutableArray<LayerSpec> Lapped(
        ImmutableArray<LayerSpec> layers,
        ImmutableArray<SheathingSpec> sheathing
    ) =>
        [
            .. layers.Select(l =>
                l is ClothLayerSpec { Lap: null } cloth
                && sheathing.FirstOrDefault(s => s.Layer == l.Name)?.Keel
                    is ClothAtKeel.PastCentreLine { Mm: > 0 } past
                    ? cloth with
                    {
                        Lap = new(2 * past.Mm, past.FromMm, past.ToMm),
                    }
                    : l
            ),
        ];

    private static SheathingSpec? One(
        TableReader table,
        ImmutableArray<LayerSpec> layers,
        int lapped,
        LengthUnit units,
        ICollection<NamedLine> stations
    )
    {
        string? layer = table.Text(SheathingKeys.Layer),
            cloth = table.Text(SheathingKeys.Cloth);
        ClothLap? lap = layers.OfType<ClothLayerSpec>().FirstOrDefault(l => l.Name == layer)?.Lap;
        ClothAtKeel keel =
            AtKeel(table, lap, units)
            ?? (
                lap is { } own
                    ? Past(own)
                    : new ClothAtKeel.PastCentreLine(
                        SheathingSpec.UsualPastCentreMm + (lapped * SheathingSpec.UsualPastStepMm)
                    )
            );
        double? chine = Round(
            table,
            SheathingKeys.Chine,
            SheathingKeys.ChineStops,
            SheathingKeys.ChineRound,
            units
        );
        var spec = new SheathingSpec(layer ?? "", cloth ?? "")
        {
            Keel = keel,
            RoundChineMm = chine ?? (IsWrapped(layer, layers) ? SheathingSpec.UsualRoundMm : 0),
            RoundTransomMm =
                Round(
                    table,
                    SheathingKeys.Transom,
                    SheathingKeys.TransomStops,
                    SheathingKeys.TransomRound,
                    units
                ) ?? 0,
            RoundStemMm =
                Round(
                    table,
                    SheathingKeys.Stem,
                    SheathingKeys.StemStops,
                    SheathingKeys.StemRound,
                    units
                ) ?? 0,
            FirstAlong = First(table, stations),
            SideFirst = table.ChoiceOrDefault(SheathingKeys.SideFirst),
            Courses = table.ChoiceOrDefault(SheathingKeys.Courses),
            JoinLapMm = table.LengthOrDefault(SheathingKeys.JoinLap, units),
            StaggerMm = table.LengthOrDefault(SheathingKeys.Stagger, units),
            ExcessMm = table.LengthOrDefault(SheathingKeys.Excess, units),
            MatSide = table.Choice(SheathingKeys.Mat),
            StitchSide = table.Choice(SheathingKeys.Stitch),
        };
        return layer is null || cloth is null ? null : spec;
    }

    private static ClothAtKeel.PastCentreLine Past(ClothLap lap) =>
        new(lap.WidthMm / 2, lap.FromMm, lap.ToMm);

    private static ClothAtKeel? AtKeel(TableReader table, ClothLap? lap, LengthUnit units)
    {
        if (table.Table(SheathingKeys.Keel) is not { } keel)
        {
            return null;
        }

        double? past = keel.Length(SheathingKeys.PastCentreLine, units),
            stop = keel.Length(SheathingKeys.Stop, units);
        bool both = keel.Has(SheathingKeys.PastCentreLine) == keel.Has(SheathingKeys.Stop);
        keel.Close();
        if (both)
        {
            table.Wrong(
                SheathingKeys.Keel,
                "say past-centre-line or stop, one of them: { past-centre-line = 50 }"
            );
            return null;
        }

        if (stop is { } mm)
        {
            if (lap is not null)
            {
                keel.Wrong(
                    SheathingKeys.Stop,
                    "the layer has a lap under the keel: leave one of them out"
                );
            }

            return new ClothAtKeel.ShortOfEdge(mm);
        }

        if (past is { } beyond && lap is not null && Math.Abs((2 * beyond) - lap.WidthMm) > 0.01)
        {
            keel.Wrong(
                SheathingKeys.PastCentreLine,
                "the layer's own lap is not twice as wide: half of it lies on each side; leave one of them out"
            );
        }

        return past is not { } given ? null
            : lap is null ? new ClothAtKeel.PastCentreLine(given)
            : Past(lap);
    }

    /// <summary>Null where the table does not say.</summary>
    private static double? Round(
        TableReader table,
        EitherKey key,
        ChoiceKey<int> stops,
        TableKey round,
        LengthUnit units
    )
    {
        if (!table.HasTable(key))
        {
            return table.Choice(stops);
        }

        TableReader inner = table.Table(round)!;
        double? mm = inner.Length(SheathingKeys.Round, units);
        inner.Close();
        return mm;
    }

    /// <summary>The last two cloths are carried round the chine, where they lie outside all planks.</summary>
    private static bool IsWrapped(string? layer, ImmutableArray<LayerSpec> layers) =>
        layers.Reverse().TakeWhile(l => l is ClothLayerSpec).Take(2).Any(l => l.Name == layer);

    private static FirstLine First(TableReader table, ICollection<NamedLine> stations)
    {
        if (!table.HasTable(SheathingKeys.FirstAlong))
        {
            return table.ChoiceOrDefault(SheathingKeys.FirstAlongWord) switch
            {
                FirstWord.Keel => new FirstLine.AlongKeel(),
                FirstWord.Chine => new FirstLine.AlongChine(),
                _ => new FirstLine.Best(),
            };
        }

        TableReader own = table.Table(SheathingKeys.FirstAlongLine)!;
        double part = own.NumberOrDefault(SheathingKeys.Part),
            turned = own.NumberOrDefault(SheathingKeys.Turned);
        string? station = own.Text(SheathingKeys.Station);
        if (station is not null)
        {
            own.Wrong(SheathingKeys.Turned, "belongs to a line; a point has station and part");
            stations.Add(
                new("station", station, own.PlaceOf(SheathingKeys.Station)) { Table = own.Name }
            );
        }

        own.Close();
        return station is null
            ? new FirstLine.Straight(part, turned)
            : new FirstLine.Point(station, part);
    }
}
