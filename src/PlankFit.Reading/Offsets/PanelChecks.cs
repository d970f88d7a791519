using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;

namespace PlankFit.Reading.Offsets;

/// <summary>What the edges of a panel besides the bottom must be to one another.</summary>
internal static class PanelChecks
{
    /// <summary>Edges nearer than this meet in a point: half of what a table in sixteenths can tell apart, mm.</summary>
    private const double MeetMm = 0.5;

    /// <param name="faulty">The table has faults of its own: then only what does not follow from them is checked.</param>
    public static IEnumerable<Finding> Of(
        OffsetsReading reading,
        Panel panel,
        string file,
        bool faulty
    )
    {
        if (
            reading.Table.Find(panel.Lower) is not { } lower
            || reading.Table.Find(panel.Upper) is not { } upper
            || lower == upper
        )
        {
            return [];
        }

        IEnumerable<Finding> crossed = Crossed(reading, panel, lower, upper, file);
        return faulty
            ? crossed
            : crossed.Concat(BottomChecks.Extent(reading, lower, upper, file, panel.Name));
    }

    /// <summary>Stations at which the edges cross or meet, one finding each.</summary>
    private static IEnumerable<Finding> Crossed(
        OffsetsReading reading,
        Panel panel,
        OffsetLine lower,
        OffsetLine upper,
        string file
    )
    {
        int[] both =
        [
            .. Enumerable
                .Range(0, reading.Table.Stations.Length)
                .Where(i => LineChecks.Has(lower, i) && LineChecks.Has(upper, i)),
        ];
        foreach (int i in both)
        {
            double outboard = upper.HalfBreadthsMm[i]!.Value - lower.HalfBreadthsMm[i]!.Value,
                above = upper.HeightsMm[i]!.Value - lower.HeightsMm[i]!.Value;
            bool meet = Math.Max(Math.Abs(outboard), Math.Abs(above)) < MeetMm;
            string? fault =
                meet && i == both[0] ? null
                : meet ? "meet in a point: they may do so only at the foremost station"
                : above > 0 || outboard > -above ? null
                : $"cross: {upper.Name} is the upper edge of the {panel.Name} and lies below its lower one; are the two the wrong way round in [[panel]]?";
            if (fault is not null)
            {
                yield return BottomChecks.At(
                    Severity.Error,
                    reading,
                    upper,
                    OffsetRows.Height,
                    i,
                    file,
                    $"{lower.Name} and {upper.Name} {fault}; see both lines at this station"
                );
            }
        }
    }
}
