using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Glue;

/// <summary>By how much each rule by itself would have to give way for a side's cloth to be laid, the others kept: told in words, those that are of no use left out.</summary>
internal static class ClothGivingWay
{
    private const double StepMinutes = 30;
    private const double StepDegrees = 1;
    private const double MostDegrees = 10;

    /// <summary>Parts of the crew's minutes that are tried.</summary>
    private static readonly double[] Faster = [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3];

    public static ImmutableArray<string> Of(ClothWetting wetting, ClothShare share, LengthUnit unit)
    {
        ClothWetting coarse = wetting with { StepMinutes = StepMinutes };
        List<string> ways = [];
        double room = DayTemperature.Day - wetting.Days.Shifts[^1].To;
        if (First(Steps(StepMinutes, room), m => Longer(coarse, m)) is { } longer)
        {
            ways.Add(
                $"a last shift {longer.ToString("0", CultureInfo.InvariantCulture)} minutes longer"
            );
        }

        if (First(Steps(StepDegrees, MostDegrees), d => Heated(coarse, -d)) is { } cooler)
        {
            ways.Add($"a shop {ShopHeat.Apart(cooler, unit)} cooler");
        }

        if (First(Steps(StepDegrees, MostDegrees), d => Heated(coarse, d)) is { } warmer)
        {
            ways.Add($"a shop {ShopHeat.Apart(warmer, unit)} warmer");
        }

        if (First(Faster, f => Quicker(coarse, f)) is { } part)
        {
            ways.Add(
                $"a crew that wets out and trims in {NumberText.Trimmed(100 * part, 0)} % of the time"
            );
        }

        return [.. ways];

        double? First(IEnumerable<double> tried, Func<double, ClothWetting> with) =>
            tried
                .Where(t => with(t).Of(share, 0, []) is not null)
                .Select(t => (double?)t)
                .FirstOrDefault();
    }

    /// <summary>The last shift of the day so much longer.</summary>
    internal static ClothWetting Longer(ClothWetting wetting, double minutes)
    {
        ImmutableArray<(double From, double To)> shifts = wetting.Days.Shifts;
        return wetting with
        {
            Days = new(
                shifts.SetItem(shifts.Length - 1, (shifts[^1].From, shifts[^1].To + minutes))
            ),
        };
    }

    private static ClothWetting Heated(ClothWetting wetting, double degrees) =>
        wetting with
        {
            Placing = wetting.Placing with { Day = wetting.Placing.Day.Warmer(degrees) },
        };

    private static ClothWetting Quicker(ClothWetting wetting, double part)
    {
        CrewSpec crew = wetting.Placing.Crew;
        return wetting with
        {
            Placing = wetting.Placing with
            {
                Crew = crew with
                {
                    WetMinutesPerM2 = part * crew.WetMinutesPerM2,
                    TrimMinutesPerM = part * crew.TrimMinutesPerM,
                },
            },
        };
    }

    private static IEnumerable<double> Steps(double step, double most)
    {
        for (double at = step; at <= most; at += step)
        {
            yield return at;
        }
    }
}
