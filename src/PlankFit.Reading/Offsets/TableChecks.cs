using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>The table against what the job asks of it.</summary>
internal static class TableChecks
{
    /// <param name="faulty">The table has faults of its own: then only what does not follow from them is checked.</param>
    public static IEnumerable<Finding> Check(
        OffsetsReading reading,
        JobDraft draft,
        string file,
        bool faulty
    )
    {
        IEnumerable<Finding> findings = LineChecks.Names(reading, draft.Lines, file);
        if (!faulty)
        {
            findings = findings.Concat(LineChecks.Whole(reading, draft.Lines, file));
        }

        if (
            Line(reading, draft.Lines, "keel") is { } keel
            && Line(reading, draft.Lines, "chine") is { } chine
            && keel != chine
        )
        {
            findings = findings.Concat(BottomChecks.Crossed(reading, keel, chine, file));
            if (!faulty)
            {
                findings = findings.Concat(BottomChecks.Extent(reading, keel, chine, file));
            }
        }

        return findings;
    }

    private static OffsetLine? Line(
        OffsetsReading reading,
        ImmutableArray<NamedLine> named,
        string key
    ) => named.FirstOrDefault(n => n.Key == key) is { } line ? reading.Table.Find(line.Name) : null;
}
