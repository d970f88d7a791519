using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Hulls;

/// <summary>From a table of offsets to the surface of one of its panels, starboard.</summary>
public static class HullLoft
{
    /// <summary>Both edges nearer than this at the first station are one point, mm: half of what a table in sixteenths can tell apart.</summary>
    private const double ApexMm = 0.5;

    /// <summary>The stations at which both edges exist, in order; the panel runs over these.</summary>
    public static ImmutableArray<int> Stations(OffsetTable table, Panel panel)
    {
        OffsetLine lower = Line(table, panel.Lower),
            upper = Line(table, panel.Upper);
        (int k0, int k1) = lower.Run;
        (int c0, int c1) = upper.Run;
        int from = Math.Max(k0, c0),
            to = Math.Min(k1, c1);
        return [.. Enumerable.Range(from, Math.Max(0, to - from + 1))];
    }

    /// <summary>Lofts the lower edge (v = 0), the lines between and the upper edge; every given point is on the surface.</summary>
    /// <exception cref="JobFaultException">Where there is nothing to loft.</exception>
    public static HullSurface Build(OffsetTable table, Panel panel)
    {
        ImmutableArray<int> stations = Stations(table, panel);
        if (stations.Length < 4)
        {
            throw new JobFaultException(
                "offsets",
                $"the {panel.Name} has {NumberText.Count(stations.Length, "station")} at which both '{panel.Lower}' and '{panel.Upper}' have values; four or more are needed"
            );
        }

        FilledLine[] lines = [.. panel.Lines.Select(n => FilledLine.From(table, Line(table, n)))];
        var sections = stations
            .Select(i => (IReadOnlyList<Vec3>)[.. lines.Where(l => l.Has(i)).Select(l => l.At(i))])
            .ToList();
        IReadOnlyList<Vec3> last = sections[^1];
        if (last[0].ChordTo(last[^1]) < ApexMm)
        {
            throw new JobFaultException(
                "offsets",
                $"{panel.WordOf(PanelEdge.Lower)} and {panel.WordOf(PanelEdge.Upper)} meet in a point at the after station {table.Stations[stations[^1]].Name}; a {panel.Name} may come to a point forward only: end the table at the transom"
            );
        }

        for (int k = 0; k < sections.Count; k++)
        {
            int i = stations[k];
            SectionChecks.Require(
                table.Stations[i].Name,
                panel,
                [.. panel.Lines.Where((_, l) => lines[l].Has(i))],
                sections[k],
                apexMm: k == 0 ? ApexMm : 0
            );
        }

        LoftedSurface surface = Loft.Through(
            sections,
            Outer(panel, sections),
            ApexMm,
            panel.Beside is { } beside ? Parameter(table, beside, stations, sections) : null
        );
        IEnumerable<StationOnHull> on = stations.Select(
            (i, k) =>
                new StationOnHull(
                    table.Stations[i].Name,
                    table.Stations[i].PositionMm,
                    surface.StationU[k]
                )
        );
        return new(surface, [.. on]);
    }

    /// <summary>The u of the panel beside at the stations that it has, and this panel's own chords beyond them.</summary>
    private static double[] Parameter(
        OffsetTable table,
        Panel beside,
        ImmutableArray<int> stations,
        List<IReadOnlyList<Vec3>> sections
    )
    {
        ImmutableArray<int> theirs = Stations(table, beside);
        double[] own = Loft.CommonParameter(sections);
        int[] shared = [.. stations.Where(theirs.Contains)];
        if (shared.Length < 2)
        {
            return own;
        }

        var lower = FilledLine.From(table, Line(table, beside.Lower));
        var upper = FilledLine.From(table, Line(table, beside.Upper));
        double[] given = Loft.CommonParameter([
            .. theirs.Select(i => (IReadOnlyList<Vec3>)[lower.At(i), upper.At(i)]),
        ]);
        double Given(int station) => given[theirs.IndexOf(station)];
        double Own(int station) => own[stations.IndexOf(station)];
        return
        [
            .. stations.Select(i =>
                i < shared[0] ? Given(shared[0]) - Own(shared[0]) + Own(i)
                : i > shared[^1] ? Given(shared[^1]) - Own(shared[^1]) + Own(i)
                : Given(i)
            ),
        ];
    }

    /// <summary>A direction out of the hull: down for a bottom, else to the right of its widest section as one looks forward along it from the lower edge to the upper.</summary>
    private static Vec3 Outer(Panel panel, List<IReadOnlyList<Vec3>> sections)
    {
        if (panel.HasKeel)
        {
            return -1 * Vec3.UnitZ;
        }

        Vec3 rise = sections.Select(s => s[^1] - s[0]).MaxBy(r => r.Norm);
        return new(0, rise.Z, -rise.Y);
    }

    private static OffsetLine Line(OffsetTable table, string name) =>
        table.Find(name) ?? throw new JobFaultException("offsets", OffsetTable.NoLine(name));
}
