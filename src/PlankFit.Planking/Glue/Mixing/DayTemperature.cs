using System.Collections.Immutable;

namespace PlankFit.Planking.Glue.Mixing;

/// <summary>
/// The shop's temperature through a day, straight between the times at which it is given, from the last straight on to the first of the next day; every day is
/// alike. Minutes count from midnight of the first day.
/// </summary>
/// <param name="At">Minutes after midnight and degrees Celsius, by time, at least one, none twice.</param>
public sealed record DayTemperature(ImmutableArray<(double Minute, double Celsius)> At)
{
    /// <summary>Where the shop is warmer than planned, by how much cards say it, degrees.</summary>
    public const double WarmerDegrees = 3;

    public const double Day = 1440;

    public double Coldest => At.Min(p => p.Celsius);

    public double Warmest => At.Max(p => p.Celsius);

    /// <summary>The same day so many degrees warmer.</summary>
    public DayTemperature Warmer(double degrees) =>
        new([.. At.Select(p => (p.Minute, p.Celsius + degrees))]);

    public double Celsius(double minute)
    {
        double m = minute - (Day * Math.Floor(minute / Day));
        int next = 0;
        while (next < At.Length && At[next].Minute <= m)
        {
            next++;
        }

        (double from, double cold) =
            next > 0 ? At[next - 1] : (At[^1].Minute - Day, At[^1].Celsius);
        (double to, double warm) =
            next < At.Length ? At[next] : (At[0].Minute + Day, At[0].Celsius);
        return cold + ((warm - cold) * (m - from) / (to - from));
    }

    /// <summary>The next time after this one at which the temperature turns a corner.</summary>
    public double NextTurn(double minute)
    {
        double day = Day * Math.Floor(minute / Day);
        foreach ((double at, _) in At)
        {
            if (day + at > minute)
            {
                return day + at;
            }
        }

        return day + Day + At[0].Minute;
    }
}
