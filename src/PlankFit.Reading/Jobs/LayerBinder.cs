using System.Collections.Immutable;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Wood;

namespace PlankFit.Reading.Jobs;

/// <summary>[[layer]]: planks or cloth, from the inside out.</summary>
internal static class LayerBinder
{
    private const double DefaultDriftDegrees = 7.5;
    private const double DefaultGapMm = 0.5;

    // What is plausible: our own bounds, wide, no source. Beyond them a unit has most likely been mistaken, mm.
    private const double ThinnestPlankMm = 1.5;
    private const double ThickestPlankMm = 60;
    private const double ThickestClothMm = 10;
    private const double NarrowestMm = 20;
    private const double WidestMm = 600;
    private const double WidestGapMm = 5;

    private static readonly string[] PlankKeys =
    [
        "width",
        "heads",
        "angle",
        "master",
        "hold",
        "drift",
        "gap",
        "stagger",
        "species",
    ];

    private static readonly (string, bool)[] Kinds = [("planks", false), ("cloth", true)];

    public static ImmutableArray<LayerSpec> Bind(
        ImmutableArray<TableReader> tables,
        ImmutableArray<Species> woods,
        LengthUnit units
    )
    {
        var layers = ImmutableArray.CreateBuilder<LayerSpec>();
        var names = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (TableReader table in tables)
        {
            bool? cloth = table.Find("kind") is null
                ? false
                : table.Choice("kind", Kinds, required: false);
            string name = table.Text("name") ?? $"layer {layers.Count + 1}";
            if (!names.TryAdd(name, layers.Count + 1))
            {
                table.Wrong("name", $"layer {names[name]} has this name already");
            }

            double thickness = Thickness(table, cloth == true, units);
            layers.Add(
                cloth switch
                {
                    true => Cloth(table, name, thickness, units),
                    false => Planks(table, name, thickness, woods, units),
                    null => Unknown(table, name, thickness),
                }
            );
            table.Close();
        }

        return layers.ToImmutable();
    }

    private static double Thickness(TableReader table, bool cloth, LengthUnit units)
    {
        if (table.Length("thickness", units, required: true) is not { } mm)
        {
            return 0;
        }

        if (mm <= 0)
        {
            table.Wrong("thickness", "must be greater than 0");
        }
        else if (cloth ? mm > ThickestClothMm : mm is < ThinnestPlankMm or > ThickestPlankMm)
        {
            table.Doubtful(
                "thickness",
                $"{LengthText.FormatExact(mm, LengthUnit.Millimetre)} is an unlikely thickness for {(cloth ? "cloth" : "planks")}: is the unit right?"
            );
        }

        return mm;
    }

    private static ClothLayerSpec Cloth(
        TableReader table,
        string name,
        double thickness,
        LengthUnit units
    )
    {
        foreach (string key in PlankKeys)
        {
            if (table.Find(key) is not null)
            {
                table.Wrong(key, "belongs to planks; a cloth has kind, name, thickness and lap");
            }
        }

        return new(name, thickness) { Lap = Lap(table, units) };
    }

    private static ClothLap? Lap(TableReader table, LengthUnit units)
    {
        if (table.Table("lap", $"{table.Name} lap") is not { } lap)
        {
            return null;
        }

        double? width = lap.Length("width", units, required: true),
            from = lap.Length("from", units),
            to = lap.Length("to", units);
        lap.Close();
        if (width <= 0)
        {
            lap.Wrong(
                "width",
                "must be greater than 0: how wide port and starboard lap, half of it on each side"
            );
        }

        if (to <= from)
        {
            lap.Wrong("to", "must be greater than \"from\"");
        }

        return width is { } mm ? new(mm, from, to) : null;
    }

    /// <summary>Where the kind itself is wrong the other keys cannot be judged.</summary>
    private static ClothLayerSpec Unknown(TableReader table, string name, double thickness)
    {
        table.Find("lap");
        foreach (string key in PlankKeys)
        {
            table.Find(key);
        }

        return new(name, thickness);
    }

    private static PlankLayerSpec Planks(
        TableReader table,
        string name,
        double thickness,
        ImmutableArray<Species> woods,
        LengthUnit units
    )
    {
        double width = Width(table, thickness, units);
        Heads heads =
            table.Choice("heads", [("aft", Heads.Aft), ("forward", Heads.Forward)], required: true)
            ?? Heads.Aft;
        double angle = Angle(table);
        double? master = table.Length("master", units);
        Hold hold =
            table.Choice("hold", [("width", Hold.Width), ("angle", Hold.Angle)], required: false)
            ?? Hold.Width;
        const string driftAccepted = "accepted: degrees from 0 to less than 90";
        double drift = table.Number("drift", driftAccepted) ?? DefaultDriftDegrees;
        if (drift is < 0 or >= 90)
        {
            table.Wrong("drift", driftAccepted);
        }

        double gap = table.Length("gap", units) ?? DefaultGapMm;
        if (gap < 0)
        {
            table.Wrong("gap", "must not be negative");
        }
        else if (gap > WidestGapMm)
        {
            table.Doubtful("gap", "few glues fill so wide a gap: is the unit right?");
        }

        const string staggerAccepted = "accepted: a part of the width, from 0 to less than 1";
        double? stagger = table.Number("stagger", staggerAccepted);
        if (stagger is < 0 or >= 1)
        {
            table.Wrong("stagger", staggerAccepted);
        }

        return new(
            name,
            thickness,
            width,
            heads,
            angle,
            master,
            hold,
            drift,
            gap,
            stagger == 0 ? null : stagger
        )
        {
            Species = SpeciesBinder.Named(table, woods, "species"),
        };
    }

    private static double Width(TableReader table, double thickness, LengthUnit units)
    {
        if (table.Length("width", units, required: true) is not { } mm)
        {
            return 0;
        }

        if (mm <= 0)
        {
            table.Wrong("width", "must be greater than 0");
        }
        else if (mm is < NarrowestMm or > WidestMm)
        {
            table.Doubtful(
                "width",
                $"{LengthText.FormatExact(mm, LengthUnit.Millimetre)} is an unlikely width for planks: is the unit right?"
            );
        }
        else if (mm < thickness)
        {
            table.Doubtful("width", "the planks are thicker than they are wide");
        }

        return mm;
    }

    private static double Angle(TableReader table)
    {
        const string accepted =
            "accepted: degrees greater than 0 and less than 180, usually 30 to 60";
        if (table.Number("angle", accepted, required: true) is not { } angle)
        {
            return 45;
        }

        if (angle is <= 0 or >= 180)
        {
            table.Wrong("angle", "planks at this angle never leave the keel; " + accepted);
        }
        else if (angle > 90)
        {
            table.Doubtful("angle", "beyond 90 the planks head the other way than \"heads\" says");
        }

        return angle;
    }
}
