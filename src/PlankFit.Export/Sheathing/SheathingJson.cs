using System.Text.Json;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheathing;

/// <summary>
/// Cloth as data, sheathing.json, schema plankfit-sheathing/1: layers with their shear by bay and their lines by station, pieces with outlines from their own lower
/// left corner (x along the roll, as seen from outside on the boat), and where each lies on its roll.
/// </summary>
public static class SheathingJson
{
    public const string Schema = "plankfit-sheathing/1";

    /// <summary>Every so many crossings of the net are written.</summary>
    private const double EveryMm = 200;

    /// <summary>Writes the cloth. The stream is left open.</summary>
    public static void Write(Job job, SheathingPlan sheathing, Stream stream) =>
        JsonFile.Write(
            (Schema, job),
            angles: true,
            stream,
            (json, numbers) =>
            {
                json.WriteStartArray("layers");
                foreach (SheathedLayer layer in sheathing.Layers)
                {
                    Layer(json, numbers, layer);
                }

                json.WriteEndArray();
                json.Objects(
                    "pieces",
                    sheathing.Pieces,
                    piece =>
                    {
                        json.WriteString("id", piece.Id);
                        json.WriteString("side", PlankWords.Of(piece.Side));
                        json.WriteNumber("layer", piece.Layer);
                        json.WriteString("cloth", piece.Cloth);
                        numbers.Area("areaMm2", piece.AreaMm2);
                        numbers.Point("bow", piece.Bow);
                        numbers.Point("cross", piece.Cross);
                        json.WriteBoolean("firstLineAlongRoll", piece.FirstAlongRoll);
                        numbers.Points("outline", piece.Outline);
                        numbers.Points("trim", piece.Trim);
                        json.Objects(
                            "darts",
                            piece.Darts,
                            dart =>
                            {
                                numbers.Point("edge", dart.Mouth);
                                numbers.Point("tip", dart.Tip);
                                numbers.Number("degrees", dart.Degrees, 4);
                                numbers.Number("fromTipMm", dart.FromTipMm, 4);
                                numbers.Number("widthMm", dart.WidthMm, 4);
                                json.WriteBoolean("laps", dart.Laps);
                            }
                        );
                    }
                );
                json.WriteStartArray("rolls");
                foreach (RollPlan plan in sheathing.Rolls)
                {
                    foreach (CutRoll roll in plan.Rolls)
                    {
                        Roll(json, numbers, plan, roll);
                    }
                }

                json.WriteEndArray();
                JsonFile.Findings(json, sheathing.Findings);
            }
        );

    private static void Layer(Utf8JsonWriter json, JsonNumbers numbers, SheathedLayer layer)
    {
        json.WriteStartObject();
        json.WriteNumber("number", layer.Number);
        json.WriteString("layer", layer.Name);
        json.WriteString("cloth", layer.Cloth.Name);
        json.WriteString("face", SheathingWords.Face(layer));
        numbers.Number("massGramsPerM2", layer.Cloth.MassGsm, 1);
        numbers.Number("faceMm", layer.FaceMm, 4);
        numbers.Area("laidBothSidesMm2", layer.LaidMm2);
        json.Objects(
            "sides",
            layer.Sides,
            side =>
            {
                json.Strings("of", side.Holds.Select(of => PlankWords.Of(of)));
                json.WriteString("first", SheathingWords.First(side.First, LengthUnit.Millimetre));
                numbers.Area("faceAreaMm2", side.FaceAreaMm2);
                numbers.Area("laidMm2", side.LaidMm2);
                numbers.Area("cutMm2", side.CutMm2);
                numbers.Points("trim", side.Trim);
                Bays(json, numbers, side);
                Stations(json, numbers, side);
                Net(json, numbers, side);
            }
        );
        json.WriteEndObject();
    }

    private static void Bays(Utf8JsonWriter json, JsonNumbers numbers, SheathedSide side)
    {
        json.Objects(
            "shear",
            side.Bays,
            bay =>
            {
                json.WriteString("fromStation", bay.FromStation);
                json.WriteString("toStation", bay.ToStation);
                numbers.Number("degrees", bay.Shear.Degrees, 4);
                numbers.Number("byFirstLineDegrees", bay.Shear.Turning, 4);
                numbers.Number("byBottomDegrees", bay.Shear.Bulge, 4);
                numbers.Number("partOfGirth", bay.AtPart, 4);
                numbers.Number("liftsOver300Mm", bay.LiftMm(300), 4);
            }
        );
    }

    private static void Stations(Utf8JsonWriter json, JsonNumbers numbers, SheathedSide side)
    {
        json.Objects(
            "stations",
            side.Marks,
            marks =>
            {
                json.WriteString("station", marks.Station);
                numbers.Number("positionMm", marks.XMm, 4);
                numbers.Number("girthMm", marks.GirthMm, 4);
                numbers.Number("keelHalfMm", marks.KeelHalfMm, 4);
                numbers.Number("trimAtKeelMm", marks.TrimAtKeelMm, 4);
                numbers.Number("trimAtChineMm", marks.TrimAtChineMm, 4);
                json.Objects(
                    "lines",
                    marks.Lines,
                    line =>
                    {
                        json.WriteString("line", line.What);
                        numbers.Number("fromKeelMm", line.FromKeelMm, 4);
                        numbers.Number("fromChineMm", line.FromChineMm, 4);
                    }
                );
            }
        );
    }

    /// <summary>Places of the net, starboard's frame: x, y, z on the hull, p along the roll and q across.</summary>
    private static void Net(Utf8JsonWriter json, JsonNumbers numbers, SheathedSide side)
    {
        double half = side.Net.MeshMm;
        json.Objects(
            "net",
            side.Net.OnGround.Where(m => Near(m.Middle.X, half) && Near(m.Middle.Y, half)),
            mesh =>
            {
                numbers.Point("at", mesh.P);
                numbers.Point("flat", mesh.Middle);
                numbers.Number("shearDegrees", mesh.ShearDegrees, 4);
            }
        );

        static bool Near(double at, double half) =>
            Math.Abs(Math.IEEERemainder(at, EveryMm)) < half / 2;
    }

    private static void Roll(Utf8JsonWriter json, JsonNumbers numbers, RollPlan plan, CutRoll roll)
    {
        json.WriteStartObject();
        json.WriteString("cloth", plan.Cloth.Name);
        json.WriteNumber("roll", roll.Number);
        json.WriteBoolean("onHand", roll.OnHand);
        numbers.Number("widthMm", roll.Roll.WidthMm, 4);
        numbers.Number("lengthMm", roll.Roll.LengthMm, 4);
        numbers.Number("usedMm", roll.UsedMm, 4);
        json.Objects(
            "pieces",
            roll.Pieces,
            piece =>
            {
                json.WriteString("id", piece.Piece.Id);
                json.WriteBoolean("endForEnd", piece.Turned);
                json.WriteBoolean("outerFaceDown", piece.Over);
                numbers.Point("at", piece.At);
            }
        );
        json.Objects(
            "offcuts",
            roll.Offcuts,
            left =>
            {
                json.WriteString("id", left.Id);
                numbers.Point("at", left.At);
                numbers.Number("lengthMm", left.LengthMm, 4);
                numbers.Number("widthMm", left.WidthMm, 4);
            }
        );
        json.WriteEndObject();
    }
}
