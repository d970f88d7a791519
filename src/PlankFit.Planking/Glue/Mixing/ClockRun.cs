using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;

namespace PlankFit.Planking.Glue.Mixing;

/// <summary>
/// A clock that runs faster as it grows warmer: of what is mixed at a time, the life ends where the integral of dt over the life at that moment's temperature comes
/// to 1. The life at the start, or at the mean temperature, would be too long on a warming day.
/// </summary>
public static class ClockRun
{
    private const double StepMinutes = 15;

    /// <summary>Of Gauss and Legendre, six places from -1 to 1: those above nought, their likes below it count as much.</summary>
    private static readonly (double Place, double Weight)[] Six = Places();

    /// <summary>Beyond this nobody waits: a week.</summary>
    private const double LongestMinutes = 7 * DayTemperature.Day;

    /// <summary>Minutes from the start until this part of the life is used up, to 1e-6; a week where that is not before.</summary>
    /// <param name="part">Of the life: 1 is all of it.</param>
    public static double Minutes(
        ClockLaw law,
        double? grams,
        DayTemperature day,
        double startMinute,
        double part = 1
    )
    {
        double used = 0,
            at = startMinute,
            end = startMinute + LongestMinutes,
            mass = law.MassTerm(grams);
        while (at < end)
        {
            double next = Math.Min(Math.Min(at + StepMinutes, day.NextTurn(at)), end);
            double more = Used(at, next);
            if (used + more >= part)
            {
                double from = at,
                    before = used;
                return Brent.FindRoot(t => before + Used(from, t) - part, from, next, 1e-9, 200)
                    - startMinute;
            }

            used += more;
            at = next;
        }

        return LongestMinutes;

        double Used(double from, double to)
        {
            double half = 0.5 * (to - from),
                middle = 0.5 * (to + from),
                sum = 0;
            foreach ((double place, double weight) in Six)
            {
                double off = half * place;
                sum += weight * (Rate(middle + off) + Rate(middle - off));
            }

            return half * sum;
        }

        double Rate(double t) => 1 / law.Of(day.Celsius(t), mass);
    }

    private static (double Place, double Weight)[] Places()
    {
        var rule = new GaussLegendreRule(-1, 1, 6);
        return [.. rule.Abscissas.Zip(rule.Weights).Where(p => p.First > 0).OrderBy(p => p.First)];
    }
}
