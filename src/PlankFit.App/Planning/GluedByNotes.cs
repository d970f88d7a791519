using System.Collections.Immutable;
using System.Globalization;
using PlankFit.App.Noting;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;

namespace PlankFit.App.Planning;

/// <summary>
/// Planks that the page's journal has as glued. The day on which the first of them was noted is the plan's first day; a plank was down when it was noted, at the latest.
/// </summary>
/// <param name="FirstDay">As it was noted; empty where no note has a day.</param>
internal sealed record GluedByNotes(ImmutableArray<GlueDone> Rows, string FirstDay)
{
    private const int MinutesOfDay = 1440;

    public static GluedByNotes Of(IEnumerable<ProgressTick> ticks)
    {
        (PlankId Plank, DateTime? At, TimeSpan? Hour)[] glued =
        [
            .. ticks
                .Where(t => t is { Field: ProgressField.State, Value: "glued" })
                .Select(t => (Plank: PlankId.Parse(t.Plank)!.Value, Moment(t.At), HourOf(t.At)))
                // Gluing is planned of the bottom alone.
                .Where(t => t.Plank.Panel == PlankId.Bottom)
                .OrderBy(t => t.Plank),
        ];
        DateTime? first = glued.Min(g => g.At)?.Date;
        return new(
            [
                .. glued.Select(g => new GlueDone(
                    g.Plank,
                    null,
                    g.Plank.Side,
                    // A note of an hour alone is of the first day.
                    g.At
                        is { } at
                    && first is { } day
                        ? ((at.Date - day).TotalDays * MinutesOfDay) + at.TimeOfDay.TotalMinutes
                        : g.Hour?.TotalMinutes ?? 0
                )),
            ],
            first?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? ""
        );
    }

    private static DateTime? Moment(string at) =>
        DateTime.TryParseExact(
            at,
            "yyyy-MM-dd HH:mm",
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out DateTime moment
        )
            ? moment
            : null;

    private static TimeSpan? HourOf(string at) =>
        TimeSpan.TryParseExact(at, @"hh\:mm", CultureInfo.InvariantCulture, out TimeSpan hour)
            ? hour
            : null;
}
