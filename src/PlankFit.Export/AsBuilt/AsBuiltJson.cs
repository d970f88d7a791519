using System.Collections.Immutable;
using System.Text.Json;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.AsBuilt;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Girths;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.AsBuilt;

/// <summary>The hull as it stands as data, as-built.json, schema plankfit-as-built/1.</summary>
public static class AsBuiltJson
{
    public const string Schema = "plankfit-as-built/1";

    /// <summary>Writes what was measured and made of it. The stream is left open.</summary>
    public static void Write(Job job, AsBuiltPlan standing, Stream stream)
    {
        JsonFile.Write(
            (Schema, job),
            angles: false,
            stream,
            (json, numbers) =>
            {
                json.WriteStartArray("girths");
                foreach (
                    (Side side, ImmutableArray<GirthRow> rows) in standing.Girths.OrderBy(g =>
                        g.Key
                    )
                )
                {
                    foreach (GirthRow row in rows)
                    {
                        json.WriteStartObject();
                        json.WriteString("station", row.Station);
                        json.WriteString("side", PlankWords.Of(side));
                        numbers.Number("positionMm", row.PositionMm, 4);
                        numbers.Number("drawnMm", row.DrawnMm, 4);
                        numbers.NumberOrNull("measuredMm", row.MeasuredMm, 4);
                        numbers.Number("laidToMm", row.NowMm, 4);
                        json.WriteEndObject();
                    }
                }

                json.WriteEndArray();
                json.WriteStartArray("seams");
                foreach (SeamCreep drift in standing.Drifts)
                {
                    foreach (DriftRow row in drift.Rows)
                    {
                        json.WriteStartObject();
                        json.WriteString("plank", row.PlankId.ToString());
                        json.WriteString("at", drift.At == PanelEdge.Lower ? "keel" : "chine");
                        numbers.Number("drawnMm", row.PlannedMm, 4);
                        numbers.Number("measuredMm", row.MeasuredMm, 4);
                        json.WriteEndObject();
                    }
                }

                json.WriteEndArray();
                json.Objects(
                    "drifts",
                    standing.Drifts,
                    drift =>
                    {
                        json.WriteNumber("layer", drift.Layer);
                        json.WriteString("side", PlankWords.Of(drift.Side));
                        json.WriteString("at", drift.At == PanelEdge.Lower ? "keel" : "chine");
                        json.WriteString("going", drift.GoingAft ? "aft" : "forward");
                        numbers.Number("mmAPlank", drift.MmAPlank, 4);
                        json.WriteString("since", drift.SincePlank?.ToString());
                        json.WriteNumber("planksLeft", drift.PlanksLeft);
                        numbers.NumberOrNull("narrowerMm", drift.NarrowerMm, 4);
                    }
                );
                Moves(json, numbers, standing);
                Cut(json, numbers, standing);
            }
        );
    }

    private static void Moves(Utf8JsonWriter json, JsonNumbers numbers, AsBuiltPlan standing)
    {
        json.WriteStartArray("moves");
        foreach (
            (Side side, ImmutableArray<FairingMove> moves) in standing.Moves.OrderBy(g => g.Key)
        )
        {
            foreach (FairingMove move in moves)
            {
                json.WriteStartObject();
                json.WriteString("station", move.Station);
                json.WriteString("side", PlankWords.Of(side));
                json.WriteString("line", move.Line);
                json.WriteString("measure", OffsetRow.Word(move.Measure));
                numbers.Number("oldMm", move.OldMm, 4);
                numbers.Number("newMm", move.NewMm, 4);
                json.WriteEndObject();
            }
        }

        json.WriteEndArray();
    }

    private static void Cut(Utf8JsonWriter json, JsonNumbers numbers, AsBuiltPlan standing)
    {
        json.Objects(
            "cut",
            standing.Sawn,
            row =>
            {
                json.WriteString("plank", row.Id.ToString());
                json.WriteString("cutFrom", row.Fit.Revision);
                numbers.NumberOrNull("longerForwardMm", row.Fit.ForwardMm, 4);
                numbers.NumberOrNull("longerAfterMm", row.Fit.AfterMm, 4);
                bool bottom = row.Id.Panel == PlankId.Bottom;
                numbers.NumberOrNull(
                    bottom ? "widerAtKeelMm" : "widerAtLowerEdgeMm",
                    row.Fit.AtKeelMm,
                    4
                );
                numbers.NumberOrNull(
                    bottom ? "widerAtChineMm" : "widerAtUpperEdgeMm",
                    row.Fit.AtChineMm,
                    4
                );
                numbers.Number("spareMm", row.Fit.SpareMm, 4);
                numbers.Number("thinnerMm", row.Fit.ThinnerMm, 4);
            }
        );
    }
}
