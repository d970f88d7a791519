using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Reading.Drafts;

namespace PlankFit.Reading.Offsets;

/// <summary>The lines between a panel's edges lie between them.</summary>
internal static class BetweenChecks
{
    /// <summary>What a table in eighths of an inch cannot tell apart, mm: a line may be off its place by so much (our own, no source).</summary>
    private const double UnsureMm = 3.2;

    /// <param name="named">Where the job names its lines.</param>
    public static IEnumerable<Finding> Of(
        OffsetsReading reading,
        Panel panel,
        IEnumerable<NamedLine> named
    )
    {
        if (
            reading.Table.Find(panel.Lower) is not { } lower
            || reading.Table.Find(panel.Upper) is not { } upper
        )
        {
            yield break;
        }

        foreach (NamedLine line in named.Where(n => n.Key == "between" && n.Panel == panel.Name))
        {
            if (reading.Table.Find(line.Name) is not { } between)
            {
                continue;
            }

            string[] stations =
            [
                .. reading
                    .Table.Stations.Where((_, i) => IsOff(lower, between, upper, i))
                    .Select(s => s.Name),
            ];
            if (stations.Length > 0)
            {
                yield return new(
                    Severity.Error,
                    line.At.ToString(),
                    $"{line.Table} between: {line.Name} does not lie between {lower.Name} and {upper.Name} at {(stations.Length == 1 ? "station" : "stations")} {string.Join(", ", stations)}: name the lines that do, or look at its offsets there"
                );
            }
        }
    }

    /// <summary>Whether the line is not abreast of any point of the straight way from edge to edge.</summary>
    private static bool IsOff(
        OffsetLine lower,
        OffsetLine between,
        OffsetLine upper,
        int station
    ) =>
        SectionPoint.Of(lower, station) is { } from
        && SectionPoint.Of(between, station) is { } point
        && SectionPoint.Of(upper, station) is { } to
        && point.Along(from, to) is var along
        && (along < -UnsureMm || along > from.To(to) + UnsureMm);
}
