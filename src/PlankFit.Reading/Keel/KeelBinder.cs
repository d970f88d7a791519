using System.Collections.Immutable;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Keel;

/// <summary>[keel] and [[keel-layer]]: the keel's layers, from the inside out, and what is judged of them.</summary>
internal static class KeelBinder
{
    /// <param name="planks">The bottom's layers.</param>
    /// <param name="elsewhere">The layers of planks of other panels, each with its panel.</param>
    /// <param name="lines">Takes the lines of the table that are named, to be looked for in it.</param>
    public static KeelSpec Bind(
        TableReader? keel,
        ImmutableArray<TableReader> layers,
        ImmutableArray<LayerSpec> planks,
        ImmutableDictionary<string, string> elsewhere,
        LengthUnit units,
        ICollection<NamedLine> lines
    )
    {
        KeelSpec spec = keel is null ? KeelSpec.None : Judged(keel, units);
        ImmutableArray<KeelLayerSpec>.Builder read = ImmutableArray.CreateBuilder<KeelLayerSpec>();
        foreach (TableReader table in layers)
        {
            read.Add(Layer(table, read, planks, elsewhere, units, lines));
            table.Close();
        }

        return spec with
        {
            Layers = read.ToImmutable(),
        };
    }

    private static KeelSpec Judged(TableReader keel, LengthUnit units)
    {
        var spec = new KeelSpec(
            [],
            keel.LengthOrDefault(KeelKeys.HalfWidthTolerance, units),
            keel.LengthOrDefault(KeelKeys.ProudTolerance, units)
        )
        {
            StockWidthMm = keel.Length(KeelKeys.StockWidth, units),
            LeastHalfWidthMm = keel.Length(KeelKeys.LeastHalfWidth, units),
            MostDeadriseDegrees = keel.Number(KeelKeys.MostDeadrise),
            LeftLongMm = keel.LengthOrDefault(KeelKeys.LeftLong, units),
        };
        keel.Close();
        return spec;
    }

    private static KeelLayerSpec Layer(
        TableReader table,
        IReadOnlyList<KeelLayerSpec> before,
        ImmutableArray<LayerSpec> planks,
        ImmutableDictionary<string, string> elsewhere,
        LengthUnit units,
        ICollection<NamedLine> lines
    )
    {
        string name = table.Text(KeelLayerKeys.Name) ?? $"keel layer {before.Count + 1}";
        if (before.Any(k => k.Name == name))
        {
            table.Wrong(KeelLayerKeys.Name, "another keel layer has this name already");
        }

        string meets = table.Text(KeelLayerKeys.Meets) ?? "";
        string[] known = [.. planks.OfType<PlankLayerSpec>().Select(p => p.Name)];
        if (meets.Length > 0 && !known.Contains(meets))
        {
            table.Wrong(
                KeelLayerKeys.Meets,
                elsewhere.TryGetValue(meets, out string? panel)
                        ? $"this is a layer of the {panel}, and only planks of the bottom meet the keel"
                            + (
                                known.Length == 0
                                    ? ": leave the keel layer out"
                                    : $"; there is {string.Join(", ", known.Select(Quoted.Of))}"
                            )
                    : known.Length == 0 ? "no layer of planks is named"
                    : $"no layer of planks has that name; there is {string.Join(", ", known.Select(Quoted.Of))}"
            );
        }
        else if (before.FirstOrDefault(k => k.Meets == meets) is { } taken)
        {
            table.Wrong(
                KeelLayerKeys.Meets,
                $"keel layer {Quoted.Of(taken.Name)} meets these planks already"
            );
        }
        else if (
            before.Count > 0
            && Array.IndexOf(known, meets) is >= 0 and var at
            && at <= Array.IndexOf(known, before[^1].Meets)
        )
        {
            table.Wrong(
                KeelLayerKeys.Meets,
                "keel layers run from the inside out, as the planks do: this one meets planks that lie inside those of the layer before"
            );
        }

        double thickness = table.Length(KeelLayerKeys.Thickness, units) ?? 0;
        return new(name, meets, thickness, Width(table, units, lines), Side(table))
        {
            FromMm = table.Length(KeelLayerKeys.From, units),
        };
    }

    private static KeelHalfWidth Width(
        TableReader table,
        LengthUnit units,
        ICollection<NamedLine> lines
    )
    {
        if (!table.HasTable(KeelLayerKeys.Width))
        {
            if (table.Text(KeelLayerKeys.WidthWord) is { } word && word != "mitre")
            {
                table.Wrong(KeelLayerKeys.Width, KeelLayerKeys.WidthAccepted);
            }

            return new KeelHalfWidth.Mitre();
        }

        TableReader width = table.Table(KeelLayerKeys.WidthTable)!;
        width.Close();
        if (!width.Has(KeelLayerKeys.WidthLine))
        {
            return new KeelHalfWidth.Tapered(
                width.Length(KeelLayerKeys.WidthForward, units) ?? 1,
                width.Length(KeelLayerKeys.WidthAft, units) ?? 1
            );
        }

        foreach (JobKey key in new[] { KeelLayerKeys.WidthForward, KeelLayerKeys.WidthAft })
        {
            width.Wrong(
                key,
                "is not for a half-width that is a line of the offsets; "
                    + KeelLayerKeys.WidthAccepted
            );
        }

        if (width.Text(KeelLayerKeys.WidthLine) is not { } line)
        {
            return new KeelHalfWidth.Mitre();
        }

        lines.Add(new($"{width.Name} line", line, width.PlaceOf(KeelLayerKeys.WidthLine)));
        return new KeelHalfWidth.Line(line);
    }

    private static KeelLayerSide Side(TableReader table)
    {
        if (table.HasTable(KeelLayerKeys.Side))
        {
            TableReader side = table.Table(KeelLayerKeys.SideTable)!;
            double degrees = side.Number(KeelLayerKeys.Degrees) ?? 0;
            side.Close();
            return new KeelLayerSide.Leaning(degrees);
        }

        return table.ChoiceOrDefault(KeelLayerKeys.SideWord)
            ? new KeelLayerSide.SquareToPlank()
            : new KeelLayerSide.Plumb();
    }
}
