using System.Text.Json;
using PlankFit.Export.Shown;
using PlankFit.Export.Tables;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Trust;

/// <summary>How sure a plank is, on its card and in planking.json.</summary>
internal sealed class TrustOnPlanks(BottomPlan plan, TrustPlan trust) : IOnPlanks
{
    public IEnumerable<string> OnCard(Plank plank) =>
        trust.On(plank.Id) is { } sure
            ? TrustWords.OnCard(plan.LayerOf(plank.Id), plank, sure, plan.Job.Units)
            : [];

    public IEnumerable<double?> SureMm(IEnumerable<Plank> planks) =>
        planks.Select(p => trust.On(p.Id) is { } sure ? sure.LengthMm ?? sure.InPlaceMm : null);

    public void Write(Utf8JsonWriter json, Plank plank)
    {
        if (trust.On(plank.Id) is not { } sure)
        {
            return;
        }

        var numbers = new JsonNumbers(json);
        json.WriteStartObject("within19In20");
        numbers.NumberOrNull("lengthMm", sure.LengthMm, 2);
        numbers.NumberOrNull("inboardMm", sure.InboardMm, 2);
        numbers.NumberOrNull("outboardMm", sure.OutboardMm, 2);
        numbers.NumberOrNull("inboardDegrees", sure.InboardDegrees, 3);
        numbers.NumberOrNull("outboardDegrees", sure.OutboardDegrees, 3);
        numbers.NumberOrNull("bevelDegrees", sure.BevelDegrees, 3);
        numbers.NumberOrNull("scribeOneInTwentyShortMm", sure.OneInTwentyMm, 2);
        numbers.NumberOrNull("scribeNoneShortMm", sure.NoneShortMm, 2);
        json.WriteBoolean("mayFitBothEnds", sure.MayFitBothEnds);
        json.WriteEndObject();
    }
}
