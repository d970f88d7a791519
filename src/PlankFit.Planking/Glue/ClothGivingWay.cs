using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Glue;

/// <summary>By how much the rules would have to give way for a side's cloth to be laid: each by itself, the others kept, and where none does by itself, the fewest of them together.</summary>
internal static class ClothGivingWay
{
    private const double StepMinutes = 30;
    private const double MostDegrees = 10;

    /// <summary>Parts of the crew's minutes that are tried.</summary>
    private static readonly ImmutableArray<double> Faster = [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3];

    /// <summary>One rule that gives way, by so much, the least first.</summary>
    /// <param name="Rule">Hours, warmth or speed: two ways of one rule are not taken together.</param>
    /// <param name="Eases">The more of it the easier: warmth can be too much.</param>
    private sealed record Way(
        string Rule,
        bool Eases,
        ImmutableArray<double> Tried,
        Func<ClothWetting, double, ClothWetting> With,
        Func<double, string> Words
    );

    /// <summary>Those that are of no use are left out.</summary>
    public static ImmutableArray<string> Of(ClothWetting wetting, ClothShare share, LengthUnit unit)
    {
        ClothWetting coarse = wetting with { StepMinutes = StepMinutes };
        return
        [
            .. Ways(wetting, unit)
                .Select(way =>
                    Least(way, amount => way.With(coarse, amount), share) is { } least
                        ? way.Words(least)
                        : null
                )
                .OfType<string>(),
        ];
    }

    /// <summary>
    /// For each set of so many rules the least that does together, each reckoned as a part of the most that is tried of it; the set that is the least of all first.
    /// To be asked where no fewer do.
    /// </summary>
    public static ImmutableArray<string> Together(
        int rules,
        ClothWetting wetting,
        ClothShare share,
        LengthUnit unit
    )
    {
        ClothWetting coarse = wetting with { StepMinutes = StepMinutes };
        return
        [
            .. Sets(
                    [
                        .. Ways(wetting, unit)
                            .Where(w => !w.Tried.IsEmpty)
                            .OrderByDescending(w => w.Eases),
                    ],
                    rules
                )
                .Select(set => Least(set, coarse, share, double.PositiveInfinity))
                .OfType<(double Part, ImmutableArray<string> Words)>()
                .OrderBy(f => f.Part)
                .Select(f => f.Words[0] + " with " + string.Join(" and ", f.Words.Skip(1))),
        ];
    }

    /// <summary>Each set of different rules once: what can be too much outside, what eases inside, of which the last is found by halving.</summary>
    /// <param name="ways">What eases first.</param>
    private static IEnumerable<ImmutableArray<Way>> Sets(ImmutableArray<Way> ways, int rules) =>
        rules == 0
            ?
            [
                [],
            ]
            : ways.SelectMany(inner =>
                Sets([.. ways.Skip(ways.IndexOf(inner) + 1)], rules - 1)
                    .Where(outer => outer.All(o => o.Rule != inner.Rule))
                    .Select(outer => outer.Add(inner))
            );

    /// <summary>The least of a set that does, in all less than so much; null where none does.</summary>
    private static (double Part, ImmutableArray<string> Words)? Least(
        ImmutableArray<Way> set,
        ClothWetting wetting,
        ClothShare share,
        double below
    )
    {
        Way way = set[0];
        double Part(int i) => (i + 1.0) / way.Tried.Length;
        // No more of it than would still be less in all.
        int most = Enumerable.Range(0, way.Tried.Length).Count(i => Part(i) < below);
        if (most == 0 || (set.All(w => w.Eases) && !Does(set, most - 1)))
        {
            return null;
        }

        if (set.Length == 1)
        {
            int fails = -1,
                does = most - 1;
            while (does - fails > 1)
            {
                int middle = (does + fails) / 2;
                (fails, does) = Does(set, middle) ? (fails, middle) : (middle, does);
            }

            return (Part(does), [way.Words(way.Tried[does])]);
        }

        (double Part, ImmutableArray<string> Words)? least = null;
        for (int i = 0; i < most; i++)
        {
            if (
                Least(set[1..], way.With(wetting, way.Tried[i]), share, below - Part(i)) is { } rest
            )
            {
                below = Part(i) + rest.Part;
                least = (below, [way.Words(way.Tried[i]), .. rest.Words]);
            }
        }

        return least;

        // All that eases inside it at its most.
        bool Does(ImmutableArray<Way> of, int i) =>
            of.Skip(1)
                .Aggregate(
                    way.With(wetting, way.Tried[i]),
                    (eased, inner) => inner.With(eased, inner.Tried[^1])
                )
                .Of(share, 0, [])
                is not null;
    }

    private static double? Least(Way way, Func<double, ClothWetting> with, ClothShare share) =>
        way
            .Tried.Where(amount => with(amount).Of(share, 0, []) is not null)
            .Select(amount => (double?)amount)
            .FirstOrDefault();

    private static ImmutableArray<Way> Ways(ClothWetting wetting, LengthUnit unit) =>
        [
            new(
                "hours",
                true,
                Steps(StepMinutes, DayTemperature.Day - wetting.Days.Shifts[^1].To),
                Longer,
                m => $"a last shift {m.ToString("0", CultureInfo.InvariantCulture)} minutes longer"
            ),
            new(
                "warmth",
                false,
                Steps(StepDegrees(unit), MostDegrees),
                (w, d) => Heated(w, -d),
                d => $"a shop {ShopHeat.Apart(d, unit)} cooler"
            ),
            new(
                "warmth",
                false,
                Steps(StepDegrees(unit), MostDegrees),
                Heated,
                d => $"a shop {ShopHeat.Apart(d, unit)} warmer"
            ),
            new(
                "speed",
                true,
                Faster,
                Quicker,
                f =>
                    $"a crew that wets out and trims in {NumberText.Trimmed(100 * f, 0)} % of the time"
            ),
        ];

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

    internal static ClothWetting Heated(ClothWetting wetting, double degrees) =>
        wetting with
        {
            Placing = wetting.Placing with { Day = wetting.Placing.Day.Warmer(degrees) },
        };

    internal static ClothWetting Quicker(ClothWetting wetting, double part)
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

    /// <summary>A degree Celsius, or two Fahrenheit: what is told is then just what was tried, and does.</summary>
    private static double StepDegrees(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? 1 : 2 * 5.0 / 9;

    private static ImmutableArray<double> Steps(double step, double most) =>
        [.. Enumerable.Range(1, (int)Math.Floor((most / step) + 1e-9)).Select(i => i * step)];
}
