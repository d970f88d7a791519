using System.Collections.Immutable;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Text;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Jobs;

/// <summary>[keel] and [[keel-layer]]: the keel's layers, from the inside out, and what is judged of them.</summary>
internal static class KeelBinder
{
    // Beyond this a unit has most likely been mistaken, mm: our own bounds, wide, no source.
    private const double ThickestMm = 400;
    private const double WidestMm = 1000;

    /// <param name="lines">Takes the lines of the table that are named, to be looked for in it.</param>
    public static KeelSpec Bind(
        TableReader? keel,
        ImmutableArray<TableReader> layers,
        ImmutableArray<LayerSpec> planks,
        LengthUnit units,
        ICollection<NamedLine> lines
    )
    {
        double half =
            Tolerance(keel, "half-width-tolerance", units) ?? KeelSpec.None.HalfWidthToleranceMm;
        double proud = Tolerance(keel, "proud-tolerance", units) ?? KeelSpec.None.ProudToleranceMm;
        double? stock = keel?.Length("stock-width", units);
        if (stock <= 0)
        {
            keel!.Wrong("stock-width", "must be greater than 0");
        }

        double? least = Tolerance(keel, "least-half-width", units);
        const string steep =
            "accepted: degrees more than 0 and less than 90; a saw tilts to 45 as a rule";
        double? most = keel?.Number("most-deadrise", steep);
        if (most is <= 0 or >= 90)
        {
            keel!.Wrong("most-deadrise", steep);
        }

        double leftLong = Tolerance(keel, "left-long", units) ?? KeelSpec.None.LeftLongMm;
        keel?.Close();
        var read = ImmutableArray.CreateBuilder<KeelLayerSpec>();
        foreach (TableReader table in layers)
        {
            read.Add(Layer(table, read, planks, units, lines));
            table.Close();
        }

        return new(read.ToImmutable(), half, proud)
        {
            StockWidthMm = stock,
            LeastHalfWidthMm = least,
            MostDeadriseDegrees = most,
            LeftLongMm = leftLong,
        };
    }

    private static double? Tolerance(TableReader? keel, string key, LengthUnit units)
    {
        double? mm = keel?.Length(key, units);
        if (mm <= 0)
        {
            keel!.Wrong(key, "must be greater than 0");
        }

        return mm;
    }

    private static KeelLayerSpec Layer(
        TableReader table,
        IReadOnlyList<KeelLayerSpec> before,
        ImmutableArray<LayerSpec> planks,
        LengthUnit units,
        ICollection<NamedLine> lines
    )
    {
        string name = table.Text("name") ?? $"keel layer {before.Count + 1}";
        if (before.Any(k => k.Name == name))
        {
            table.Wrong("name", "another keel layer has this name already");
        }

        string meets =
            table.Text("meets", "the name of the [[layer]] of planks whose ends meet its side")
            ?? "";
        string[] known = [.. planks.OfType<PlankLayerSpec>().Select(p => p.Name)];
        if (meets.Length > 0 && !known.Contains(meets))
        {
            table.Wrong(
                "meets",
                known.Length == 0
                    ? "no layer of planks is named"
                    : $"no layer of planks has that name; there is {string.Join(", ", known.Select(Quoted.Of))}"
            );
        }
        else if (before.FirstOrDefault(k => k.Meets == meets) is { } taken)
        {
            table.Wrong("meets", $"keel layer {Quoted.Of(taken.Name)} meets these planks already");
        }
        else if (
            before.Count > 0
            && Array.IndexOf(known, meets) is >= 0 and var at
            && at <= Array.IndexOf(known, before[^1].Meets)
        )
        {
            table.Wrong(
                "meets",
                "keel layers run from the inside out, as the planks do: this one meets planks that lie inside those of the layer before"
            );
        }

        double thickness = table.Length("thickness", units, required: true) ?? 0;
        if (table.Find("thickness") is not null && thickness <= 0)
        {
            table.Wrong("thickness", "must be greater than 0");
        }
        else if (thickness > ThickestMm)
        {
            table.Doubtful(
                "thickness",
                "is an unlikely thickness for a layer of a keel: is the unit right?"
            );
        }

        return new(name, meets, thickness, Width(table, units, lines), Side(table))
        {
            FromMm = table.Length("from", units),
        };
    }

    private static KeelHalfWidth Width(
        TableReader table,
        LengthUnit units,
        ICollection<NamedLine> lines
    )
    {
        const string accepted =
            "accepted: \"mitre\", { line = \"a line of the offsets\" } or { forward = ..., aft = ... }";
        if (table.Find("half-width") is not { } entry)
        {
            return new KeelHalfWidth.Mitre();
        }

        if (entry.Value is not TomlTable)
        {
            if (table.Text("half-width") is { } word && word != "mitre")
            {
                table.Wrong("half-width", accepted);
            }

            return new KeelHalfWidth.Mitre();
        }

        TableReader width = table.Table("half-width", $"{table.Name} half-width")!;
        KeelHalfWidth result = new KeelHalfWidth.Mitre();
        if (width.Find("line") is not null)
        {
            if (width.Text("line") is { } line)
            {
                lines.Add(new($"{width.Name} line", line, width.PlaceOf("line")));
                result = new KeelHalfWidth.Line(line);
            }
        }
        else
        {
            double? forward = width.Length("forward", units, required: true),
                aft = width.Length("aft", units, required: true);
            foreach ((string key, double? mm) in new[] { ("forward", forward), ("aft", aft) })
            {
                if (mm <= 0)
                {
                    width.Wrong(key, "must be greater than 0");
                }
                else if (mm > WidestMm)
                {
                    width.Doubtful(key, "is an unlikely half-width for a keel: is the unit right?");
                }
            }

            result = new KeelHalfWidth.Tapered(forward ?? 1, aft ?? 1);
        }

        width.Close();
        return result;
    }

    private static KeelLayerSide Side(TableReader table)
    {
        const string accepted =
            "accepted: \"plumb\", \"square to plank\" or { degrees = ... }, more than -60 and less than 60, positive where the outer face is the wider";
        if (table.Find("side") is not { } entry)
        {
            return new KeelLayerSide.Plumb();
        }

        if (entry.Value is TomlTable)
        {
            TableReader side = table.Table("side", $"{table.Name} side")!;
            double degrees = side.Number("degrees", accepted, required: true) ?? 0;
            if (degrees is <= -60 or >= 60)
            {
                side.Wrong("degrees", accepted);
            }

            side.Close();
            return new KeelLayerSide.Leaning(degrees);
        }

        bool square =
            table.Choice("side", [("plumb", false), ("square to plank", true)], required: false)
            ?? false;
        return square ? new KeelLayerSide.SquareToPlank() : new KeelLayerSide.Plumb();
    }
}
