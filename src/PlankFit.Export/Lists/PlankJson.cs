using System.Text.Json;
using PlankFit.Export.Joints;
using PlankFit.Export.Shown;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Lists;

/// <summary>One plank of planking.json: the formula's fields, and beside them what else is known of it.</summary>
internal static class PlankJson
{
    /// <summary>A radius above this is written as null: there is no bend to speak of, mm.</summary>
    private const double StraightAboveMm = 1e6;

    public static void Write(Utf8JsonWriter json, JsonNumbers numbers, PlanShown shown, Plank plank)
    {
        BottomPlan plan = shown.Plan;
        json.WriteStartObject();
        json.WriteString("id", plank.Id.ToString());
        json.WriteString("side", PlankWords.Of(plank.Side));
        if (plank.Id.Panel != PlankId.Bottom)
        {
            json.WriteString("panel", plan.Job.Hull.Panel.Name);
        }

        json.WriteNumber("layer", plank.Layer);
        json.WriteNumber("number", plank.Number);
        json.WriteString("kind", Kind(plank.Kind));
        if (plank.IsSawn)
        {
            json.WriteBoolean("sawn", true);
        }

        if (plank.IsFitted)
        {
            json.WriteBoolean("fitted", true);
        }

        json.WriteStartObject("edges");
        numbers.Points("forward", plank.ForwardEdge.Seam);
        numbers.Points("after", plank.AfterEdge.Seam);
        json.WriteEndObject();
        json.WriteStartObject("edgeShapes");
        EdgeShape(json, numbers, "forward", plank.ForwardEdge);
        EdgeShape(json, numbers, "after", plank.AfterEdge);
        json.WriteEndObject();
        numbers.Points("outline", plank.Outline);
        json.WriteStartObject("flat");
        numbers.Points("net", plank.FlatNet);
        numbers.Points("cut", plank.FlatCut);
        json.WriteEndObject();
        json.WriteStartArray("ends");
        foreach (PlankEnd end in plank.Ends)
        {
            End(json, numbers, end);
        }

        json.WriteEndArray();
        Sizes(json, numbers, plank);
        Bend(json, numbers, plank.Bend);
        foreach (IOnPlanks added in shown.Added)
        {
            added.WriteBend(json, plank);
        }

        json.WriteStartArray("pieces");
        foreach (PlankPiece piece in plan.Joints.On(plank.Id)?.Pieces ?? [])
        {
            PieceJson.Write(json, numbers, piece);
        }

        json.WriteEndArray();
        json.Objects(
            "marks",
            plank.Marks,
            mark =>
            {
                json.WriteString("kind", mark.Kind);
                json.WriteString("label", mark.Label);
                numbers.Point("at", mark.At);
                numbers.Point("inward", mark.Inward);
            }
        );
        foreach (IOnPlanks added in shown.Added)
        {
            added.Write(json, plank);
        }

        json.WriteEndObject();
    }

    private static void Sizes(Utf8JsonWriter json, JsonNumbers numbers, Plank plank)
    {
        numbers.Number("netLengthMm", plank.NetLengthMm, 4);
        numbers.Number("cutLengthMm", plank.CutLengthMm, 4);
        numbers.Number("widestMm", plank.WidestMm, 4);
        numbers.Number("narrowestMm", plank.NarrowestMm, 4);
        numbers.Number("widestGapMm", plank.WidestGapMm, 4);
        numbers.Number("widestOverlapMm", plank.WidestOverlapMm, 4);
        json.WriteBoolean("straightEdges", plank.StraightEdges);
        bool keel = plank.Id.Panel == PlankId.Bottom;
        numbers.NumberOrNull("keelAngleDegrees", keel ? plank.KeelAngleDegrees : null, 4);
        if (!keel)
        {
            numbers.NumberOrNull("lowerEdgeAngleDegrees", plank.KeelAngleDegrees, 4);
        }

        numbers.Area("areaMm2", plank.AreaMm2);
        numbers.Number("strainMm", plank.StrainMm, 4);
        json.WriteBoolean("fitBothEnds", plank.FitBothEnds);
        if (plank.DropsIn is { } dropsIn)
        {
            json.WriteBoolean("dropsIn", dropsIn);
        }
        else
        {
            json.WriteNull("dropsIn");
        }
    }

    private static void Bend(Utf8JsonWriter json, JsonNumbers numbers, Bend bend)
    {
        json.WriteStartObject("bend");
        numbers.NumberOrNull(
            "leastRadiusMm",
            bend.LeastRadiusMm is { } radius && radius <= StraightAboveMm ? radius : null,
            2
        );
        numbers.Number("strainPercent", bend.StrainPercent, 6);
        numbers.Number("twistDegreesPerMetre", bend.TwistDegreesPerMetre, 5);
        numbers.Number("edgeStrainPercent", bend.EdgeStrainPercent, 6);
        numbers.Number("worstAtMm", bend.WorstAtMm, 2);
        json.WriteString("verdict", bend.Verdict);
        json.WriteEndObject();
    }

    private static void EdgeShape(
        Utf8JsonWriter json,
        JsonNumbers numbers,
        string name,
        PlankEdge edge
    )
    {
        if (!edge.Exists)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        json.WriteString("word", edge.ShapeWord);
        numbers.Number("roundMm", edge.RoundMm, 4);
        numbers.Number("hollowMm", edge.HollowMm, 4);
        numbers.Number("seamLengthMm", edge.SeamLengthMm, 4);
        if (edge.Neighbour is { } neighbour)
        {
            json.WriteString("neighbour", neighbour.ToString());
        }
        else
        {
            json.WriteNull("neighbour");
        }

        json.WriteEndObject();
    }

    private static void End(Utf8JsonWriter json, JsonNumbers numbers, PlankEnd end)
    {
        json.WriteStartObject();
        json.WriteString("at", end.Word);
        json.WriteString("cut", end.Cut == EndCut.Fit ? "fit" : "left long");
        if (end.OverhangMm is { } overhang)
        {
            numbers.Number("overhangMm", overhang, 4);
        }

        numbers.Number("cutDegrees", end.CutDegrees, 4);
        numbers.Number("bevelDegrees", end.BevelDegrees, 4);
        numbers.Pair("bevelAtCorners", end.BevelAtLeastN, end.BevelAtGreatestN, 4);
        numbers.Number("allowanceMm", end.AllowanceMm, 4);
        numbers.Points("outerLine", end.OuterLine);
        numbers.Points("innerLine", end.InnerLine);
        json.WriteEndObject();
    }

    private static string Kind(PlankKind kind) =>
        kind switch
        {
            PlankKind.Full => "full",
            PlankKind.Master => "master",
            PlankKind.Tapered => "tapered",
            _ => "corner",
        };
}
