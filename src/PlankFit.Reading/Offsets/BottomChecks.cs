using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;

namespace PlankFit.Reading.Offsets;

/// <summary>What keel and chine must be to one another.</summary>
internal static class BottomChecks
{
    /// <summary>A spline without guessed ends goes through four points or more.</summary>
    public const int FewestStations = 4;

    /// <summary>Keel and chine nearer than this meet in a point: half of what a table in sixteenths can tell apart, mm.</summary>
    private const double MeetMm = 0.5;

    /// <summary>Stations at which keel and chine cross, one finding each.</summary>
    public static IEnumerable<Finding> Crossed(
        OffsetsReading reading,
        OffsetLine keel,
        OffsetLine chine,
        string file
    )
    {
        int[] both =
        [
            .. Enumerable
                .Range(0, reading.Table.Stations.Length)
                .Where(i => LineChecks.Has(keel, i) && LineChecks.Has(chine, i)),
        ];
        bool keelBelow = both.Any(i => chine.HeightsMm[i] > keel.HeightsMm[i]);
        if (!keelBelow && both.Any(i => chine.HeightsMm[i] < keel.HeightsMm[i]))
        {
            yield return new(
                Severity.Warning,
                file,
                $"{chine.Name} is nowhere above {keel.Name}: are the two lines, or the sign of the heights, the wrong way round?"
            );
        }

        foreach (int i in both)
        {
            double outboard = chine.HalfBreadthsMm[i]!.Value - keel.HalfBreadthsMm[i]!.Value;
            double above = chine.HeightsMm[i]!.Value - keel.HeightsMm[i]!.Value;
            bool meet = Math.Max(Math.Abs(outboard), Math.Abs(above)) < MeetMm;
            if (meet && i == both[0])
            {
                continue;
            }

            string? fault =
                meet ? "meet in a point: they may do so only at the foremost station"
                : outboard < 0 ? "cross: the chine is inboard of the keel"
                : above < 0 && keelBelow
                    ? "cross: the chine is below the keel, at other stations above it"
                : null;
            if (fault is not null)
            {
                yield return At(
                    Severity.Error,
                    reading,
                    chine,
                    outboard < 0 ? OffsetRows.HalfBreadth : OffsetRows.Height,
                    i,
                    file,
                    $"{keel.Name} and {chine.Name} {fault}; see both lines at this station"
                );
            }
        }
    }

    /// <summary>Over which stations the panel between two lines runs, and that they are enough.</summary>
    public static IEnumerable<Finding> Extent(
        OffsetsReading reading,
        OffsetLine keel,
        OffsetLine chine,
        string file,
        string panel = Panel.BottomName
    )
    {
        (int First, int Last) k = Run(keel),
            c = Run(chine);
        int from = Math.Max(k.First, c.First),
            to = Math.Min(k.Last, c.Last);
        for (int i = 0; i < reading.Table.Stations.Length; i++)
        {
            bool onKeel = i >= k.First && i <= k.Last,
                onChine = i >= c.First && i <= c.Last;
            if (onKeel == onChine)
            {
                continue;
            }

            yield return At(
                Severity.Note,
                reading,
                onKeel ? keel : chine,
                OffsetRows.Height,
                i,
                file,
                $"only {(onKeel ? keel.Name : chine.Name)} has values at station {reading.Table.Stations[i].Name}: the {panel} is not planked there"
            );
        }

        int count = Math.Max(0, to - from + 1);
        if (count < FewestStations)
        {
            yield return new(
                Severity.Error,
                file,
                FormattableString.Invariant(
                    $"{count} station{(count == 1 ? "" : "s")} at which both {keel.Name} and {chine.Name} have values: {FewestStations} or more are needed"
                )
            );
        }
    }

    private static (int First, int Last) Run(OffsetLine line)
    {
        int[] at =
        [
            .. Enumerable.Range(0, line.HeightsMm.Length).Where(i => LineChecks.Has(line, i)),
        ];
        return at.Length == 0 ? (0, -1) : (at[0], at[^1]);
    }

    /// <summary>A finding at one cell of a line.</summary>
    public static Finding At(
        Severity severity,
        OffsetsReading reading,
        OffsetLine line,
        string measure,
        int station,
        string file,
        string message
    ) =>
        new(
            severity,
            OffsetRows.Cell(
                file,
                reading.FileLines.GetValueOrDefault((line.Name, measure)),
                reading.Columns[station],
                reading.Table.Stations[station].Name
            ),
            message
        );
}
