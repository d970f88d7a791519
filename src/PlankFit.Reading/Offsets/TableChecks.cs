using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Offsets;

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
        ImmutableArray<NamedLine> ofKeel = draft.Parts.KeelLines;
        IEnumerable<Finding> findings = LineChecks
            .Names(reading, draft.Lines, file)
            .Concat(KnuckleChecks.Of(reading, draft.Lines))
            .Concat(StationNames(reading, draft.Stations, file))
            .Concat(CellNames(reading, draft.Offsets, file))
            .Concat(KeelLineChecks.Of(reading, ofKeel, file));
        if (!faulty)
        {
            findings = findings.Concat(LineChecks.Whole(reading, draft.Lines, ofKeel, file));
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

        Finding[] ofPanels =
        [
            .. draft
                .Panels.Select(p => p.Panel)
                .SelectMany(p =>
                    PanelChecks
                        .Of(reading, p, file, faulty)
                        .Concat(BetweenChecks.Of(reading, p, draft.Lines))
                ),
        ];
        findings = findings.Concat(ofPanels);
        if (!ofPanels.Any(f => f.Severity == Severity.Error))
        {
            findings = findings.Concat(PanelOverlaps.Of(reading, draft));
        }

        return findings;
    }

    /// <summary>Stations that the job names and the table has not.</summary>
    private static IEnumerable<Finding> StationNames(
        OffsetsReading reading,
        ImmutableArray<NamedLine> named,
        string file
    )
    {
        string[] known = [.. reading.Table.Stations.Select(s => s.Name)];
        foreach (NamedLine station in named.Where(n => !known.Contains(n.Name)))
        {
            yield return new(
                Severity.Error,
                station.At.ToString(),
                $"{station.Table} {station.Key} = {Quoted.Of(station.Name)}: {file} has no such station; it has {string.Join(", ", known)}"
            );
        }
    }

    /// <summary>Cells that the job takes as written and the table has not.</summary>
    private static IEnumerable<Finding> CellNames(
        OffsetsReading reading,
        OffsetsDraft offsets,
        string file
    )
    {
        if (offsets.AsWritten.IsEmpty)
        {
            yield break;
        }

        string[] known = [.. OffsetCell.All(reading.Table)];
        foreach ((string cell, Place at) in offsets.AsWritten.Where(c => !known.Contains(c.Cell)))
        {
            yield return new(
                Severity.Error,
                at.ToString(),
                $"[hull] as-written: {file} has no value at {Quoted.Of(cell)}; a cell is named by its line, measure and station as they stand there, such as {Quoted.Of(known[0])}"
            );
        }
    }

    private static OffsetLine? Line(
        OffsetsReading reading,
        ImmutableArray<NamedLine> named,
        string key
    ) => named.FirstOrDefault(n => n.Key == key) is { } line ? reading.Table.Find(line.Name) : null;
}
