using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;

namespace PlankFit.Reading.Offsets;

/// <summary>What the edges of a panel besides the bottom must be to one another.</summary>
internal static class PanelChecks
{
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
        foreach (EdgePair pair in EdgePair.Of(lower, upper))
        {
            string? fault =
                pair.Meet ? EdgePair.MeetAbaft
                : pair.AboveMm > 0 || pair.OutboardMm > -pair.AboveMm ? null
                : $"cross: {upper.Name} is the upper edge of the {panel.Name} and lies below its lower one; are the two the wrong way round in [[panel]]?";
            if (fault is not null)
            {
                yield return BottomChecks.At(
                    Severity.Error,
                    reading,
                    upper,
                    OffsetRows.Height,
                    pair.Station,
                    file,
                    EdgePair.Told(lower, upper, fault)
                );
            }
        }
    }
}
