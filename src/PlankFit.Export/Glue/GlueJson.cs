using System.Text.Json;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Glue;

/// <summary>glue.json, schema plankfit-glue/1: amounts, batches, sessions and hold points. Times are minutes from midnight of the first day.</summary>
public static class GlueJson
{
    private const string Schema = "plankfit-glue/1";

    public static void Write(Job job, GluePlan glue, Stream stream) =>
        JsonFile.Write(
            (Schema, job),
            false,
            stream,
            (json, numbers) =>
            {
                Products(json, numbers, glue);
                Amounts(json, numbers, glue);
                Stages(json, numbers, glue);
                Sessions(json, numbers, glue);
                OtherDays(json, numbers, glue);
                JsonFile.Findings(json, glue.Findings);
            }
        );

    private static void OtherDays(Utf8JsonWriter json, JsonNumbers numbers, GluePlan glue) =>
        json.Objects(
            "otherDays",
            glue.OtherDays.All,
            day =>
            {
                numbers.Number("warmerCelsius", day.Degrees, 1);
                json.WriteNumber("batches", day.Batches);
                json.WriteNumber("sessions", day.Sessions);
                numbers.NumberOrNull("lastDownMinute", day.LastDownAt, 2);
                numbers.Number("largestGrams", day.MostGrams, 1);
                json.WriteStartArray("notPlanned");
                foreach (string layer in day.NotPlanned)
                {
                    json.WriteStringValue(layer);
                }

                json.WriteEndArray();
            }
        );

    private static void Products(Utf8JsonWriter json, JsonNumbers numbers, GluePlan glue)
    {
        json.Objects(
            "products",
            glue.Totals,
            total =>
            {
                json.WriteString("name", total.Mix.Name);
                numbers.Number("resinPerHardenerByVolume", total.Mix.Ratio.ResinPerHardener, 6);
                numbers.Number("resinPerHardenerByMass", total.Mix.Ratio.ResinPerHardenerByMass, 6);
                Range(json, numbers, "boundsKg", total.Bounds);
                Range(json, numbers, "likelyKg", total.Likely);
                numbers.Number("orderResinKg", total.Order.ResinKg, 4);
                numbers.Number("orderHardenerKg", total.Order.HardenerKg, 4);
                numbers.Number("thinnedPercent", 100 * total.Mix.Thinned, 2);
                json.WriteBoolean("timed", total.Mix.IsTimed);
            }
        );
    }

    private static void Amounts(Utf8JsonWriter json, JsonNumbers numbers, GluePlan glue)
    {
        json.Objects(
            "amounts",
            glue.Amounts,
            line =>
            {
                json.WriteString("where", line.Where);
                json.WriteString("for", GlueWords.Of(line.Use));
                json.WriteString("product", line.Mix.Name);
                numbers.Number("areaMm2", line.AreaMm2, 0);
                Range(json, numbers, "kg", line.Kg);
                json.WriteString("rate", line.Rate);
                json.Objects(
                    "fillers",
                    line.Fillers,
                    filler =>
                    {
                        json.WriteString("name", filler.Of.Name);
                        Range(json, numbers, "kg", filler.Kg);
                    }
                );
            }
        );
    }

    private static void Stages(Utf8JsonWriter json, JsonNumbers numbers, GluePlan glue)
    {
        json.Objects(
            "stages",
            glue.Stages,
            stage =>
            {
                json.WriteString("layer", stage.Layer);
                json.WriteString("for", GlueWords.Of(stage.Use));
                json.WriteString("product", stage.Mix.Name);
                Points(json, numbers, "before", stage.Before);
                json.WriteStartArray("batches");
                foreach (GlueBatch batch in stage.Batches)
                {
                    Batch(json, numbers, batch);
                }

                json.WriteEndArray();
                Points(json, numbers, "after", stage.After);
            }
        );
    }

    private static void Batch(Utf8JsonWriter json, JsonNumbers numbers, GlueBatch batch)
    {
        json.WriteStartObject();
        json.WriteString("id", batch.Name);
        json.WriteString("side", PlankWords.Of(batch.Side));
        numbers.Number("start", batch.MixAt, 2);
        numbers.Number("celsius", batch.Celsius, 2);
        numbers.Number("grams", batch.Grams, 2);
        json.WriteNumber("clamps", batch.Clamps);
        numbers.Number("resinKg", batch.Parts.ResinKg, 5);
        numbers.Number("hardenerKg", batch.Parts.HardenerKg, 5);
        numbers.Number("outAt", batch.Clocks.OutAt, 2);
        numbers.Number("outBy", batch.Clocks.OutBy, 2);
        numbers.Number("end", batch.Clocks.DownAt, 2);
        numbers.Number("byWhen", batch.Clocks.DownBy, 2);
        numbers.Number("outByThreeDegreesWarmer", batch.Clocks.Warmer.OutBy, 2);
        numbers.Number("byWhenThreeDegreesWarmer", batch.Clocks.Warmer.DownBy, 2);
        json.Objects(
            "planks",
            batch.Planks,
            plank =>
            {
                json.WriteString("id", plank.Id.ToString());
                numbers.Number("grams", plank.Grams, 2);
                numbers.Number("spread", plank.SpreadAt, 2);
                numbers.Number("start", plank.SetAt, 2);
                numbers.Number("end", plank.DoneAt, 2);
            }
        );
        json.WriteEndObject();
    }

    private static void Points(
        Utf8JsonWriter json,
        JsonNumbers numbers,
        string name,
        IEnumerable<HoldPoint> points
    )
    {
        json.Objects(
            name,
            points,
            point =>
            {
                json.WriteString("what", point.What);
                numbers.NumberOrNull("notBefore", point.NotBefore, 2);
                numbers.NumberOrNull("notAfter", point.NotAfter, 2);
            }
        );
    }

    private static void Sessions(Utf8JsonWriter json, JsonNumbers numbers, GluePlan glue)
    {
        Func<GlueSession, SessionClamps> held = ClampCounts.Of(glue);
        json.Objects(
            "sessions",
            glue.Sessions,
            session =>
            {
                json.WriteNumber("number", session.Number);
                json.WriteString("layer", session.Layer);
                numbers.Number("start", session.From, 2);
                numbers.Number("end", session.To, 2);
                numbers.NumberOrNull("noneEndsBefore", session.NoneEndsBefore, 2);
                numbers.NumberOrNull("searchBound", session.Searched?.EndsAt, 2);
                json.WriteBoolean("searchProved", session.Searched?.Proved == true);
                SessionClamps clamps = held(session);
                json.WriteNumber("clampsPutOn", clamps.PutOn);
                json.WriteNumber("clampsAtOnce", clamps.AtOnce);
                json.Strings("batches", session.Batches.Select(batch => batch.Name));
            }
        );
    }

    private static void Range(Utf8JsonWriter json, JsonNumbers numbers, string name, Estimate range)
    {
        json.WriteStartObject(name);
        numbers.Number("least", range.Least, 4);
        numbers.Number("usual", range.Usual, 4);
        numbers.Number("most", range.Most, 4);
        json.WriteEndObject();
    }
}
