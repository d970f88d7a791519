using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Taping;

/// <summary>What is said of readings and of planks' sureness, worded once.</summary>
public static class TapedWords
{
    /// <summary>Without it no figure of sureness stands anywhere.</summary>
    public const string If = "if [trust] is right";

    /// <summary>diagonal, keel edge at 5 to chine at 6.</summary>
    public static string Of(TapePlace place)
    {
        string At(int i) => $"{place.Points[i].Line} at {place.Points[i].Station}";
        return place.Kind switch
        {
            TapeKind.Girth =>
                $"girth at {place.Points[0].Station}, {place.Points[0].Line} to {place.Points[1].Line}",
            TapeKind.Diagonal => $"diagonal, {At(0)} to {At(1)}",
            TapeKind.AlongKeel or TapeKind.AlongChine =>
                $"along {place.Points[0].Line}, {place.Points[0].Station} to {place.Points[1].Station}",
            TapeKind.SeamLength => $"seam, {place.Edge} edge, keel to chine between its marks",
            TapeKind.ShortAtChine => $"{place.Edge!.Value.Plank}, what it lacks at the chine",
            TapeKind.OpensAtKeel => $"{place.Edge!.Value.Plank}, gap at the keel, "
                + $"{(place.Edge.Value.After ? "after" : "forward")} corner",
            TapeKind.HalfBreadth => $"half-breadth, {At(0)}, from the middle or a string",
            TapeKind.Height => $"height, {At(0)}, above the base line",
            _ => $"across, {At(0)}, starboard to port",
        };
    }

    /// <summary>Where along the hull a reading is taken, or begun; null where it is of a plank's edge.</summary>
    internal static double? XOf(Job job, TapePlace place) =>
        place.Points.IsEmpty ? null : PlaceAlong.XOf(job, place.Points[0].Station);

    /// <summary>The same as letters on a sheet have it.</summary>
    internal static string About(Job job, TapePlace place) =>
        XOf(job, place) is { } x ? PlaceAlong.Of(x, Of(place)) : "";

    public static string SideOf(TapePlace place) =>
        place.Side is { } side ? PlankWords.Of(side) : "both";

    /// <summary>Where a seam's ends are set out: , 282 aft of 7 at the keel, 779.5 aft at the chine.</summary>
    public static string Marked(SeamMarks? marks, LengthUnit unit)
    {
        string At(double mm) =>
            $"{LengthText.PaperNumber(Math.Abs(mm), unit)} {(mm >= 0 ? "aft" : "forward")}";
        return marks is null
            ? ""
            : $", {At(marks.AlongKeelMm)} of {marks.From} at the keel, {At(marks.AlongChineMm)} at the chine";
    }

    /// <summary>With its sign, as paper shows it.</summary>
    public static string Signed(double mm, LengthUnit unit)
    {
        string size = LengthText.PaperNumber(Math.Abs(mm), unit);
        return LengthText.OnPaperMm(mm, unit) == 0 ? size
            : mm < 0 ? "- " + size
            : "+ " + size;
    }

    public static string Brings(BroughtTo? brought, LengthUnit unit) =>
        brought is not { } b ? "many planks a little"
        : PlusMinus.Plain(b.FromMm, unit) is var from
        && PlusMinus.Plain(b.ToMm, unit) is var to
        && from != to
            ? $"{PlankRuns.Run(b.First, b.Last)}: {from} to {to}"
        : $"{PlankRuns.Run(b.First, b.Last)} a little";

    /// <summary>What is to be taped, as list and drawing have it: letters where it was read already, then numbers.</summary>
    internal static IEnumerable<(string Name, TapeWish Wish, bool IsAgain)> Numbered(
        TapeAdvice advice
    ) =>
        advice
            .Again.Select((w, i) => (Letter(i), w, true))
            .Concat(advice.Wishes.Select((w, i) => ($"{i + 1}", w, false)));

    private static string Letter(int i) =>
        i < 26 ? $"{(char)('A' + i)}" : Letter((i / 26) - 1) + Letter(i % 26);

    /// <summary>One line of the terminal.</summary>
    public static string Told(int number, TapeWish wish, LengthUnit unit) =>
        $"{number}. {Named(wish.Place)}: should read {LengthText.ForPaper(wish.ExpectedMm, unit)}, limit {LengthText.ForPaper(wish.LimitMm, unit, RoundTo.Up)}; {Brings(wish.Brings, unit)}";

    /// <summary>What may be sawn now and what not, and what is to be done first.</summary>
    public static ImmutableArray<string> SawNow(BottomPlan plan, TapeAdvice advice)
    {
        LengthUnit unit = plan.Job.Units;
        ImmutableArray<string>.Builder lines = ImmutableArray.CreateBuilder<string>();
        TapedHull? taped = plan.Taped;
        lines.Add(
            taped is null ? $"The table alone: nothing is taped yet. All that follows holds {If}."
            : taped.Tables is null
                ? "What was taped is not planked to: see what was found of it. The table alone."
            : $"With {PlanWords.Count(taped.Whole.Readings, "reading")} of the tape. All that follows holds {If}."
        );
        string[] first =
        [
            .. plan.Job.Margin is { Length: > 0 } unfair ? [unfair] : (string[])[],
            .. First(taped),
        ];
        bool held =
            plan.Job.Margin.Length > 0
            || taped is { } tape && (tape.Slips.Any() || !tape.Whole.IsWithin);
        if (first.Length > 0)
        {
            lines.Add($"First: {string.Join("; ", first)}.");
        }

        PlankSureness[] open = [.. advice.Planks.Where(p => !p.IsDone)],
            ready = [.. open.Where(p => p.IsSureEnough)],
            not = [.. open.Where(p => !p.IsSureEnough)];
        if (ready.Length > 0)
        {
            bool longEnds = ready.Any(p => p.LeftLongMm is not null);
            lines.Add(
                $"{(held ? "Saw nothing before that is settled; then" : "Saw now")}: {PlankRuns.Of(ready.Select(p => p.Id))}{(longEnds ? " (an end left long covers what a length may be out)" : "")}."
            );
        }

        if (not.Length > 0)
        {
            PlankSureness worst = not.MaxBy(p => p.WithinMm)!;
            lines.Add(
                $"Not yet: {PlankRuns.Of(not.Select(p => p.Id))} (within {PlusMinus.Plain(worst.WithinMm, unit)}, {worst.Id}; {PlusMinus.Plain(plan.Job.Trust!.SawWhenMm, unit)} is asked where both ends fit, and else that what is left long covers it): {(advice.Wishes.IsEmpty ? "nothing that a tape reads on the frames brings much: leave an end long, or fit both ends in place" : "tape what is listed first")}."
            );
        }

        if (!advice.Others.IsEmpty)
        {
            lines.Add($"Fitted in place, by no figure: {PlankRuns.Of(advice.Others)}.");
        }

        return lines.ToImmutable();
    }

    /// <summary>What is to be measured again before anything is sawn.</summary>
    private static IEnumerable<string> First(TapedHull? taped)
    {
        if (taped is null)
        {
            yield break;
        }

        TapePlace[] slips = [.. taped.Slips.Select(s => s.Reading.Place).Distinct()];
        if (slips.Length > 0)
        {
            yield return $"measure again {string.Join(" and ", slips.Select(Named))}";
        }

        if (!taped.Whole.IsWithin)
        {
            yield return "the readings lie further from the table than [trust] allows: it is widened here; look at the frames, and at [trust]";
        }

        TapePlace[] once =
        [
            .. taped
                .Rows.Where(r => r.IsKept)
                .GroupBy(r => r.Reading.Place)
                .Where(g => g.Count() == 1)
                .Select(g => g.Key)
                .Where(p => !slips.Contains(p)),
        ];
        if (once.Length > 0)
        {
            yield return once.Length <= 3
                ? $"read a second time {string.Join(" and ", once.Select(Named))}"
                : $"read a second time the {once.Length} places that were read once";
        }
    }

    private static string Named(TapePlace place) => $"{Of(place)}, {SideOf(place)}";
}
