using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;

namespace PlankFit.Reading.Offsets;

/// <summary>What keel and chine must be to one another.</summary>
internal static class BottomChecks
{
    /// <summary>A spline without guessed ends goes through four points or more.</summary>
    public const int FewestStations = 4;

    /// <summary>Stations at which keel and chine cross, one finding each.</summary>
    public static IEnumerable<Finding> Crossed(
        OffsetsReading reading,
        OffsetLine keel,
        OffsetLine chine,
        string file
    )
    {
        ImmutableArray<int> both = [.. keel.Known.Where(chine.Has)];
        bool keelBelow = both.Any(i => chine.HeightsMm[i] > keel.HeightsMm[i]);
        if (!keelBelow && both.Any(i => chine.HeightsMm[i] < keel.HeightsMm[i]))
        {
            yield return new(
                Severity.Warning,
                file,
                $"{chine.Name} is nowhere above {keel.Name}: are the two lines, or the sign of the heights, the wrong way round?"
            );
        }

        EdgePair[] pairs = [.. EdgePair.Of(keel, chine)];
        if (pairs.Length > 0 && pairs.All(p => !p.Meet && p.OutboardMm < 0))
        {
            yield return new(
                Severity.Error,
                file,
                $"{chine.Name}, taken for the chine, lies inboard of {keel.Name}, taken for the keel, at every station: are the two exchanged in the job, keel = and chine = under [hull]?"
            );
            yield break;
        }

        foreach (EdgePair pair in pairs)
        {
            string? fault =
                pair.Meet ? EdgePair.MeetAbaft
                : pair.OutboardMm < 0 ? "cross: the chine is inboard of the keel"
                : pair.AboveMm < 0 && keelBelow
                    ? "cross: the chine is below the keel, at other stations above it"
                : null;
            if (fault is not null)
            {
                yield return At(
                    Severity.Error,
                    reading,
                    chine,
                    pair.OutboardMm < 0 ? OffsetRows.HalfBreadth : OffsetRows.Height,
                    pair.Station,
                    file,
                    EdgePair.Told(keel, chine, fault)
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
        (int First, int Last) k = keel.Run,
            c = chine.Run;
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
                    $"{NumberText.Count(count, "station")} at which both {keel.Name} and {chine.Name} have values: {FewestStations} or more are needed"
                )
            );
        }
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
