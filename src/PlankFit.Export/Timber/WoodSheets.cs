using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Timber;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Timber;

/// <summary>Where the figures come from: the job's woods with the source of each figure, and the limits by which bends are judged.</summary>
internal static class WoodSheets
{
    public static ListSheet Figures(BottomPlan plan, TimberPlan timber) =>
        new(
            new(
                "Timber: species and their sources",
                "figures at 12 % moisture, short tests of small clear pieces",
                "figures",
                null,
                Cautions.Strength
            ),
            [
                "MEMORY: recalled and not read; look it up, or weigh and test your own boards, and give it under [[timber.species]]. Second hand: read in a text that quotes the publication. "
                    + "The other species that a job may name stand in tables/species.csv.",
                .. Climate(timber.Spec),
            ],
            [
                new("species", 30, false),
                new("figure", 46, false),
                new("value", 22),
                new("how known", 20, false),
                new("source", 110, false),
            ],
            [.. WoodFigure.All(plan).Where(f => f.Used).Select(f => Row(f, plan.Job.Units))]
        );

    public static ListSheet Limits(BottomPlan plan, TimberPlan timber) =>
        new(
            new(
                "Timber: how bends are judged",
                "limits, their sources, and how each figure is reckoned",
                "figures",
                null,
                Cautions.Strength
            ),
            [
                "A bend is judged twice, and the harder verdict holds: by its radius over the thickness, and by its strain along the grain against what the wood is trusted with.",
            ],
            [
                new("layer", 24, false),
                new("least radius / thickness", 20),
                new("strain, of cold limit", 18),
                new("verdict", 46, false),
                new("source", 110, false),
            ],
            [
                .. plan
                    .Panels.SelectMany(p => p.Timber?.Layers ?? [])
                    .GroupBy(l => string.Join("|", l.Judge.Rows))
                    .SelectMany(g => Rows([.. g])),
                .. Reckoned(plan, timber),
            ],
            Bold: false
        );

    private static IEnumerable<string> Climate(TimberSpec spec)
    {
        string[] given =
        [
            .. new[] { ("Workshop", spec.Workshop), ("Service", spec.Service) }
                .Where(m => m.Item2 is not null)
                .Select(m =>
                    $"{m.Item1}: {TimberWords.Percent(m.Item2!.Percent)} moisture{(m.Item2.From is { } air ? $" ({air}; Hailwood and Horrobin's equation, constants from MEMORY)" : "")}."
                ),
        ];
        if (given.Length > 0)
        {
            yield return string.Join(" ", given);
        }
    }

    private static ImmutableArray<string> Row(WoodFigure figure, LengthUnit unit)
    {
        string value = figure.Unit switch
        {
            "MPa" when !LengthUnits.IsMetric(unit) =>
                $"{NumberText.Trimmed(Math.Round(figure.Figure.Value / 0.006894757293168361 / 10) * 10, 0)} psi",
            "MPa" => $"{NumberText.Trimmed(figure.Figure.Value, 1)} MPa",
            "kg/m³" => TimberWords.Density(figure.Figure.Value, unit),
            "%" => TimberWords.Percent(figure.Figure.Value),
            "" => NumberText.Trimmed(figure.Figure.Value, 2),
            _ => NumberText.Trimmed(figure.Figure.Value, 5),
        };
        return
        [
            figure.Wood.Title,
            figure.What,
            value,
            TimberWords.Of(figure.Figure.Tag),
            figure.Figure.Source,
        ];
    }

    private static IEnumerable<ImmutableArray<string>> Rows(LayerTimber[] alike) =>
        alike[0]
            .Judge.Rows.Select(
                (row, i) =>
                    ImmutableArray.Create(
                        i == 0 ? string.Join(", ", alike.Select(l => l.Name)) : "",
                        row.LeastRadiusOverThickness > 0
                            ? NumberText.Trimmed(row.LeastRadiusOverThickness, 1)
                            : "less",
                        row.LeastRadiusOverThickness > 0
                            ? PlankWords.StrainUsed(
                                alike[0].Judge.Rows[0].LeastRadiusOverThickness
                                    / row.LeastRadiusOverThickness
                            )
                            : "more",
                        row.Verdict
                            + (row.Way == BendWay.SoakOrSteam ? ", dry below 12 %, meter" : ""),
                        row.Source
                    )
            );

    private static IEnumerable<ImmutableArray<string>> Reckoned(BottomPlan plan, TimberPlan timber)
    {
        BendLimits limits = plan.Job.Limits;
        yield return
        [
            "any",
            "",
            "",
            "too wide for its curvature",
            $"strain K w²/12 above {TimberWords.Percent(limits.EdgeStrainPercent)}; the widest plank is the w that has it. The strain: Horikawa and Tarumi 2022; the limit: a proposal, no source",
        ];
        yield return
        [
            "any",
            "",
            "",
            "hard twist",
            $"thickness times twist above {NumberText.Trimmed(limits.TwistShearPercent, 2)} %: a proposal, no source",
        ];
        yield return
        [
            "any",
            "",
            "",
            "straight stock pulled in",
            "strain 4 w f/L² of bending it edgewise by f over a seam of length L, added to the rest; no more than its pressed edge takes before it lifts, 0.4 (2t/w)²: an estimate",
        ];
        yield return
        [
            "any",
            "",
            "",
            "clamp holds",
            "2 M/c and a pair for the twist: M = E w t³/12 over the radius, c the spacing: an estimate, before the wood eases",
        ];
        if (timber.Spec.Grade == BoardGrade.Knotty)
        {
            yield return
            [
                "any",
                "",
                "",
                "knotty boards",
                "take half the strain of clear ones: common practice, no source",
            ];
        }
    }
}
