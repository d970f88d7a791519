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
    /// <summary>Nobody glues one bottom for longer without a day between, a proposal: what lies further from the middle one of all notes is a clock that is wrong.</summary>
    public const int MostDaysApart = 60;

    /// <summary>Noted at a time that cannot be; they are down with the last of the others.</summary>
    public ImmutableArray<PlankId> Doubtful { get; private init; } = [];

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
        DateTime[] moments = [.. glued.Select(g => g.At).OfType<DateTime>().Order()];
        bool Is(DateTime at) =>
            Math.Abs((at - moments[moments.Length / 2]).TotalDays) <= MostDaysApart;
        DateTime[] sound = [.. moments.Where(Is)];
        DateTime? first = sound.Length > 0 ? sound[0].Date : null;
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
                        ? ((Is(at) ? at : sound[^1]) - day).TotalMinutes
                        : g.Hour?.TotalMinutes ?? 0
                )),
            ],
            first?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? ""
        )
        {
            Doubtful = [.. glued.Where(g => g.At is { } at && !Is(at)).Select(g => g.Plank)],
        };
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
