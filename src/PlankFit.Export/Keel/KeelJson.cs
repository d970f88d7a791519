using System.Collections.Immutable;
using System.Text.Json;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Keel;

/// <summary>The keel as data, keel.json, schema plankfit-keel/1. Lengths have four decimals of a millimetre, angles four of a degree.</summary>
public static class KeelJson
{
    public const string Schema = "plankfit-keel/1";

    /// <summary>Writes the keel. The stream is left open.</summary>
    public static void Write(Job job, KeelPlan keel, Stream stream)
    {
        JsonFile.Write(
            (Schema, job),
            angles: true,
            stream,
            (json, numbers) =>
            {
                numbers.Number("halfWidthToleranceMm", job.Keel.HalfWidthToleranceMm, 4);
                numbers.Number("proudToleranceMm", job.Keel.ProudToleranceMm, 4);
                json.WriteStartArray("layers");
                foreach (KeelLayerPlan layer in keel.Layers)
                {
                    Layer(json, numbers, layer);
                }

                json.WriteEndArray();
                json.Objects(
                    "cap",
                    keel.Cap,
                    row =>
                    {
                        json.WriteString("station", row.Station);
                        numbers.Number("positionMm", row.PositionMm, 4);
                        json.WriteString("side", PlankWords.Of(row.Side));
                        numbers.Number("halfWidthMm", row.HalfWidthMm, 4);
                        numbers.Number("edgeBevelDegrees", row.EdgeBevelDegrees, 4);
                    }
                );
                JsonFile.Findings(json, keel.Findings);
            }
        );
    }

    private static void Layer(Utf8JsonWriter json, JsonNumbers numbers, KeelLayerPlan layer)
    {
        json.WriteStartObject();
        json.WriteString("name", layer.Spec.Name);
        json.WriteString("meets", layer.Spec.Meets);
        numbers.Number("thicknessMm", layer.Spec.ThicknessMm, 4);
        numbers.NumberOrNull("fadesAtMm", layer.RunsOutAtMm, 4);
        Rows(json, numbers, "stations", layer.Stations);
        Rows(json, numbers, "between", layer.Between);
        json.Objects(
            "plankEnds",
            layer.PlankEnds,
            end =>
            {
                json.WriteString("plank", end.PlankId.ToString());
                numbers.Number("positionMm", end.PositionMm, 4);
                numbers.Number("lengthChangeMm", end.LengthChangeMm, 4);
                numbers.Number("cutDegrees", end.CutDegrees, 4);
                numbers.Number("cutChangeDegrees", end.CutChangeDegrees, 4);
                numbers.Number("bevelDegrees", end.BevelDegrees, 4);
            }
        );
        json.WriteEndObject();
    }

    private static void Rows(
        Utf8JsonWriter json,
        JsonNumbers numbers,
        string name,
        ImmutableArray<KeelStation> rows
    )
    {
        json.Objects(
            name,
            rows,
            row =>
            {
                if (row.Station.Length > 0)
                {
                    json.WriteString("station", row.Station);
                }

                numbers.Number("positionMm", row.PositionMm, 4);
                json.WriteString("side", PlankWords.Of(row.Side));
                numbers.Number("deadriseDegrees", row.Angles.DeadriseDegrees, 4);
                numbers.Number("wantedHalfWidthMm", row.WantedHalfWidthMm, 4);
                numbers.Number("halfWidthMm", row.HalfWidthMm, 4);
                numbers.Number("proudMm", row.ProudMm, 4);
                numbers.Number("bevelDegrees", row.Angles.BevelDegrees, 4);
                numbers.Number("plankEndBevelDegrees", row.Angles.PlankEndBevelDegrees, 4);
                numbers.Number("slopeDegrees", row.Angles.SlopeDegrees, 4);
                numbers.Number("alongKeelMm", row.AlongMm, 4);
                if (row.Station.Length > 0)
                {
                    json.WriteBoolean("measured", row.Measured);
                }
            }
        );
    }
}
