using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Planking.Glue;

/// <summary>One side's cloth to wet out.</summary>
/// <param name="AreaMm2">Of cloth.</param>
/// <param name="GramsPerM2">Of mix, priming and waste among it.</param>
/// <param name="TrimMetres">Of edge to trim; 0 for a coat on cloth that is trimmed already.</param>
internal readonly record struct ClothShare(
    Side Side,
    double AreaMm2,
    double GramsPerM2,
    double TrimMetres
)
{
    /// <summary>Of a fillet, whose rates are a metre instead of a square metre; null for cloth.</summary>
    public double? LengthMm { get; init; }

    /// <summary>Square metres, or metres.</summary>
    public double Amount => LengthMm is { } mm ? mm / 1000 : AreaMm2 / 1e6;

    /// <summary>One of so many equal parts of it.</summary>
    public ClothShare Part(int of) =>
        this with
        {
            AreaMm2 = AreaMm2 / of,
            LengthMm = LengthMm / of,
            TrimMetres = TrimMetres / of,
        };
}

/// <summary>
/// A cloth on both sides: a side is wetted out without a break, batch upon batch, and trimmed while all of it is tacky: no earlier than the last course allows and no
/// later than the first.
/// </summary>
internal sealed record ClothWetting(string Layer, BatchPlacing Placing, WorkDays Days)
{
    /// <summary>A day is looked through in such steps, minutes.</summary>
    public double StepMinutes { get; init; } = 10;

    /// <summary>Days are alike: what finds no time within two finds none.</summary>
    private const double LookMinutes = 2 * DayTemperature.Day;

    /// <summary>Two hands wet out.</summary>
    public const int WetHands = 2;

    public sealed record WettedSide(ImmutableArray<GlueBatch> Batches, TrimSpan? Trim)
    {
        public double FirstAt => Batches[0].Clocks.OutAt;

        public double LastAt => Batches[^1].Clocks.OutAt;
    }

    /// <summary>Null where no shift is long enough to wet a side out, or none falls so that it can be trimmed.</summary>
    public WettedSide? Of(
        ClothShare share,
        double from,
        IReadOnlyList<(double From, double To)> taken
    )
    {
        // No shift is long enough for the work alone.
        if (
            Placing.Crew.Hands < WetHands
            || Days.Shifts.Max(s => s.To - s.From)
                < Placing.Crew.MixMinutes + (share.Amount * Placing.Crew.WetMinutesPerM2)
        )
        {
            return null;
        }

        for (
            double at = Days.Working(from);
            at < from + LookMinutes;
            at = Days.Working(at + StepMinutes)
        )
        {
            if (At(share, at, taken) is { } side)
            {
                return side;
            }
        }

        return null;
    }

    private WettedSide? At(
        ClothShare share,
        double at,
        IReadOnlyList<(double From, double To)> taken
    )
    {
        (_, double shiftTo) = Days.ShiftAt(at);
        ImmutableArray<GlueBatch> batches = Batches(share, at);
        if (
            batches.IsEmpty
            || batches[^1].Clocks.DownAt > shiftTo
            || Meets(at, batches[^1].Clocks.DownAt)
        )
        {
            return null;
        }

        if (share.TrimMetres <= 0 || Placing.Mix.Clocks.Tacky is not { } tacky)
        {
            return new(batches, null);
        }

        double first = batches[0].Clocks.OutAt,
            last = batches[^1].Clocks.OutAt,
            minutes = share.TrimMetres * Placing.Crew.TrimMinutesPerM,
            notBefore = last + Math.Ceiling(ClockRun.Minutes(tacky.From, null, Placing.Day, last)),
            notAfter = first + Math.Floor(ClockRun.Minutes(tacky.To, null, Placing.Day, first));
        for (
            double? trim = Days.Unbroken(notBefore, minutes);
            trim is { } t && t + minutes <= notAfter;
            trim = Days.Unbroken(t + StepMinutes, minutes)
        )
        {
            if (!Meets(t, t + minutes))
            {
                return new(batches, new(share.Side, notBefore, notAfter, t, t + minutes));
            }
        }

        return null;

        // With a hand to spare beside those that wet out and the one that mixes the next, one trims meanwhile.
        bool Meets(double start, double end) =>
            Placing.Crew.Hands <= WetHands + 1 && taken.Any(s => s.From < end && s.To > start);
    }

    /// <summary>As few as both clocks hold, all alike; none where not even small ones do.</summary>
    private ImmutableArray<GlueBatch> Batches(ClothShare share, double at)
    {
        double area = share.Amount;
        const int Most = 200;
        for (int n = 1; n <= Most; n++)
        {
            double wet = area / n * Placing.Crew.WetMinutesPerM2,
                wanted = area / n * share.GramsPerM2,
                grams = Math.Max(wanted, Math.Min(Placing.Crew.LeastGrams, Placing.MostGrams)),
                mix = Placing.Crew.MixMinutes;
            if (grams > Placing.MostGrams)
            {
                continue;
            }

            // With a third hand the next is mixed while the last is spread.
            double apart = Math.Ceiling(
                Placing.Crew.Hands > WetHands ? Math.Max(wet, mix) : wet + mix
            );
            ImmutableArray<GlueBatch>.Builder batches = ImmutableArray.CreateBuilder<GlueBatch>(n);
            for (int i = 0; i < n; i++)
            {
                double mixAt = at + (i * apart),
                    outAt = mixAt + mix + wet,
                    outBy = mixAt + Placing.Life(Placing.Mix.Clocks.Pot, grams, Placing.Day, mixAt),
                    downBy =
                        mixAt + Placing.Life(Placing.Mix.Clocks.Film, null, Placing.Day, mixAt);
                if (outAt > Math.Min(outBy, downBy))
                {
                    break;
                }

                batches.Add(
                    new(
                        "",
                        Layer,
                        share.Side,
                        mixAt,
                        grams,
                        Placing.Mix.Ratio.Parts(grams / 1000),
                        new(outAt, outBy, outAt, downBy, Placing.Warmer(grams, mixAt))
                    )
                    {
                        ClothMm2 = share.AreaMm2 / n,
                        LeftGrams = grams - wanted,
                        LengthMm = (share.LengthMm ?? 0) / n,
                        Celsius = Placing.Day.Celsius(mixAt),
                        Course = i + 1,
                    }
                );
            }

            if (batches.Count == n)
            {
                return batches.MoveToImmutable();
            }
        }

        return [];
    }
}
