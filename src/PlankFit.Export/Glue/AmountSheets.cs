using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Glue;

/// <summary>What to order, and where it goes.</summary>
internal static class AmountSheets
{
    public static ListSheet Order(Job job, GluePlan glue)
    {
        LengthUnit unit = job.Units;
        return new(
            GlueSheets.Block(
                "Resin and glue: what to order",
                "both parts of each product, waste among it"
            ),
            [
                // Where there are sessions their own sheets say it.
                .. glue.Stages.IsEmpty ? GlueWords.NotPlanned(glue) : [],
                $"Order whole containers for the upper likely amount. Likely is what comes of rates that are out each by itself; between the bounds it lies whatever is wrong. Rates are no better known than they say: weigh what the first plank and the first {AmountText.OneArea(unit)} take, and order again by that.{(LengthUnits.IsMetric(unit) ? "" : " Four US quarts (qt) are a US gallon.")}",
                "By volume and by mass the parts are different numbers. Weighed out by the numbers for volumes there would be too much or too little hardener; by which, the last column says.",
            ],
            [
                new("product", 30, false),
                new("ratio", 40, false),
                new("cannot be less", 16),
                new("likely from", 16),
                new("usual", 16),
                new("likely to", 16),
                new("cannot be more", 16),
                new("order resin", 26),
                new("order hardener", 26),
                new("hardener, if volumes are weighed", 20),
            ],
            [
                .. glue.Totals.Select(t =>
                    ImmutableArray.Create(
                        t.Mix.Name,
                        GlueWords.Ratio(t.Mix.Ratio),
                        AmountText.Kg(t.Bounds.Least, unit),
                        AmountText.Kg(t.Likely.Least, unit),
                        AmountText.Kg(t.Likely.Usual, unit),
                        AmountText.KgUp(t.Likely.Most, unit),
                        AmountText.KgUp(t.Bounds.Most, unit),
                        $"{AmountText.KgUp(t.Order.ResinKg, unit)}, {AmountText.Litres(t.Order.ResinLitres, unit)}",
                        $"{AmountText.KgUp(t.Order.HardenerKg, unit)}, {AmountText.Litres(t.Order.HardenerLitres, unit)}",
                        $"{(t.Mix.Ratio.TooMuchIfWeighed > 0 ? "+" : "")}{GlueWords.Percent(t.Mix.Ratio.TooMuchIfWeighed)}"
                    )
                ),
                .. glue.Fillers.Select(f =>
                    ImmutableArray.Create(
                        f.Name,
                        $"filler, {AmountText.KgUp(f.Likely.Most, unit)} to order",
                        AmountText.Kg(f.Bounds.Least, unit),
                        AmountText.Kg(f.Likely.Least, unit),
                        AmountText.Kg(f.Likely.Usual, unit),
                        AmountText.KgUp(f.Likely.Most, unit),
                        AmountText.KgUp(f.Bounds.Most, unit),
                        "",
                        "",
                        ""
                    )
                ),
            ]
        );
    }

    public static ListSheet Amounts(Job job, GluePlan glue)
    {
        LengthUnit unit = job.Units;
        return new(
            GlueSheets.Block(
                "Resin and glue: where it goes",
                "both sides, layer by layer from the inside out"
            ),
            [
                "Unthinned, unless the list says otherwise. Thinning is allowed only where the product's data sheet allows it: solvent vapour burns, cure slows, strength and moisture barrier suffer, and the clocks of the mix unthinned hold no longer: nothing is timed by them.",
                .. glue.Totals.Where(t => t.Mix.Thinned > 0).Select(t => GlueWords.Thinned(t.Mix)),
            ],
            [
                new("where", 24, false),
                new("for", 26, false),
                new("product", 22, false),
                new("area", 14),
                new("mix, usual (least to most), waste among it", 40),
                new("resin, usual", 26),
                new("hardener, usual", 26),
                new("rate, and where it comes from", 60, false),
            ],
            [
                .. glue.Amounts.Select(a =>
                {
                    MixParts parts = a.Mix.Ratio.Parts(a.Kg.Usual);
                    return ImmutableArray.Create(
                        a.Where,
                        GlueWords.Of(a.Use),
                        a.Mix.Name,
                        a.AreaMm2 > 0 ? PlanWords.Area(a.AreaMm2, unit) : "",
                        GlueWords.Range(a.Kg, unit),
                        $"{AmountText.Kg(parts.ResinKg, unit)}, {AmountText.Litres(parts.ResinLitres, unit)}",
                        $"{AmountText.Kg(parts.HardenerKg, unit)}, {AmountText.Litres(parts.HardenerLitres, unit)}",
                        a.Use == GlueUse.LeftOver
                            ? a.Rate
                            : $"{a.Rate}; waste {GlueWords.Percent(a.Mix.Waste)}"
                    );
                }),
            ]
        );
    }
}
