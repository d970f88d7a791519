using System.Collections.Immutable;
using System.Globalization;
using PlankFit.App.Noting;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Layers;
using PlankFit.Reading.Glue;

namespace PlankFit.App.Planning;

/// <summary>
/// Planks that the page's journal has as glued, and cloth, coats, fairing and fillets that it has as laid. The day of the first of them is the plan's first day; a plank was down
/// when it was noted, at the latest, and what else is laid when the note says.
/// </summary>
/// <param name="FirstDay">As it was noted; empty where no note has a day.</param>
internal sealed record GluedByNotes(ImmutableArray<GlueDone> Rows, string FirstDay)
{
    /// <summary>Nobody glues one bottom for longer without a day between, a proposal: what lies further from the middle one of all notes is a clock that is wrong.</summary>
    public const int MostDaysApart = 60;

    /// <summary>Noted at a time that cannot be; they are down with the last of the others.</summary>
    public ImmutableArray<GlueDone> Doubtful { get; private init; } = [];

    /// <summary>Laid by the journal, and of another job, or called otherwise since.</summary>
    public ImmutableArray<string> Strange { get; private init; } = [];

    /// <param name="layers">The bottom's, by which cloth is named.</param>
    public static GluedByNotes Of(IEnumerable<ProgressTick> ticks, ImmutableArray<LayerSpec> layers)
    {
        ProgressTick[] states = [.. ticks.Where(t => t.Field == ProgressField.State)];
        (ProgressTick Tick, DateTime At)[] laid =
        [
            .. states
                .Where(t => LaidPart.IsName(t.Plank) && LaidPart.MomentOf(t.Value) is not null)
                .Select(t => (t, LaidPart.MomentOf(t.Value)!.Value))
                .OrderBy(t => t.t.Plank, StringComparer.Ordinal),
        ];
        (GlueDone Row, DateTime? At, TimeSpan? Hour)[] glued =
        [
            .. states
                .Where(t => t.Value == "glued")
                .Select(t => (Plank: PlankId.Parse(t.Plank)!.Value, Moment(t.At), HourOf(t.At)))
                // Gluing is planned of the bottom alone.
                .Where(t => t.Plank.Panel == PlankId.Bottom)
                .OrderBy(t => t.Plank)
                .Select(t => (new GlueDone(t.Plank, null, t.Plank.Side, 0), t.Item2, t.Item3)),
            .. laid.Select(t =>
                    (Row: ProgressText.Part(t.Tick.Plank, layers), (DateTime?)t.At, (TimeSpan?)null)
                )
                .Where(t => t.Row is not null)
                .Select(t => (t.Row!, t.Item2, t.Item3)),
        ];
        DateTime[] moments = [.. glued.Select(g => g.At).OfType<DateTime>().Order()];
        bool Is(DateTime at) =>
            Math.Abs((at - moments[moments.Length / 2]).TotalDays) <= MostDaysApart;
        DateTime[] sound = [.. moments.Where(Is)];
        DateTime? first = sound.Length > 0 ? sound[0].Date : null;
        return new(
            [
                .. glued.Select(g =>
                    g.Row with
                    {
                        // A note of an hour alone is of the first day.
                        At =
                            g.At is { } at && first is { } day
                                ? ((Is(at) ? at : sound[^1]) - day).TotalMinutes
                                : g.Hour?.TotalMinutes ?? 0,
                    }
                ),
            ],
            first?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? ""
        )
        {
            Doubtful = [.. glued.Where(g => g.At is { } at && !Is(at)).Select(g => g.Row)],
            Strange =
            [
                .. laid.Where(t => ProgressText.Part(t.Tick.Plank, layers) is null)
                    .Select(t => t.Tick.Plank),
            ],
        };
    }

    /// <summary>S1-07 to 12, core cloth starboard.</summary>
    public static string Names(IEnumerable<GlueDone> rows)
    {
        GlueDone[] all = [.. rows];
        PlankId[] planks = [.. all.Select(r => r.Plank).OfType<PlankId>()];
        return string.Join(
            ", ",
            (planks.Length > 0 ? new[] { PlankRuns.Of(planks) } : []).Concat(
                all.Where(r => r.Plank is null).Select(r => r.Name)
            )
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
