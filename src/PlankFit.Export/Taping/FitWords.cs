using PlankFit.Planking.Taping;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Taping;

/// <summary>Why a plank that was offered up does not fit, in words: never one cause as certain, never odds without what they rest on.</summary>
public static class FitWords
{
    /// <summary>Less likely causes are not named, but the first.</summary>
    private const double LeastNamed = 0.05;

    private static readonly (double Odds, string Words)[] Told =
    [
        (0.1, "1 in 10"),
        (0.2, "1 in 5"),
        (0.25, "1 in 4"),
        (1 / 3.0, "1 in 3"),
        (0.5, "1 in 2"),
        (2 / 3.0, "2 in 3"),
        (0.75, "3 in 4"),
        (0.8, "4 in 5"),
        (0.9, "9 in 10"),
    ];

    public static string Of(FitVerdict verdict, LengthUnit unit)
    {
        if (verdict.IsNoMoreThanTools)
        {
            return $"{verdict.Plank} ({Seen(verdict, unit)}): no more than saw, feeler and tape are out by themselves, {TapedWords.If}.";
        }

        string causes = string.Join(
            ". Or ",
            verdict
                .Likeliest.Where((c, i) => i == 0 || c.Odds >= LeastNamed)
                .Select(c => $"{Cause(c, unit)} ({Odds(c.Odds)})")
        );
        string clear = verdict.IsClear ? "likeliest" : "not clear from one plank; likeliest";
        string first =
            verdict.Likeliest.Count(c => c.Odds >= LeastNamed) < 2 ? ""
            : verdict.Parting is { } place
                ? $" What parts the first two: {TapedWords.Of(place)}, {TapedWords.SideOf(place)}."
            : " What parts the first two: read its marks again first.";
        return $"{verdict.Plank} ({Seen(verdict, unit)}): {clear}, {TapedWords.If}: {causes}.{first}";
    }

    private static string Seen(FitVerdict verdict, LengthUnit unit)
    {
        string Mm(double mm) => LengthText.ForPaper(Math.Abs(mm), unit);
        string? lacks = verdict.ShortMm is { } s
                ? $"{Mm(s)} {(s >= 0 ? "short" : "too long")} at the chine"
                : null,
            opens = verdict.OpensForwardMm is { } o
                ? $"opens {Mm(o)} at the keel's {(o >= 0 ? "forward" : "after")} corner"
                : null;
        return string.Join(", ", new[] { lacks, opens }.OfType<string>());
    }

    private static string Cause(LikelyCause cause, LengthUnit unit)
    {
        string mm = LengthText.ForPaper(Math.Abs(cause.SizeMm), unit);
        bool more = cause.SizeMm > 0;
        bool height = cause.Cell?.Contains("/height/", StringComparison.Ordinal) == true;
        return cause.Kind switch
        {
            FitCauseKind.LaidTurned =>
                $"it lies turned, {mm} {(more ? "aft" : "forward")} of its mark at the chine",
            FitCauseKind.Sawn => $"it was sawn {mm} {(more ? "short" : "long")}",
            FitCauseKind.EndSawn =>
                $"its end at the keel was sawn {mm} off at the {(more ? "forward" : "after")} corner",
            FitCauseKind.KeelAt => height
                ? $"the keel's edge at station {cause.Station} is {mm} {(more ? "higher" : "lower")}"
                : $"the keel at station {cause.Station} is {mm} {(more ? "wider" : "narrower")} on that side",
            FitCauseKind.KeelAlong =>
                $"the keel is {mm} {(more ? "wider" : "narrower")} all along on that side",
            FitCauseKind.ChineAt => height
                ? $"the chine at station {cause.Station} is {mm} {(more ? "higher" : "lower")}"
                : $"the chine at station {cause.Station} stands {mm} further {(more ? "out" : "in")}",
            _ => $"station {cause.Station} stands {mm} further {(more ? "aft" : "forward")}",
        };
    }

    private static string Odds(double odds) =>
        odds < 0.075 ? "less than 1 in 10" : Told.MinBy(t => Math.Abs(t.Odds - odds)).Words;
}
