using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Framing;

/// <summary>What lies behind every plank, as a list for paper: one row a plank, port and starboard together where they are twins in this too.</summary>
public static class FramingListPages
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan)
    {
        var pages = new List<SheetPage>(GivenPlaces.Of(plan).Pages(plan.Job));
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            pages.AddRange(
                new ListSheet(
                    new(
                        "What lies behind",
                        $"both sides, {SheetWords.Of(layer)}",
                        "no drawing",
                        null,
                        Cautions.Behind
                    ),
                    [
                        $"Where the centre of each thing crosses the plank: along the forward edge / along the after edge, each from its inboard end, in {SheetWords.Unit(plan.Job.Units)}; at an end of the plank (keel, chine, stem, transom) along that end from its forward corner.",
                        "On the net shape at mid-thickness; where an end is left long or bevelled, take the line from the pattern.",
                    ],
                    [
                        new("plank", 0.12, false),
                        new("behind it, forward edge / after edge", 0.88, false),
                    ],
                    [.. Rows(plan, layer)]
                ).Pages(plan.Job)
            );
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    private static IEnumerable<ImmutableArray<string>> Rows(BottomPlan plan, PlankLayerPlan layer)
    {
        var port = layer.Port.ToDictionary(p => p.Number);
        foreach (Plank plank in layer.Starboard)
        {
            string said = Said(plan, plank);
            if (port.Remove(plank.Number, out Plank? twin))
            {
                string there = Said(plan, twin);
                if (there == said)
                {
                    yield return [$"{plank.Id} {twin.Id}", said];
                    continue;
                }

                yield return [plank.Id.ToString(), said];
                yield return [twin.Id.ToString(), there];
                continue;
            }

            yield return [plank.Id.ToString(), said];
        }

        foreach (Plank left in port.Values.OrderBy(p => p.Number))
        {
            yield return [left.Id.ToString(), Said(plan, left)];
        }
    }

    private static string Said(BottomPlan plan, Plank plank)
    {
        ImmutableArray<FramingCrossing> crossings = FramingWords.Crossings(plan, plank);
        return crossings.IsEmpty
            ? "nothing"
            : string.Join(
                ";  ",
                crossings.Select(c => FramingWords.Crossing(plank, c, plan.Job.Units))
            );
    }
}
