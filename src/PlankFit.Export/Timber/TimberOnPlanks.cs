using System.Text.Json;
using PlankFit.Export.Shown;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Timber;

/// <summary>The wood of every panel's planks: on their cards, in the list, the summary and planking.json.</summary>
internal sealed class TimberOnPlanks(BottomPlan plan) : IOnPlanks
{
    public IEnumerable<string> OnCard(Plank plank) =>
        TimberWords.OnCard(plan.PanelOf(plank.Id), plank);

    public IEnumerable<string> InList(Plank plank) =>
        TimberWords.InList(plan.PanelOf(plank.Id), plank);

    public IEnumerable<string> InSummary() => plan.Panels.SelectMany(TimberSummary.Lines);

    public void WriteBend(Utf8JsonWriter json, Plank plank)
    {
        if (TimberWords.Found(plan.PanelOf(plank.Id), plank) is var (wood, timber))
        {
            TimberJson.Plank(json, new(json), wood, timber, plank.Bend.GrainStrainPercent);
        }
    }

    public void WriteLayer(Utf8JsonWriter json, PlankLayerPlan layer)
    {
        if (plan.Panels.First(p => p.PlankLayers.Contains(layer)).Timber?.Of(layer) is { } timber)
        {
            TimberJson.Layer(json, new(json), timber);
        }
    }
}
