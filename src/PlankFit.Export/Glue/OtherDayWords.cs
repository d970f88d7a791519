using System.Globalization;
using PlankFit.Export.Words;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Glue;

/// <summary>How the plan shifts with temperature, in a sentence for each other day.</summary>
internal static class OtherDayWords
{
    public static IEnumerable<string> Of(GluePlan glue, LengthUnit unit)
    {
        var planned = OtherDay.Of(glue, 0);
        return glue.OtherDays.All.Select(day =>
            $"{ShopHeat.Apart(Math.Abs(day.Degrees), unit)} {(day.Degrees > 0 ? "WARMER" : "COOLER")} all day: {Comes(day, unit)}; as planned {Comes(planned, unit)}.{Wanting(day, planned)}"
        );
    }

    private static string Comes(OtherDay day, LengthUnit unit) =>
        day.LastDownAt is not { } last
            ? "no batch at all"
            : $"{GlueWords.Batches(day.Batches)} of {AmountText.Grams(day.MostGrams, unit)} at most in {PlanWords.Count(day.Sessions, "session")}, the last down {GlueWords.When(last)}";

    private static string Wanting(OtherDay day, OtherDay planned)
    {
        string[] more = [.. day.NotPlanned.Except(planned.NotPlanned)];
        return more.Length == 0
            ? ""
            : string.Create(
                CultureInfo.InvariantCulture,
                $" Then no time is found for {string.Join(", ", more)}."
            );
    }
}
