using System.Text.Json;
using PlankFit.Export.Tables;
using PlankFit.Planking.Timber;

namespace PlankFit.Export.Timber;

/// <summary>What planking.json says of the wood: of a plank and of a layer. Nothing where none is named.</summary>
internal static class TimberJson
{
    public static void Plank(
        Utf8JsonWriter json,
        JsonNumbers numbers,
        LayerTimber layer,
        PlankTimber plank,
        double grainStrainPercent
    )
    {
        json.WriteStartObject("timber");
        json.WriteString("species", layer.Species.Name);
        json.WriteString("way", TimberWords.Of(plank.Bend.Way));
        numbers.Number("grainStrainPercent", grainStrainPercent, 4);
        numbers.NumberOrNull("strainIndex", plank.Bend.StrainIndex, 4);
        numbers.NumberOrNull("laminations", plank.Bend.Laminations, 0);
        numbers.NumberOrNull(
            "widestMm",
            plank.Bend.WidestMm is < 1e5 ? plank.Bend.WidestMm : null,
            1
        );
        if (plank.Bend.EdgeSet is { } set)
        {
            numbers.Number("edgeSetStrainPercent", set.Strain * 100, 4);
            numbers.NumberOrNull("edgeSetMostMm", set.MostMm is < 1e5 ? set.MostMm : null, 2);
            if (set.MayBeForced is { } may)
            {
                json.WriteBoolean("mayBePulledStraight", may);
            }
        }

        numbers.NumberOrNull("clampNewtonsEstimate", plank.Bend.ClampNewtons, 0);
        numbers.Area("surfaceAreaMm2", plank.AreaMm2);
        Weight(numbers, plank.Weight);
        if (plank.Movement is { } movement)
        {
            numbers.Number("acrossChangeMm", movement.AcrossMm, 3);
            numbers.NumberOrNull("throughChangeMm", movement.ThroughMm, 3);
        }

        json.WriteEndObject();
    }

    public static void Layer(Utf8JsonWriter json, JsonNumbers numbers, LayerTimber layer)
    {
        json.WriteStartObject("timber");
        json.WriteString("species", layer.Species.Name);
        numbers.NumberOrNull("densityKgPerM3", layer.KgPerCubicMetre, 1);
        numbers.NumberOrNull("coldStrainPercent", layer.Judge.ColdStrain * 100, 4);
        json.WriteString("coldStrainIs", layer.Judge.Basis);
        foreach (
            (string name, Weight? weight) in new[]
            {
                ("starboard", layer.Starboard),
                ("port", layer.Port),
                ("both", layer.Both),
            }
        )
        {
            if (weight is not null)
            {
                json.WriteStartObject(name);
                Weight(numbers, weight);
                json.WriteEndObject();
            }
        }

        if (layer.Movement is { } run)
        {
            numbers.Number("runWidthMm", run.WidthMm, 1);
            numbers.Number("runChangeMm", run.ChangeMm, 2);
        }

        json.WriteEndObject();
    }

    private static void Weight(JsonNumbers numbers, Weight? weight)
    {
        if (weight is null)
        {
            return;
        }

        numbers.Number("weightKg", weight.Kg, 5);
        numbers.Point("centre", weight.Centre);
        numbers.Number("centreErrorMm", weight.ErrorMm, 4);
    }
}
