using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Fastenings;

/// <summary>What is to be bought, by kind and length; how the lengths come about; counts by layer and side.</summary>
public static class FasteningShopping
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, FasteningPlan fastenings) =>
        SheetPage.Numbered(
            plan.Job,
            ListsTogether.Pages(
                plan.Job,
                [Bought(plan, fastenings), Counts(plan, fastenings), Lengths(plan, fastenings)]
            )
        );

    private static ListSheet Bought(BottomPlan plan, FasteningPlan fastenings)
    {
        LengthUnit unit = plan.Job.Units;
        double spare = fastenings.SparePercent;
        ImmutableArray<ImmutableArray<string>> rows =
        [
            .. fastenings
                .Totals.Where(t => t.IsToBuy)
                .GroupBy(t => (t.Kind, t.Shape, t.Name, t.LengthMm))
                .OrderBy(g => g.Key.Kind)
                .ThenBy(g => g.Key.LengthMm)
                .Select(g =>
                {
                    int count = g.Sum(t => t.Count);
                    return ImmutableArray.Create(
                        FasteningWords.Kind(g.Key.Kind, g.Key.Shape),
                        g.Key.Name ?? "",
                        FasteningWords.Length(g.Key.LengthMm, unit),
                        FasteningWords.Count(count),
                        FasteningWords.Count(g.Sum(t => t.WithSpare)),
                        FasteningWords.Count(g.Sum(t => t.HolesToFill)),
                        string.Join(
                            ", ",
                            g.Select(t =>
                                    $"{FasteningTables.LayerName(plan, t.Layer)} {FasteningWords.Use(t.Use)}"
                                )
                                .Distinct()
                        )
                    );
                }),
        ];
        int vents = fastenings.Totals.Where(t => t.Use == FasteningUse.Vent).Sum(t => t.Count),
            holes = fastenings.Totals.Sum(t => t.HolesToFill);
        string spareText = NumberText.Trimmed(spare, 1);
        return new(
            Block(plan, "Fastenings to buy"),
            [
                $"Both sides of the boat, all skins. With spare counts {spareText} % more, rounded up on each side of each layer. Screws with pads and what goes through straps come out again and may serve twice: the counts are for all at once.",
                $"Holes to fill when all is out: {FasteningWords.Count(holes)} (one a screw, two a staple{(vents > 0 ? $", and {FasteningWords.Count(vents)} vent holes" : "")}).",
                .. NotAmongThem(plan, fastenings),
            ],
            [
                new("kind", 20, false),
                new("ask for", 24, false),
                new("length", 12),
                new("count", 9),
                new("with spare", 9),
                new("holes to fill", 9),
                new("  for", 34, false),
            ],
            rows
        );
    }

    /// <summary>Places that no length will do for, a sentence for each layer.</summary>
    private static IEnumerable<string> NotAmongThem(BottomPlan plan, FasteningPlan fastenings) =>
        fastenings
            .Totals.Where(t => t.HasNoLength)
            .GroupBy(t => (t.Layer, t.Sort))
            .Select(g =>
                $"NOT AMONG THEM: {FasteningWords.Count(g.Sum(t => t.Count))} places of {FasteningTables.LayerName(plan, g.Key.Layer)} for a {FasteningWords.What(g.Key.Sort.Use, g.Key.Sort.Kind, g.Key.Sort.Shape)}, since no length that can be had will do there: nothing is bought or driven for them, and nothing holds there yet. Why stands in before-you-saw.pdf."
            );

    private static ListSheet Counts(BottomPlan plan, FasteningPlan fastenings) =>
        new(
            Block(plan, "Fastenings by layer and side"),
            [],
            [
                new("layer", 16, false),
                new("side", 12, false),
                new("kind", 30, false),
                new("length", 12),
                new("count", 9),
                new("with spare", 9),
                new("holes to fill", 9),
            ],
            [
                .. fastenings.Totals.Select(t =>
                    ImmutableArray.Create(
                        $"{FasteningWords.Count(t.Layer)} {FasteningTables.LayerName(plan, t.Layer)}",
                        PlankWords.Of(t.Side),
                        FasteningWords.What(t.Use, t.Kind, t.Shape),
                        t.Use == FasteningUse.Vent
                            ? ""
                            : FasteningWords.Length(t.LengthMm, plan.Job.Units),
                        FasteningWords.Count(t.Count),
                        FasteningWords.Count(t.WithSpare),
                        FasteningWords.Count(t.HolesToFill)
                    )
                ),
            ]
        );

    private static ListSheet Lengths(BottomPlan plan, FasteningPlan fastenings)
    {
        LengthUnit unit = plan.Job.Units;
        return new(
            Block(plan, "How the lengths come about"),
            [
                "Length = pad or strap + planking and cloth passed + bite, up to the next length that can be had whose point stays in the wood. "
                    + $"Where the job names no bite it is that of the nail rule (1 penny for each {(LengthUnits.IsMetric(unit) ? "3.2 mm" : "1/8\"")} of planking: planking and half an inch), as deep as the timber allows.",
                .. fastenings.Layers.Select(l =>
                    $"{l.Name}: {FasteningRuleWords.Of(l.Rule, l.Layer == 1, unit)}"
                ),
            ],
            [
                new("layer", 14, false),
                new("into", 26, false),
                new("length", 12),
                new("  how", 70, false),
            ],
            [
                .. fastenings.Layers.SelectMany(l =>
                    l.Lengths.GroupBy(c => c with { Backing = null })
                        .Select(g =>
                            ImmutableArray.Create(
                                l.Name,
                                g.Key.Use == FasteningUse.PullDown
                                    ? "between timbers"
                                    : string.Join(", ", g.Select(c => c.Backing)),
                                FasteningWords.Length(g.Key.LengthMm, unit),
                                FasteningRuleWords.Of(g.Key, unit)
                            )
                        )
                ),
            ]
        );
    }

    private static TitleBlock Block(BottomPlan plan, string sheet) =>
        new(
            sheet,
            string.Join(", ", plan.PlankLayers.Select(l => SheetWords.Of(l))),
            "no scale",
            null,
            Cautions.Fasten
        );
}
