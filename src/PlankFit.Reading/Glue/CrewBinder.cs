using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Glue;

/// <summary>[crew] and [clock].</summary>
internal static class CrewBinder
{
    private const string ShiftAccepted =
        "accepted: hours of a day in order, none beyond midnight: [\"08:00-12:00\", \"13:00-17:00\"]";

    public static (CrewSpec? Crew, Cup? Cup) Crew(TableReader? table, LengthUnit units)
    {
        if (table is null)
        {
            return (null, null);
        }

        double? hands = table.Number(WorkKeys.Hands);
        Cup? cup = CupOf(table.Table(WorkKeys.Cup), units);
        CrewSpec crew = new((int)Math.Clamp(hands ?? 0, 0, 50))
        {
            MixMinutes = table.NumberOrDefault(WorkKeys.MixMinutes),
            SpreadMinutes = table.NumberOrDefault(WorkKeys.Spread),
            FastenMinutes = table.NumberOrDefault(WorkKeys.Fasten),
            WaitMinutes = table.NumberOrDefault(WorkKeys.Wait),
            WetMinutesPerM2 = table.NumberOrDefault(WorkKeys.Wet),
            CoatMinutesPerM2 = table.NumberOrDefault(WorkKeys.Coat),
            FairMinutesPerM2 = table.NumberOrDefault(WorkKeys.Fair),
            FilletMinutesPerM = table.NumberOrDefault(WorkKeys.LayFillet),
            TrimMinutesPerM = table.NumberOrDefault(WorkKeys.Trim),
            KeyMinutesPerM2 = table.NumberOrDefault(WorkKeys.WashAndKey),
            BoardMinutesPerM2 = table.NumberOrDefault(WorkKeys.Board),
            MostGrams = table.Number(WorkKeys.MostGrams),
            LeastGrams = table.NumberOrDefault(WorkKeys.LeastGrams),
            HeldBy = table.Text(WorkKeys.HeldBy),
            HoldsPlanks = (int)Math.Clamp(table.NumberOrDefault(WorkKeys.HoldsPlanks), 1, 50),
            ClampsOnHand = table.Number(WorkKeys.ClampsOnHand) is { } clamps
                ? (int)Math.Clamp(clamps, 0, 100_000)
                : null,
            WaitsForClamps = table.YesNo(WorkKeys.WaitForClamps),
            Searched = table.ChoiceOrDefault(WorkKeys.Sessions),
        };
        if (crew is { WaitsForClamps: true, ClampsOnHand: null })
        {
            table.Wrong(WorkKeys.WaitForClamps, "say for how many: clamps-on-hand = 60");
        }

        table.Close();
        return (hands is null ? null : crew, cup);
    }

    public static ClockSpec? Clock(TableReader? table)
    {
        if (table is null)
        {
            return null;
        }

        ImmutableArray<(double From, double To)>? shifts = Shifts(table);
        DayTemperature? day = Temperature(table);
        table.Close();
        return shifts is { } s && day is not null ? new(s, day) : null;
    }

    /// <summary>Minutes after midnight of "14:30"; null where it is no hour of a day.</summary>
    internal static double? Hour(string text)
    {
        string[] parts = text.Trim().Split(':');
        return
            parts is [{ Length: 1 or 2 } hours, { Length: 2 } minutes]
            && int.TryParse(hours, NumberStyles.None, CultureInfo.InvariantCulture, out int h)
            && int.TryParse(minutes, NumberStyles.None, CultureInfo.InvariantCulture, out int m)
            && m < 60
            && (h < 24 || (h == 24 && m == 0))
            ? (60 * h) + m
            : null;
    }

    private static Cup? CupOf(TableReader? table, LengthUnit units)
    {
        if (table is null)
        {
            return null;
        }

        double? bottom = table.Length(WorkKeys.AcrossBottom, units),
            top = table.Length(WorkKeys.AcrossTop, units),
            height = table.Length(WorkKeys.Height, units);
        table.Close();
        return bottom is > 0 and { } b && top is > 0 and { } t && height is > 0 and { } h
            ? new(b / 2, (t - b) / 2 / h) { RimMm = h }
            : null;
    }

    private static ImmutableArray<(double From, double To)>? Shifts(TableReader table)
    {
        if (!table.Has(WorkKeys.Shifts))
        {
            table.Missing(WorkKeys.Shifts, ShiftAccepted);
            return null;
        }

        ImmutableArray<(double From, double To)>.Builder shifts = ImmutableArray.CreateBuilder<(
            double From,
            double To
        )>();
        foreach ((string text, Place at) in table.Texts(WorkKeys.Shifts))
        {
            if (
                text.Split('-') is [var first, var second]
                && Hour(first) is { } from
                && Hour(second) is { } to
                && from < to
                && from >= (shifts.Count == 0 ? 0 : shifts[^1].To)
            )
            {
                shifts.Add((from, to));
            }
            else
            {
                table.Faults.Error(
                    at,
                    $"{table.Name} {WorkKeys.Shifts.Name}: {Quoted.Of(text)}: {ShiftAccepted}"
                );
                return null;
            }
        }

        if (shifts.Count > 0)
        {
            return shifts.ToImmutable();
        }

        table.Wrong(WorkKeys.Shifts, ShiftAccepted);
        return null;
    }

    private static DayTemperature? Temperature(TableReader table)
    {
        if (!table.Has(WorkKeys.Temperature))
        {
            table.Missing(
                WorkKeys.Temperature,
                "give one hour at least: [{ at = \"08:00\", is = \"16 C\" }, { at = \"14:00\", is = \"24 C\" }]"
            );
            return null;
        }

        List<(double Minute, double Celsius)> points = [];
        bool whole = true;
        foreach (TableReader line in table.Tables(WorkKeys.Temperature))
        {
            double? celsius = Temperatures.Of(line, WorkKeys.Degrees),
                minute = line.Text(WorkKeys.Time) is { } text ? Hour(text) : null;
            if (
                line.Has(WorkKeys.Time)
                && (
                    minute is null or 1440 || minute <= (points.Count == 0 ? -1 : points[^1].Minute)
                )
            )
            {
                line.Wrong(
                    WorkKeys.Time,
                    "accepted: an hour of the day after the one before it, \"14:00\""
                );
                minute = null;
            }

            line.Close();
            if (celsius is { } c && minute is { } m)
            {
                points.Add((m, c));
            }
            else
            {
                whole = false;
            }
        }

        return whole && points.Count > 0 ? new([.. points]) : null;
    }
}
