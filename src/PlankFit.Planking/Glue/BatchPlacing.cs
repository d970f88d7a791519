using System.Collections.Immutable;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Glue.Sessions;

namespace PlankFit.Planking.Glue;

/// <summary>
/// One batch at one moment: how many planks it may hold. Its clocks run from the beginning of mixing, the pot's until the last plank's glue is spread and the film's until
/// that plank is down; both over the day's temperature, and neither beyond the part that may be used.
/// </summary>
internal sealed record BatchPlacing(Mix Mix, CrewSpec Crew, DayTemperature Day)
{
    private const double Hair = 1e-6;

    /// <summary>Planks as they would go down, in a batch that holds.</summary>
    public readonly record struct Placed(
        double Grams,
        ImmutableArray<PlankTimes> Planks,
        BatchTimes Clocks
    );

    public double MostGrams =>
        Math.Min(
            Mix.Clocks.Pot.MostGrams ?? double.PositiveInfinity,
            Crew.MostGrams ?? double.PositiveInfinity
        );

    /// <summary>The first planks of those in order, as many as hold; null where not one does.</summary>
    /// <param name="after">When the plank is down that the first of them lies against.</param>
    /// <param name="shiftTo">Nothing is left for after the break.</param>
    public Placed? Largest(
        ReadOnlySpan<PlankShare> planks,
        HandsInUse hands,
        double at,
        double after,
        double shiftTo
    )
    {
        Placed? most = null;
        for (int k = 1; k <= planks.Length; k++)
        {
            if (Of(planks[..k], hands, at, after, shiftTo) is not { } placed)
            {
                break;
            }

            most = placed;
        }

        return most;
    }

    /// <summary>More planks than this no batch can hold at any hour, whatever they are and whoever is free: both clocks at the coldest, the lightest planks; one at least.</summary>
    public int MostEver(ImmutableArray<PlankShare> planks)
    {
        PlankShare[] lightest = [.. planks.OrderBy(p => p.Grams)];
        double film = Mix.UsePart * Mix.Clocks.Film.Minutes(Day.Coldest),
            grams = 0,
            spread = Crew.MixMinutes,
            down = Crew.MixMinutes + planks.Select(p => p.SpreadMinutes).DefaultIfEmpty(0).Min();
        int k = 0;
        for (; k < lightest.Length; k++)
        {
            grams += lightest[k].Grams;
            spread += planks.Min(p => p.SpreadMinutes);
            // One after the other they go down, and none lies spread for longer than it may.
            double pot = Math.Max(spread, down - Crew.WaitMinutes);
            down += planks.Min(p => p.FastenMinutes);
            if (
                grams > MostGrams
                || down > film + Hair
                || pot > (Mix.UsePart * Mix.Clocks.Pot.Minutes(Day.Coldest, grams)) + Hair
            )
            {
                break;
            }
        }

        return Math.Max(1, k);
    }

    /// <summary>These planks in one batch mixed at a moment; null where a clock, the hands or the shift does not hold.</summary>
    public Placed? Of(
        ReadOnlySpan<PlankShare> planks,
        HandsInUse hands,
        double at,
        double after,
        double shiftTo
    )
    {
        double grams = 0;
        foreach (PlankShare plank in planks)
        {
            grams += plank.Grams;
        }

        grams = Math.Max(grams, Math.Min(Crew.LeastGrams, MostGrams));

        double mixed = at + Crew.MixMinutes;
        if (grams > MostGrams || mixed > shiftTo + Hair || !hands.Free(at, mixed, 1))
        {
            return null;
        }

        int before = hands.Count;
        hands.Take(at, mixed, 1);
        double outBy = at + Life(Mix.Clocks.Pot, grams, Day, at),
            downBy = at + Life(Mix.Clocks.Film, null, Day, at);
        ImmutableArray<PlankTimes>? times = Times(
            planks,
            hands,
            (mixed, after),
            (outBy, Math.Min(downBy, shiftTo))
        );
        hands.Undo(before);
        return times is { } found
            ? new(
                grams,
                found,
                new(
                    found[^1].SpreadAt + planks[^1].SpreadMinutes,
                    outBy,
                    found[^1].DoneAt,
                    downBy,
                    Warmer(grams, at)
                )
            )
            : null;
    }

    /// <summary>Keeps the hands of a batch.</summary>
    public void Take(Placed placed, ReadOnlySpan<PlankShare> planks, HandsInUse hands, double at)
    {
        hands.Take(at, at + Crew.MixMinutes, 1);
        for (int i = 0; i < placed.Planks.Length; i++)
        {
            PlankTimes times = placed.Planks[i];
            hands.Take(times.SpreadAt, times.SpreadAt + planks[i].SpreadMinutes, 1);
            hands.Take(times.SetAt, times.DoneAt, CrewSpec.FastenHands);
        }
    }

    /// <summary>By when a batch must be out and down where the whole day is warmer by <see cref="DayTemperature.WarmerDegrees"/>.</summary>
    public ByWhen Warmer(double grams, double at)
    {
        DayTemperature warmer = Day.Warmer(DayTemperature.WarmerDegrees);
        return new(
            at + Life(Mix.Clocks.Pot, grams, warmer, at),
            at + Life(Mix.Clocks.Film, null, warmer, at)
        );
    }

    /// <summary>Minutes of a clock that may be used.</summary>
    public double Life(ClockLaw law, double? grams, DayTemperature day, double at) =>
        Math.Floor(ClockRun.Minutes(law, grams, day, at, Mix.UsePart) + Hair);

    private ImmutableArray<PlankTimes>? Times(
        ReadOnlySpan<PlankShare> planks,
        HandsInUse hands,
        (double Mixed, double After) from,
        (double Out, double Down) by
    )
    {
        ImmutableArray<PlankTimes>.Builder times = ImmutableArray.CreateBuilder<PlankTimes>(
            planks.Length
        );
        double spreadFrom = from.Mixed,
            setFrom = from.After;
        foreach (PlankShare plank in planks)
        {
            // Down as soon as two hands are free and the neighbour is down; its glue is spread no longer before that than it may lie open.
            double set = hands.FirstFree(
                    Math.Max(setFrom, spreadFrom + plank.SpreadMinutes),
                    plank.FastenMinutes,
                    CrewSpec.FastenHands
                ),
                spread = hands.FirstFree(
                    Math.Max(spreadFrom, set - Crew.WaitMinutes - plank.SpreadMinutes),
                    plank.SpreadMinutes,
                    1
                );
            if (spread + plank.SpreadMinutes > set + Hair)
            {
                set = hands.FirstFree(
                    spread + plank.SpreadMinutes,
                    plank.FastenMinutes,
                    CrewSpec.FastenHands
                );
            }

            double spreadEnd = spread + plank.SpreadMinutes,
                done = set + plank.FastenMinutes;
            if (
                set - spreadEnd > Crew.WaitMinutes + Hair
                || spreadEnd > by.Out + Hair
                || done > by.Down + Hair
                || !hands.Free(spread, spreadEnd, 1)
            )
            {
                return null;
            }

            hands.Take(spread, spreadEnd, 1);
            if (!hands.Free(set, done, CrewSpec.FastenHands))
            {
                return null;
            }

            hands.Take(set, done, CrewSpec.FastenHands);
            times.Add(
                new(plank.Id, spread, set, done)
                {
                    Grams = plank.Grams,
                    Fastenings = plank.Fastenings,
                }
            );
            spreadFrom = spreadEnd;
            setFrom = done;
        }

        return times.MoveToImmutable();
    }
}
