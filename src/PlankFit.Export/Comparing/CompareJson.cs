using System.Text.Json;
using PlankFit.Export.Tables;

namespace PlankFit.Export.Comparing;

/// <summary>Lay-outs side by side as data, compare.json, schema plankfit-compare/1.</summary>
public static class CompareJson
{
    public const string Schema = "plankfit-compare/1";

    /// <summary>Writes what was laid and what could not be. The stream is left open.</summary>
    public static void Write(Comparison c, Stream stream) =>
        JsonFile.Write(
            (Schema, c.Job),
            angles: true,
            stream,
            (json, numbers) =>
            {
                json.WriteNumber("asked", c.Asked);
                json.WriteNumber("tried", c.Layouts.Length);
                json.Strings("heldBy", c.By.Select(m => m.Name));
                json.WriteStartArray("layouts");
                foreach (Layout l in c.Layouts)
                {
                    Write(json, numbers, c, l);
                }

                json.WriteEndArray();
            }
        );

    private static void Write(Utf8JsonWriter json, JsonNumbers numbers, Comparison c, Layout l)
    {
        json.WriteStartObject();
        json.WriteNumber("number", l.Number);
        json.WriteString("name", l.Name);
        json.WriteStartObject("changed");
        foreach ((string key, string value) in l.Changed)
        {
            json.WriteString(key, value);
        }

        json.WriteEndObject();
        if (l.Figures is { } f)
        {
            json.WriteBoolean("unbeaten", c.Unbeaten.Contains(l.Number));
            Figures(json, numbers, f);
        }
        else
        {
            json.Strings("cannotBeLaid", l.Why);
        }

        json.WriteEndObject();
    }

    private static void Figures(Utf8JsonWriter json, JsonNumbers numbers, LaidFigures f)
    {
        json.WriteNumber("planks", f.Planks);
        numbers.Number("stockMm", f.StockMm, 4);
        numbers.Area("stockMm2", f.StockMm2);
        numbers.Area("wasteMm2", f.WasteMm2);
        json.WriteNumber("tapered", f.Tapered);
        Worst(json, numbers, ("bendStrainPercent", "bendAt"), f.Bend);
        json.WriteString("bendVerdict", f.Verdict);
        Worst(json, numbers, ("gapMm", "gapAt"), f.Gap);
        Worst(json, numbers, ("driftDegrees", "driftAt"), f.Drift);
        json.WriteNumber("refused", f.Refused);
        json.WriteNumber("doNotSaw", f.DoNotSaw);
        if (f.Boards is { } boards)
        {
            json.WriteNumber("boards", boards.Boards);
            numbers.Area("boardsMm2", boards.Mm2);
            json.WriteNumber("withoutAPlace", boards.Unplaced);
        }
    }

    private static void Worst(
        Utf8JsonWriter json,
        JsonNumbers numbers,
        (string Value, string At) names,
        WorstOf worst
    )
    {
        numbers.Number(names.Value, worst.Value, 4);
        json.WriteString(names.At, worst.At?.ToString());
    }
}
