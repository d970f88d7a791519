using System.Text.Json;

namespace PlankFit.Tests.Export.Tables;

/// <summary>
/// The contract of planking.json, written out once more as names and shapes, independent of the writer. Fields beside the formula's are allowed.
/// A shape: "text", "number", "number?" (or null), "bool", "xyz", "sn" (lists of points), "[]" (any list), or words one of which the text must be, parted by |.
/// </summary>
internal static class PlankingContract
{
    private static readonly Dictionary<string, string> Head = new()
    {
        ["schema"] = "plankfit-planking/1",
        ["revision"] = "text",
        ["job"] = "text",
        ["lengthUnit"] = "mm",
        ["angleUnit"] = "deg",
        ["layers"] = "[]",
        ["planks"] = "[]",
        ["findings"] = "[]",
    };

    private static readonly Dictionary<string, string> PlankLayer = new()
    {
        ["layer"] = "number",
        ["kind"] = "planks",
        ["name"] = "text",
        ["thicknessMm"] = "number",
        ["stockWidthMm"] = "number",
        ["heads"] = "aft|forward",
        ["angleDegrees"] = "number",
        ["neutralOffsetMm"] = "number",
        ["areaMm2"] = "number",
    };

    private static readonly Dictionary<string, string> Cloth = new()
    {
        ["kind"] = "cloth",
        ["name"] = "text",
        ["thicknessMm"] = "number",
    };

    private static readonly Dictionary<string, string> Plank = new()
    {
        ["id"] = "text",
        ["side"] = "starboard|port",
        ["layer"] = "number",
        ["number"] = "number",
        ["outline"] = "xyz",
        ["ends"] = "[]",
        ["netLengthMm"] = "number",
        ["cutLengthMm"] = "number",
        ["widestMm"] = "number",
        ["narrowestMm"] = "number",
        ["widestGapMm"] = "number",
        ["widestOverlapMm"] = "number",
        ["straightEdges"] = "bool",
        ["pieces"] = "[]",
        ["marks"] = "[]",
    };

    private static readonly Dictionary<string, string> Edges = new()
    {
        ["forward"] = "xyz",
        ["after"] = "xyz",
    };

    private static readonly Dictionary<string, string> Flat = new()
    {
        ["net"] = "sn",
        ["cut"] = "sn",
    };

    private static readonly Dictionary<string, string> End = new()
    {
        ["at"] = "keel|chine|transom|stem",
        ["cut"] = "fit|left long",
        ["cutDegrees"] = "number",
        ["bevelDegrees"] = "number",
        ["bevelAtCorners"] = "[]",
        ["outerLine"] = "sn",
        ["innerLine"] = "sn",
    };

    private static readonly Dictionary<string, string> LongEnd = new()
    {
        ["overhangMm"] = "number",
    };

    private static readonly Dictionary<string, string> Bend = new()
    {
        ["leastRadiusMm"] = "number?",
        ["strainPercent"] = "number",
        ["twistDegreesPerMetre"] = "number",
        ["verdict"] = "text",
    };

    private static readonly Dictionary<string, string> Piece = new()
    {
        ["id"] = "text",
        ["net"] = "sn",
        ["cut"] = "sn",
        ["lengthMm"] = "number",
        ["joints"] = "[]",
    };

    private static readonly Dictionary<string, string> Joint = new()
    {
        ["id"] = "text",
        ["end"] = "inboard|outboard",
        ["kind"] = "butt|scarf",
        ["atMm"] = "number",
        ["cutDegrees"] = "number",
        ["ratio"] = "number?",
        ["lengthMm"] = "number",
        ["outerLine"] = "sn",
        ["innerLine"] = "sn",
    };

    private static readonly Dictionary<string, string> Finding = new()
    {
        ["severity"] = "note|warning|error",
        ["rank"] = "know|saw only after|do not saw",
        ["where"] = "text",
        ["message"] = "text",
    };

    public static List<string> Faults(JsonElement root)
    {
        List<string> faults = [];
        Check(root, Head, "file", faults);
        foreach (JsonElement layer in List(root, "layers"))
        {
            bool cloth =
                layer.TryGetProperty("kind", out JsonElement kind) && kind.GetString() == "cloth";
            Check(layer, cloth ? Cloth : PlankLayer, "layer", faults);
        }

        foreach (JsonElement plank in List(root, "planks"))
        {
            string name = plank.TryGetProperty("id", out JsonElement id)
                ? id.GetString()!
                : "plank";
            Check(plank, Plank, name, faults);
            Inside(plank, "edges", Edges, name, faults);
            Inside(plank, "flat", Flat, name, faults);
            Inside(plank, "bend", Bend, name, faults);
            foreach (JsonElement piece in List(plank, "pieces"))
            {
                Check(piece, Piece, name + " piece", faults);
                foreach (JsonElement joint in List(piece, "joints"))
                {
                    Check(joint, Joint, name + " joint", faults);
                }
            }

            foreach (JsonElement end in List(plank, "ends"))
            {
                Check(end, End, name + " end", faults);
                if (
                    end.TryGetProperty("cut", out JsonElement cut)
                    && cut.GetString() == "left long"
                )
                {
                    Check(end, LongEnd, name + " end", faults);
                }
            }
        }

        foreach (JsonElement finding in List(root, "findings"))
        {
            Check(finding, Finding, "finding", faults);
        }

        return faults;
    }

    private static IEnumerable<JsonElement> List(JsonElement of, string name) =>
        of.TryGetProperty(name, out JsonElement list) && list.ValueKind == JsonValueKind.Array
            ? list.EnumerateArray()
            : [];

    private static void Inside(
        JsonElement of,
        string name,
        Dictionary<string, string> shape,
        string where,
        List<string> faults
    )
    {
        if (of.TryGetProperty(name, out JsonElement inside))
        {
            Check(inside, shape, $"{where} {name}", faults);
        }
        else
        {
            faults.Add($"{where}: no {name}");
        }
    }

    private static void Check(
        JsonElement of,
        Dictionary<string, string> shape,
        string where,
        List<string> faults
    )
    {
        foreach ((string name, string wanted) in shape)
        {
            if (!of.TryGetProperty(name, out JsonElement value))
            {
                faults.Add($"{where}: no {name}");
            }
            else if (!Is(value, wanted))
            {
                faults.Add($"{where}: {name} is not {wanted}");
            }
        }
    }

    private static bool Is(JsonElement value, string wanted) =>
        wanted switch
        {
            "text" => value.ValueKind == JsonValueKind.String && value.GetString()!.Length > 0,
            "number" => value.ValueKind == JsonValueKind.Number,
            "number?" => value.ValueKind is JsonValueKind.Number or JsonValueKind.Null,
            "bool" => value.ValueKind is JsonValueKind.True or JsonValueKind.False,
            "[]" => value.ValueKind == JsonValueKind.Array,
            "xyz" => Points(value, 3),
            "sn" => Points(value, 2),
            _ => value.ValueKind == JsonValueKind.String
                && wanted.Split('|').Contains(value.GetString()),
        };

    private static bool Points(JsonElement list, int dimensions) =>
        list.ValueKind == JsonValueKind.Array
        && list.EnumerateArray()
            .All(p =>
                p.ValueKind == JsonValueKind.Array
                && p.GetArrayLength() == dimensions
                && p.EnumerateArray().All(n => n.ValueKind == JsonValueKind.Number)
            );
}
