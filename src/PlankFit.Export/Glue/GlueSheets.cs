using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
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
            .. AmountSheets.Order(plan.Job, glue).Pages(plan.Job),
            .. AmountSheets.Amounts(plan.Job, glue).Pages(plan.Job),
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

    private static ListSheet Sessions(Job job, GluePlan glue)
    {
        CrewSpec crew = glue.Spec.Crew!;
        bool searched = glue.Sessions.Any(s => s.NoneEndsBefore is not null);
        Func<GlueSession, SessionClamps> clamps = ClampCounts.Of(glue);
        return new(
            Block(
                "Gluing: sessions",
                $"{PlanWords.Count(crew.Hands, "hand")}, day and temperature as the job gives them"
            ),
            [
                .. glue.Spec.Done.Latest is { } latest
                    ? new[]
                    {
                        $"Planned again from {GlueWords.When(latest)}: {PlanWords.Count(glue.Spec.Done.Rows.Count(r => r.Plank is not null), "plank")} and {PlanWords.Count(glue.Spec.Done.Rows.Count(r => r is { Cloth: not null, Coat: 0 }), "side")} of cloth{Coats(glue.Spec.Done)}{Finishes(glue.Spec.Done)} are done by {glue.Spec.Done.Source}; batches go on from B{glue.Spec.Done.LastBatch + 1:00}. Cards that were printed before and are not mixed yet are void.",
                    }
                    : [],
                .. GlueWords.NotPlanned(glue),
                "Outwards from the master plank both ways, both sides by turns, so that one can be reached from over the other; no plank before its neighbour nearer the master is down. Served first is the run of planks with the longest work left (list scheduling).",
                .. glue
                    .Stages.Where(s => s.BoundMinutes > 0)
                    .Select(s =>
                        $"{s.Layer}: {Minutes(s.WorkMinutes)} of shifts from the first batch until the last plank is down; with these hands no order does it in less than {Minutes(s.BoundMinutes)}, in batches as large as the clocks of the coldest hour allow."
                    ),
                .. searched
                    ? new[]
                    {
                        "Each session of planks was searched for a sooner end. None before: no order of its batches with these hands ends it sooner, each clock at the longest that it is in the session. Search: the solver's own bound (CP-SAT) on orders that hold whatever hour a batch is moved to, each clock at its shortest; proved where it found one that ends then. Between the two an order made for its own hours might still end. Where less than a minute could be gained nothing was searched.",
                    }
                    : [],
                .. GlueWords.Clamps(glue),
                .. OtherDayWords.Of(glue, job.Units),
                $"TOO HOT: reckon the day again with the warmer temperature, and mix the smaller batches that come of it; pour into a shallow tray at once; then a slower hardener; then an earlier hour. In this order. A card's times hold for its temperature: {GlueWords.Warmer(job.Units)} is on each.",
            ],
            [
                new("session", 9),
                new("from", 18, false),
                new("to", 10, false),
                .. searched
                    ? new[]
                    {
                        new ListColumn("none before", 12, false),
                        new ListColumn("search", 18, false),
                    }
                    : [],
                new("shift ends", 10, false),
                new("layer", 22, false),
                new("batches", 20, false),
                new("planks", 9),
                new("fastenings", 12),
                new("held by", 26, false),
                new("coldest, warmest", 18, false),
                new("what goes down", 64, false),
            ],
            [
                .. glue.Sessions.Select(s =>
                    ImmutableArray.Create([
                        NumberText.Trimmed(s.Number, 0),
                        GlueWords.When(s.From),
                        GlueWords.Hour(s.To),
                        .. searched
                            ? new[]
                            {
                                s.NoneEndsBefore is { } bound
                                    ? GlueWords.Hour(Math.Floor(bound))
                                    : "",
                                GlueWords.Searched(s),
                            }
                            : [],
                        GlueWords.Hour(s.ShiftTo),
                        s.Layer,
                        s.Batches.Length == 1
                            ? s.Batches[0].Name
                            : $"{s.Batches[0].Name} to {s.Batches[^1].Name}",
                        s.Planks > 0 ? NumberText.Trimmed(s.Planks, 0) : "",
                        s.Fastenings > 0 ? NumberText.Trimmed(s.Fastenings, 0) : "",
                        GlueWords.HeldBy(glue, clamps(s)),
                        $"{GlueWords.Temperature(s.Batches.Min(b => b.Celsius), job.Units)}, {GlueWords.Temperature(s.Batches.Max(b => b.Celsius), job.Units)}",
                        s.Planks > 0
                            ? PlankRuns.Of(s.Batches.SelectMany(b => b.Planks).Select(p => p.Id))
                            : $"{GlueWords.WhatDone(s)}, {string.Join(" and ", s.Batches.Select(b => PlankWords.Of(b.Side)).Distinct())}",
                    ])
                ),
            ]
        );
    }

    private static string Coats(GlueProgress done) =>
        done.Rows.Count(r => r.Coat > 0) is > 0 and var coats
            ? $" and {PlanWords.Count(coats, "coat")} on a side"
            : "";

    private static string Finishes(GlueProgress done) =>
        done.Rows.Count(r => r.Finish is not null) is > 0 and var sides
            ? $" and {PlanWords.Count(sides, "side")} of fairing and fillets"
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
                new("what", 52, false),
                new("planned", 22, false),
                new("mix", 28),
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
