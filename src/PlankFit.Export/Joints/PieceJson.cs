using System.Text.Json;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Joints;

/// <summary>One piece of a plank in planking.json: its shapes in the plank's own flat coordinates, and the joints at its ends, inboard first.</summary>
internal static class PieceJson
{
    public static void Write(Utf8JsonWriter json, JsonNumbers numbers, PlankPiece piece)
    {
        json.WriteStartObject();
        json.WriteString("id", piece.Id.ToString());
        numbers.Points("net", piece.Net);
        numbers.Points("cut", piece.Cut);
        numbers.Number("lengthMm", piece.LengthMm, 4);
        json.WriteStartArray("joints");
        Joint(json, numbers, piece.Inboard, "inboard");
        Joint(json, numbers, piece.Outboard, "outboard");
        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>How many pieces the long planks of a layer are made of, a side each, and how few are proved possible.</summary>
    public static void Layer(Utf8JsonWriter json, BottomPlan plan, PlankLayerPlan layer)
    {
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            if (plan.Joints.Of(layer.Number, side) is { Planks.IsEmpty: false } pieced)
            {
                json.WriteStartObject(PlankWords.Of(side) + "Pieces");
                json.WriteNumber("planks", pieced.Planks.Length);
                json.WriteNumber("pieces", pieced.Pieces);
                json.WriteNumber("leastPieces", pieced.LeastPieces);
                json.WriteEndObject();
            }
        }
    }

    private static void Joint(
        Utf8JsonWriter json,
        JsonNumbers numbers,
        PlankJoint? joint,
        string end
    )
    {
        if (joint is null)
        {
            return;
        }

        json.WriteStartObject();
        json.WriteString("id", joint.Id.ToString());
        json.WriteString("end", end);
        json.WriteString("kind", joint.Kind == JointKind.Butt ? "butt" : "scarf");
        numbers.Number("atMm", joint.AtMm, 4);
        numbers.Number("cutDegrees", joint.CutDegrees, 4);
        if (joint.Backing is { } backing)
        {
            json.WriteString("backing", backing);
        }
        else
        {
            json.WriteNull("backing");
        }

        numbers.NumberOrNull("ratio", joint.Ratio, 4);
        numbers.Number("lengthMm", joint.LengthMm, 4);
        if (joint.TaperedFace(end == "outboard") is { } face)
        {
            json.WriteString("taperedOn", face);
        }
        else
        {
            json.WriteNull("taperedOn");
        }

        numbers.Points("outerLine", joint.OuterLine);
        numbers.Points("innerLine", joint.InnerLine);
        json.WriteEndObject();
    }
}
