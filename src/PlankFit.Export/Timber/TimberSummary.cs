using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Timber;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Timber;

/// <summary>What a person is told of the timber at the end of the work.</summary>
public static class TimberSummary
{
    public static IEnumerable<string> Lines(BottomPlan plan)
    {
        if (plan.Timber is not { } timber)
        {
            yield break;
        }

        LengthUnit unit = plan.Job.Units;
        foreach (LayerTimber layer in timber.Layers)
        {
            yield return Layer(plan, layer, unit);
            if (layer.Movement is { } run)
            {
                yield return $"Layer {plan.Job.Hull.Panel.Letter}{layer.Layer} between workshop and service: {Movement(run, unit)}";
            }
        }

        if (timber.Whole is { } whole)
        {
            yield return $"Planking of the {plan.Job.Hull.Panel.Name}, as fitted: {TimberWords.Weight(whole.Kg, unit)}, its centre {Centre(plan, whole.Centre)}.";
        }
    }

    /// <summary>4210 mm aft of station 0, 315 mm above the table's base line.</summary>
    public static string Centre(BottomPlan plan, Vec3 centre)
    {
        LengthUnit unit = plan.Job.Units;
        Station first = plan.Job.Offsets.Stations[0];
        return $"{PlankWords.ToCentre(Math.Abs(centre.X - first.PositionMm), unit)} {(centre.X < first.PositionMm ? "forward" : "aft")} of station {first.Name}"
            + (
                PlankWords.ToCentre(Math.Abs(centre.Y), unit) == PlankWords.ToCentre(0, unit)
                    ? ""
                    : $", {PlankWords.ToCentre(Math.Abs(centre.Y), unit)} out to {(centre.Y > 0 ? "starboard" : "port")}"
            )
            + $", {PlankWords.ToCentre(Math.Abs(centre.Z), unit)} {(centre.Z < 0 ? "below" : "above")} the table's base line";
    }

    /// <summary>43 planks, 6.4 m side by side, from 9 % to 14 %: 86 mm wider if nothing held them.</summary>
    public static string Movement(RunMovement run, LengthUnit unit) =>
        $"{PlanWords.Count(run.Planks, "plank")} side by side, {LengthText.ForPaper(run.WidthMm, unit)} of width, from {TimberWords.Percent(run.FromPercent)} to {TimberWords.Percent(run.ToPercent)} moisture: "
        + (
            run.ChangeMm == 0
                ? "no change."
                : $"{PlankWords.Small(Math.Abs(run.ChangeMm), unit)} {(run.ChangeMm > 0 ? "wider" : "narrower")} if nothing held them."
        );

    private static string Layer(BottomPlan plan, LayerTimber layer, LengthUnit unit)
    {
        string weight = (layer.Starboard, layer.Both) is ({ } side, { } both)
            ? $"{TimberWords.Weight(side.Kg, unit)} to starboard, {TimberWords.Weight(both.Kg, unit)} in all"
            : "weight not known";
        PlankTimber? worst = layer.Planks.MaxBy(p => p.Bend.StrainIndex);
        string bend = worst?.Bend.StrainIndex is { } index
            ? $"; {worst.Id} takes the most strain, {PlankWords.StrainUsed(index)} of what a cold bend is trusted with"
            : "";
        return $"Layer {plan.Job.Hull.Panel.Letter}{layer.Layer} of {layer.Species.Title}: {weight}{bend}.";
    }
}
