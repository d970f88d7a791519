using System.Text.Json;
using PlankFit.Export.Tables;
using PlankFit.Planking.Fastenings;

namespace PlankFit.Export.Fastenings;

/// <summary>The fastenings of one plank in planking.json: "fastenings": [{ "use", "kind", "on", "at", "lengthMm", "temporary" }].</summary>
internal static class FasteningJson
{
    public static void Write(Utf8JsonWriter json, JsonNumbers numbers, PlankFastenings made)
    {
        json.Objects(
            "fastenings",
            made.Points,
            f =>
            {
                json.WriteString("use", FasteningWords.Use(f.Use));
                json.WriteString("kind", FasteningWords.What(f.Use, f.Kind, f.Shape));
                json.WriteString("on", f.Backing);
                numbers.Point("at", f.At);
                numbers.NumberOrNull("lengthMm", f.LengthMm, 4);
                json.WriteBoolean("temporary", f.IsTemporary);
            }
        );
    }
}
