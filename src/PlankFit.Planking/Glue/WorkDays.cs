using System.Collections.Immutable;
using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Planking.Glue;

/// <summary>Shifts, day after day. Minutes count from midnight of the first day.</summary>
internal sealed record WorkDays(ImmutableArray<(double From, double To)> Shifts)
{
    private const double Hair = 1e-6;

    /// <summary>The shift that this moment lies in, or the next one.</summary>
    public (double From, double To) ShiftAt(double minute)
    {
        double day = DayTemperature.Day * Math.Floor(minute / DayTemperature.Day);
        for (double d = day; ; d += DayTemperature.Day)
        {
            foreach ((double from, double to) in Shifts)
            {
                if (d + to > minute + Hair)
                {
                    return (d + from, d + to);
                }
            }
        }
    }

    /// <summary>The first moment not before this at which somebody works.</summary>
    public double Working(double minute) => Math.Max(minute, ShiftAt(minute).From);

    /// <summary>When work of so many minutes ends that may be laid down over breaks and nights.</summary>
    public double Done(double minute, double work)
    {
        double at = Working(minute),
            left = work;
        while (ShiftAt(at).To - at < left - Hair)
        {
            (_, double end) = ShiftAt(at);
            left -= end - at;
            at = Working(end);
        }

        return at + left;
    }

    /// <summary>The first moment not before this from which work of so many minutes is done without a break; null where no shift is so long.</summary>
    public double? Unbroken(double minute, double work)
    {
        if (Shifts.Max(s => s.To - s.From) < work - Hair)
        {
            return null;
        }

        double at = Working(minute);
        while (ShiftAt(at).To - at < work - Hair)
        {
            at = Working(ShiftAt(at).To);
        }

        return at;
    }

    /// <summary>Minutes of work between two moments.</summary>
    public double Between(double from, double to)
    {
        double sum = 0;
        for (double at = Working(from); at < to; at = Working(ShiftAt(at).To))
        {
            sum += Math.Min(ShiftAt(at).To, to) - at;
        }

        return sum;
    }
}
