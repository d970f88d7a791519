using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Glue;

/// <summary>Resin and glue on paper, in the order in which they are used: what to order, sessions, racks, hold points, cards, and the sheet of what was done.</summary>
public static class GlueSheets
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, GluePlan glue)
    {
        List<SheetPage> pages =
        [
            .. Order(plan.Job, glue).Pages(plan.Job),
            .. Amounts(plan.Job, glue).Pages(plan.Job),
        ];
        if (!glue.Stages.IsEmpty)
        {
            pages.AddRange(SessionChart.Pages(plan.Job, glue));
            pages.AddRange(Sessions(plan.Job, glue).Pages(plan.Job));
            pages.AddRange(Racks(plan.Job.Units, glue).Pages(plan.Job));
            pages.AddRange(HoldPointSheet.Of(glue).Pages(plan.Job));
            pages.AddRange(BatchCards.Pages(plan, glue));
            pages.AddRange(Done(plan.Job.Units, glue).Pages(plan.Job));
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    internal static TitleBlock Block(string sheet, string of) =>
        new(sheet, of, "figures", null, Cautions.Glue) { Arrow = "" };

    private static ListSheet Order(Job job, GluePlan glue)
    {
        LengthUnit unit = job.Units;
        return new(
            Block("Resin and glue: what to order", "both parts of each product, waste among it"),
            [
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
            ]
        );
    }

    private static ListSheet Amounts(Job job, GluePlan glue)
    {
        LengthUnit unit = job.Units;
        return new(
            Block(
                "Resin and glue: where it goes",
                "both sides, layer by layer from the inside out"
            ),
            [
                "Unthinned, unless the list says otherwise. Thinning is allowed only where the product's data sheet allows it: solvent vapour burns, cure slows, strength and moisture barrier suffer, and the clocks no longer hold.",
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
                        $"{a.Rate}; waste {GlueWords.Percent(a.Mix.Waste)}"
                    );
                }),
            ]
        );
    }

    private static ListSheet Sessions(Job job, GluePlan glue)
    {
        CrewSpec crew = glue.Spec.Crew!;
        return new(
            Block(
                "Gluing: sessions",
                $"{PlanWords.Count(crew.Hands, "hand")}, day and temperature as the job gives them"
            ),
            [
                .. glue.Spec.Done.Latest is { } latest
                    ? new[]
                    {
                        $"Planned again from {GlueWords.When(latest)}: {PlanWords.Count(glue.Spec.Done.Rows.Count(r => r.Plank is not null), "plank")} and {PlanWords.Count(glue.Spec.Done.Rows.Count(r => r is { Cloth: not null, Coat: 0 }), "side")} of cloth{Coats(glue.Spec.Done)} are done by {glue.Spec.Done.Source}; batches go on from B{glue.Spec.Done.LastBatch + 1:00}. Cards that were printed before and are not mixed yet are void.",
                    }
                    : [],
                .. GlueWords.NotPlanned(glue),
                "Outwards from the master plank both ways, both sides by turns, so that one can be reached from over the other; no plank before its neighbour nearer the master is down. Served first is the run of planks with the longest work left (list scheduling).",
                .. glue
                    .Stages.Where(s => s.BoundMinutes > 0)
                    .Select(s =>
                        $"{s.Layer}: {Minutes(s.WorkMinutes)} of shifts from the first batch until the last plank is down; with these hands no order does it in less than {Minutes(s.BoundMinutes)}, mixing and clocks not counted."
                    ),
                $"TOO HOT: reckon the day again with the warmer temperature, and mix the smaller batches that come of it; pour into a shallow tray at once; then a slower hardener; then an earlier hour. In this order. A card's times hold for its temperature: {GlueWords.Warmer(job.Units)} is on each.",
            ],
            [
                new("session", 9),
                new("from", 18, false),
                new("to", 10, false),
                new("shift ends", 10, false),
                new("layer", 22, false),
                new("batches", 20, false),
                new("planks", 9),
                new("fastenings", 12),
                new("coldest, warmest", 20, false),
                new("what goes down", 80, false),
            ],
            [
                .. glue.Sessions.Select(s =>
                    ImmutableArray.Create(
                        NumberText.Trimmed(s.Number, 0),
                        GlueWords.When(s.From),
                        GlueWords.Hour(s.To),
                        GlueWords.Hour(s.ShiftTo),
                        s.Layer,
                        s.Batches.Length == 1
                            ? s.Batches[0].Name
                            : $"{s.Batches[0].Name} to {s.Batches[^1].Name}",
                        s.Planks > 0 ? NumberText.Trimmed(s.Planks, 0) : "",
                        s.Fastenings > 0 ? NumberText.Trimmed(s.Fastenings, 0) : "",
                        $"{GlueWords.Temperature(s.Batches.Min(b => b.Celsius), job.Units)}, {GlueWords.Temperature(s.Batches.Max(b => b.Celsius), job.Units)}",
                        s.Planks > 0
                            ? PlankRuns.Of(s.Batches.SelectMany(b => b.Planks).Select(p => p.Id))
                            : $"{(s.IsCoat ? "coat" : "cloth")}, {string.Join(" and ", s.Batches.Select(b => PlankWords.Of(b.Side)).Distinct())}"
                    )
                ),
            ]
        );
    }

    private static string Coats(GlueProgress done) =>
        done.Rows.Count(r => r.Coat > 0) is > 0 and var coats
            ? $" and {PlanWords.Count(coats, "coat")} on a side"
            : "";

    /// <summary>1 h 40 min.</summary>
    internal static string Minutes(double minutes)
    {
        int whole = (int)Math.Round(minutes);
        return whole < 60 ? $"{whole} min" : $"{whole / 60} h {whole % 60:00} min";
    }

    private static ListSheet Racks(LengthUnit unit, GluePlan glue) =>
        new(
            Block("Gluing: racks", "planks in the order in which they are wanted"),
            [
                "Stand the planks in their racks in this order, ids and arrows in pencil on the outer face; nothing stuck on a glue face, no wax, no tape.",
            ],
            [
                new("place", 10),
                new("plank", 14, false),
                new("batch", 12, false),
                new("glue on it from", 22, false),
                new("goes down", 14, false),
                new("is down", 14, false),
                new("glue", 20),
                new("fastenings", 14),
                new("layer", 30, false),
            ],
            [
                .. glue
                    .Stages.SelectMany(s =>
                        s.Batches.SelectMany(b => b.Planks.Select(p => (s, b, p)))
                    )
                    .OrderBy(r => r.p.SetAt)
                    .ThenBy(r => r.p.Id)
                    .Select(
                        (r, i) =>
                            ImmutableArray.Create(
                                NumberText.Trimmed(i + 1, 0),
                                r.p.Id.ToString(),
                                r.b.Name,
                                GlueWords.When(r.p.SpreadAt),
                                GlueWords.Hour(r.p.SetAt),
                                GlueWords.Hour(r.p.DoneAt),
                                AmountText.Grams(r.p.Grams, unit),
                                r.p.Fastenings > 0 ? NumberText.Trimmed(r.p.Fastenings, 0) : "",
                                r.s.Layer
                            )
                    ),
            ]
        );

    private static ListSheet Done(LengthUnit unit, GluePlan glue) =>
        new(
            Block("Gluing: what was done", "to be filled in as it goes"),
            [
                "Write down what was, not what was planned: the hour, the temperature in the shop, what the batch weighed and what was left of it. By what is left the rates are put right.",
            ],
            [
                new("batch", 10, false),
                new("what", 60, false),
                new("planned", 22, false),
                new("mix", 20),
                new("mixed at", 18, false),
                new("shop", 14, false),
                new("down at", 18, false),
                new("left over", 16, false),
                new("by whom", 20, false),
            ],
            [
                .. glue.Stages.SelectMany(s =>
                    s.Batches.Select(b =>
                        ImmutableArray.Create(
                            b.Name,
                            GlueWords.What(b, s),
                            GlueWords.When(b.MixAt),
                            AmountText.Grams(b.Grams, unit),
                            "",
                            "",
                            "",
                            "",
                            ""
                        )
                    )
                ),
            ]
        );
}
