using System.Text.Encodings.Web;
using System.Text.Json;
using PlankFit.Export.Joints;
using PlankFit.Export.Shown;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Lists;

/// <summary>
/// The results as data, planking.json, schema plankfit-planking/1. Points have four decimals of a millimetre, angles four of a degree; nothing in it
/// depends on the time or on the machine, so that the same plan gives the same bytes.
/// </summary>
public static class PlankingJson
{
    public const string Schema = "plankfit-planking/1";

    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        IndentSize = 1,
        NewLine = "\n",
        // A file, not a page: ° and ü stay readable.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        SkipValidation = true,
    };

    /// <summary>Writes the plan. The stream is left open.</summary>
    /// <exception cref="InvalidOperationException">A plank holds a number that is not finite; the message names it.</exception>
    public static void Write(PlanShown shown, Stream stream)
    {
        BottomPlan plan = shown.Plan;
        using Utf8JsonWriter json = new(stream, Options);
        JsonNumbers numbers = new(json);
        JsonFile.Head(json, (Schema, plan.Job), angles: true);
        json.WriteStartArray("layers");
        foreach (BottomPlan panel in plan.Panels)
        {
            foreach (LayerPlan layer in panel.Layers)
            {
                Named(
                    $"layer \"{layer.Spec.Name}\"",
                    () => Layer(json, numbers, shown.On(panel), layer)
                );
            }
        }

        json.WriteEndArray();
        json.WriteStartArray("planks");
        foreach ((BottomPlan panel, PlankLayerPlan layer) in plan.AllPlankLayers)
        {
            foreach (Plank plank in layer.Starboard.Concat(layer.Port))
            {
                Named(
                    plank.Id.ToString(),
                    () => PlankJson.Write(json, numbers, shown.On(panel), plank)
                );
                json.Flush();
            }
        }

        json.WriteEndArray();
        JsonFile.Findings(json, plan.Findings);
        json.WriteEndObject();
        json.Flush();
        stream.WriteByte((byte)'\n');
    }

    private static void Layer(
        Utf8JsonWriter json,
        JsonNumbers numbers,
        PlanShown shown,
        LayerPlan layer
    )
    {
        BottomPlan plan = shown.Plan;
        json.WriteStartObject();
        if (!plan.Job.Hull.Panel.HasKeel)
        {
            json.WriteString("panel", plan.Job.Hull.Panel.Name);
        }

        if (layer is PlankLayerPlan planks)
        {
            json.WriteNumber("layer", planks.Number);
            json.WriteString("kind", "planks");
            json.WriteString("name", planks.Planks.Name);
            numbers.Number("thicknessMm", planks.Planks.ThicknessMm, 4);
            numbers.Number("stockWidthMm", planks.Planks.WidthMm, 4);
            json.WriteString("heads", PlankWords.Of(planks.Planks.Heads));
            numbers.Number("angleDegrees", planks.Planks.AngleDegrees, 4);
            numbers.Number("neutralOffsetMm", planks.NeutralOffsetMm, 4);
            numbers.Area("areaMm2", planks.AreaMm2);
            json.WriteNumber("masterNumber", planks.MasterNumber);
            numbers.Number("masterShiftMm", planks.MasterShiftMm, 4);
            numbers.Points("outline", planks.Outline);
            foreach (IOnPlanks added in shown.Added)
            {
                added.WriteLayer(json, planks);
            }

            PieceJson.Layer(json, plan, planks);
        }
        else
        {
            json.WriteString("kind", "cloth");
            json.WriteString("name", layer.Spec.Name);
            numbers.Number("thicknessMm", layer.Spec.ThicknessMm, 4);
        }

        json.WriteEndObject();
    }

    private static void Named(string what, Action write)
    {
        try
        {
            write();
        }
        catch (NotFiniteNumberException fault)
        {
            throw new InvalidOperationException(
                $"{what}: {fault.Message} ({NumberName(fault.OffendingNumber)}); planking.json is not written",
                fault
            );
        }
    }

    private static string NumberName(double value) =>
        double.IsFinite(value) ? NumberText.Trimmed(Math.Clamp(value, -1e15, 1e15), 0)
        : double.IsNaN(value) ? "NaN"
        : "infinite";
}
