using PlankFit.Planking.Units;

namespace PlankFit.Planking.Trust;

/// <summary>
/// How sure a length is, for paper: up to the next 0.5 mm or 1/32 in, and never under 1 mm, since the hull between its frames and the saw are no surer (our own bound, no
/// source).
/// </summary>
public static class PlusMinus
{
    private const double LeastMm = 1;

    /// <summary>±3 mm, ±1/8".</summary>
    /// <param name="withinMm">19 times in 20.</param>
    public static string Of(double withinMm, LengthUnit unit) => $"±{Plain(withinMm, unit)}";

    /// <summary>The same without the sign: 3 mm, 1/8".</summary>
    public static string Plain(double withinMm, LengthUnit unit) =>
        LengthText.ForPaper(Math.Max(LeastMm, withinMm), unit, RoundTo.Up);

    /// <summary>Without the unit where it is metric, for a list whose head names it.</summary>
    public static string Number(double withinMm, LengthUnit unit) =>
        LengthText.PaperNumber(Math.Max(LeastMm, withinMm), unit, RoundTo.Up);
}
