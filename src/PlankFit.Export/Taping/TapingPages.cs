using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Taping;

/// <summary>What to tape first, numbered and drawn, with blanks for what the tape says; then the edges to tape as planks go on.</summary>
public static class TapingPages
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, TapeAdvice advice) =>
        SheetPage.Numbered(plan.Job, [.. Pages(plan, advice)]);

    internal static IEnumerable<SheetPage> Pages(BottomPlan plan, TapeAdvice advice)
    {
        foreach (SheetPage page in First(plan, advice).Pages(plan.Job))
        {
            yield return page;
        }

        if (!advice.Wishes.IsEmpty || !advice.Again.IsEmpty)
        {
            yield return TapingView.Page(plan, advice);
        }

        if (!advice.Edges.IsEmpty)
        {
            foreach (SheetPage page in Edges(plan, advice).Pages(plan.Job))
            {
                yield return page;
            }
        }
    }

    private static TitleBlock Block(BottomPlan plan, string of) =>
        new("Tape here first", of, "by tape", null, Cautions.CheckOf(plan.Job.Hull.Panel));

    private static ListSheet First(BottomPlan plan, TapeAdvice advice) =>
        new(
            Block(plan, "the readings that bring most"),
            [
                .. TapedWords.SawNow(plan, advice),
                .. advice.Verdicts.Select(v => FitWords.Of(v, plan.Job.Units)),
                advice.Wishes.IsEmpty && advice.Again.IsEmpty
                    ? ""
                    : $"{(advice.Again.IsEmpty ? "" : "Letters: what was read already, and is to be read again before anything is sawn. ")}Tape on frames and keel, where the first layer lies; read everything twice, at another moment, and write both down: a slip shows itself by that. LIMIT: by which a reading may differ from what it should read, 19 times in 20, {TapedWords.If}; beyond it measure again, and look at that frame. A reading within its limit is used all the same: type it into to-tape.csv, and add its rows to measured.csv. Lengths are {SheetWords.Unit(plan.Job.Units)}.",
            ],
            [
                new("no.", 4, false),
                new("what to tape", 34, false),
                new("side", 10, false),
                new("should read", 12),
                new("limit", 9),
                new("what it brings, 19 times in 20", 25, false),
                new("read", 10, false),
                new("again", 10, false),
            ],
            [
                .. TapedWords
                    .Numbered(advice)
                    .Select(n =>
                        ImmutableArray.Create(
                            n.Name,
                            TapedWords.Of(n.Wish.Place)
                                + TapedWords.Marked(n.Wish.Marks, plan.Job.Units),
                            TapedWords.SideOf(n.Wish.Place),
                            LengthText.PaperNumber(n.Wish.ExpectedMm, plan.Job.Units),
                            LengthText.PaperNumber(n.Wish.LimitMm, plan.Job.Units, RoundTo.Up),
                            !n.IsAgain ? TapedWords.Brings(n.Wish.Brings, plan.Job.Units)
                                : n.Wish.IsSlip ? "it was put aside: read it again"
                                : "it was read once: read it again",
                            "",
                            ""
                        )
                    ),
            ]
        )
        {
            About =
            [
                .. TapedWords
                    .Numbered(advice)
                    .Select(n => TapedWords.About(plan.Job, n.Wish.Place)),
            ],
        };

    private static ListSheet Edges(BottomPlan plan, TapeAdvice advice) =>
        new(
            Block(plan, "as planks go on"),
            [
                $"Once these planks are on, tape their edge from keel to chine on the face that the layer lies on, and where it crosses keel and chine (seam at keel, seam at chine): it says more of the planks beyond than any frame. Outward from the master. {PlanWords.Count(advice.Edges.Length, "edge")}, {TapedWords.If}.",
            ],
            [
                new("after edge of", 30, false),
                new("should read", 12),
                new("limit", 9),
                new("what it brings, 19 times in 20", 30, false),
                new("read", 10, false),
                new("again", 10, false),
            ],
            [
                .. advice.Edges.Select(w =>
                    ImmutableArray.Create(
                        w.Place.Edge!.Value.Plank + TapedWords.Marked(w.Marks, plan.Job.Units),
                        LengthText.PaperNumber(w.ExpectedMm, plan.Job.Units),
                        LengthText.PaperNumber(w.LimitMm, plan.Job.Units, RoundTo.Up),
                        TapedWords.Brings(w.Brings, plan.Job.Units),
                        "",
                        ""
                    )
                ),
            ]
        );
}
