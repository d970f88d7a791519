using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Offsets;

/// <summary>Panels lie side by side: two of them share a line at most, or planks would be sawn twice for one place.</summary>
internal static class PanelOverlaps
{
    /// <summary>A section is held against another at so many points (our own, no source).</summary>
    private const int Points = 20;

    /// <summary>
    /// A point lies on another panel where it is off that one's section by less than this part of its distance from the section's nearer end: sections that part
    /// from a line which they share do so by 14 degrees or more (its arc tangent), and what is drawn straight here bends by less (our own, no source).
    /// </summary>
    private const double Off = 0.25;

    /// <param name="draft">Whose panels each have edges that do not cross.</param>
    public static IEnumerable<Finding> Of(OffsetsReading reading, JobDraft draft)
    {
        (Panel Panel, Place? At)[] all =
        [
            // A bottom that is not planked is no panel that another could lie over.
            .. draft.Hull is { } hull && !draft.Layers.IsEmpty
                ? new (Panel, Place?)[] { (hull.Panel, null) }
                : [],
            .. draft.Panels.Select(p => (p.Panel, (Place?)p.At)),
        ];
        for (int b = 1; b < all.Length; b++)
        {
            for (int a = 0; a < b; a++)
            {
                string[] stations =
                [
                    .. reading
                        .Table.Stations.Where(
                            (_, i) => Overlap(reading.Table, all[a].Panel, all[b].Panel, i)
                        )
                        .Select(s => s.Name),
                ];
                if (stations.Length > 0)
                {
                    yield return new(
                        Severity.Error,
                        all[b].At.ToString()!,
                        $"[[panel]] {all[b].Panel.Name}, from {Edges(all[b].Panel)}, lies over the {all[a].Panel.Name}, from {Edges(all[a].Panel)}, at {(stations.Length == 1 ? "station" : "stations")} {string.Join(", ", stations)}: panels lie side by side; let one end at the line at which the other begins"
                    );
                }
            }
        }
    }

    private static string Edges(Panel panel) =>
        $"{Quoted.Of(panel.Lower)} to {Quoted.Of(panel.Upper)}";

    private static bool Overlap(OffsetTable table, Panel a, Panel b, int station)
    {
        ImmutableArray<SectionPoint> one = SectionPoint.Section(table, a, station),
            other = SectionPoint.Section(table, b, station);
        return one.Length > 1 && other.Length > 1 && (LiesOn(one, other) || LiesOn(other, one));
    }

    private static bool LiesOn(
        ImmutableArray<SectionPoint> section,
        ImmutableArray<SectionPoint> other
    ) =>
        section
            .Zip(section.Skip(1))
            .Any(leg =>
                Enumerable
                    .Range(1, Points - 1)
                    .Select(k => leg.First.Towards(leg.Second, (double)k / Points))
                    .Any(p =>
                    {
                        SectionPoint q = p.Nearest(other);
                        return p.To(q) < Off * Math.Min(q.To(other[0]), q.To(other[^1]));
                    })
            );
}
