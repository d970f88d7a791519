using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Glue;

/// <summary>What a person should know of mixes and clocks before anything is mixed.</summary>
internal static class GlueFindings
{
    /// <summary>So far outside the data sheet's temperatures a clock is not trusted, degrees: a proposal, no source.</summary>
    private const double OutsideDegrees = 3;

    public static IEnumerable<Finding> Of(AmountPlanner amounts)
    {
        GlueSpec spec = amounts.Spec;
        foreach ((string table, Mix? mix) in new[] { ("resin", spec.Resin), ("glue", spec.Glue) })
        {
            if (mix is not null)
            {
                foreach (Finding finding in OfMix(table, mix, spec, amounts.Planked.Job.Units))
                {
                    yield return finding;
                }
            }
        }

        foreach (
            FillerSpec filler in spec.Fillers.Where(f =>
                (f.Into == FillerInto.Fairing && spec.Fairing is null)
                || (f.Into == FillerInto.Fillets && spec.Fillets.IsEmpty)
            )
        )
        {
            bool fairing = filler.Into == FillerInto.Fairing;
            yield return new(
                Severity.Warning,
                "[[filler]]",
                $"{filler.Name} goes into {(fairing ? "fairing" : "fillets")}, and the job has none: it is not reckoned. Add {(fairing ? "[fairing]" : "[[fillet]]")}, or say into what else it goes"
            )
            {
                Rank = Rank.Know,
            };
        }

        if (spec.WeaveGsm is not null && amounts.Planked.Layers[^1] is PlankLayerPlan outer)
        {
            yield return new(
                Severity.Note,
                "[weave]",
                $"its coats go over an outermost cloth, and {outer.Planks.Name}, the outermost layer, is of planks: they are not reckoned. Add the cloth as the last [[layer]], or leave [weave] out"
            );
        }

        if (spec.Crew is null || spec.Clock is null)
        {
            yield return new(
                Severity.Note,
                spec.Crew is null ? "[crew]" : "[clock]",
                $"not given, so that there are amounts and no batches or sessions: add {(spec.Crew is null ? "[crew] with hands" : "[clock] with shifts and temperature")}"
            );
        }

        foreach (ClothLayerPlan cloth in amounts.Planked.Layers.OfType<ClothLayerPlan>())
        {
            if (amounts.ClothOf(cloth.Cloth.Name) is null)
            {
                yield return new(
                    Severity.Warning,
                    Subject.OfLayer(cloth.Cloth.Name),
                    amounts.Sheathed?.Unlaid.Contains(cloth.Cloth.Name) == true
                        ? "as its [[sheathing]] says it cannot be laid: its resin is not reckoned and it has no session"
                        : "no [[sheathing]] says what it is cut from: its resin is not reckoned and it has no session"
                )
                {
                    Rank = Rank.Know,
                };
            }
            else if (spec.Resin is null)
            {
                yield return new(
                    Severity.Warning,
                    Subject.OfLayer(cloth.Cloth.Name),
                    "the job has no [resin] to wet it out with: it is not reckoned and has no session"
                )
                {
                    Rank = Rank.Know,
                };
            }
        }
    }

    private static IEnumerable<Finding> OfMix(string table, Mix mix, GlueSpec spec, LengthUnit unit)
    {
        if (mix.Thinned > 0)
        {
            yield return new(
                Severity.Warning,
                Subject.Of($"[{table}]") with
                {
                    Key = $"{table}.thinned-percent",
                },
                $"thinned by {NumberText.Trimmed(100 * mix.Thinned, 1)} %: only where its data sheet allows it; solvent vapour burns, cure slows, strength and moisture barrier suffer{(mix.ClocksAreOfThinned ? ", and its clocks are taken for those of the thinned mix, as the job says" : ", and the clocks of the mix unthinned do not hold for it")}"
            )
            {
                Rank = Rank.Know,
            };
        }

        if (spec.Clock is not { } clock || !mix.IsTimed)
        {
            yield break;
        }

        double coldest = clock.Temperature.At.Min(p => p.Celsius),
            warmest = clock.Temperature.Warmest;
        (string Name, ClockLaw Law)[] outside =
        [
            .. new (string Name, ClockLaw? Law)[]
            {
                ("pot", mix.Clocks.Pot),
                ("film", mix.Clocks.Film),
                ("sandable", mix.Clocks.Sandable),
                ("tacky", mix.Clocks.Tacky?.From),
                ("recoat", mix.Clocks.Recoat?.To),
            }
                .Where(l =>
                    l.Law is { } law
                    && (
                        coldest < law.ColdestCelsius - OutsideDegrees
                        || warmest > law.WarmestCelsius + OutsideDegrees
                    )
                )
                .Select(l => (l.Name, l.Law!)),
        ];
        // A data sheet gives all its clocks at the same temperatures as a rule: once is enough.
        foreach (
            IGrouping<
                (double ColdestCelsius, double WarmestCelsius),
                (string Name, ClockLaw Law)
            > same in outside.GroupBy(l => (l.Law.ColdestCelsius, l.Law.WarmestCelsius))
        )
        {
            string[] names = [.. same.Select(l => l.Name)];
            yield return new(
                Severity.Warning,
                Subject.Of($"[{table}]") with
                {
                    Key = $"{table}.{names[0]}",
                },
                $"{string.Join(", ", names)} {(names.Length == 1 ? "is" : "are")} given from {ShopHeat.Words(same.Key.ColdestCelsius, unit)} to {ShopHeat.Words(same.Key.WarmestCelsius, unit)} and the shop goes from {ShopHeat.Words(coldest, unit)} to {ShopHeat.Words(warmest, unit)}: {(names.Length == 1 ? "its" : "their")} times there are a guess; ask the maker"
            )
            {
                Rank = Rank.Know,
            };
        }
    }
}
