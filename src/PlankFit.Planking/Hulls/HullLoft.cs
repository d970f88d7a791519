using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Hulls;

/// <summary>From a table of offsets to the starboard bottom's surface.</summary>
public static class HullLoft
{
    /// <summary>Keel and chine nearer than this at the first station are one point, mm: half of what a table in sixteenths can tell apart.</summary>
    private const double ApexMm = 0.5;

    /// <summary>The stations at which both keel and chine exist, in order; the bottom runs over these.</summary>
    public static ImmutableArray<int> BottomStations(OffsetTable table, HullSpec spec)
    {
        OffsetLine keel = Line(table, spec.Keel),
            chine = Line(table, spec.Chine);
        (int k0, int k1) = Extent(keel);
        (int c0, int c1) = Extent(chine);
        int from = Math.Max(k0, c0),
            to = Math.Min(k1, c1);
        return [.. Enumerable.Range(from, Math.Max(0, to - from + 1))];
    }

    /// <summary>Lofts keel, the lines between and chine; every given point is on the surface.</summary>
    /// <exception cref="JobFaultException">Where there is nothing to loft.</exception>
    public static HullSurface Build(OffsetTable table, HullSpec spec)
    {
        ImmutableArray<int> stations = BottomStations(table, spec);
        if (stations.Length < 4)
        {
            throw new JobFaultException(
                "offsets",
                $"the bottom has {stations.Length} station(s) at which both '{spec.Keel}' and '{spec.Chine}' have values; four or more are needed"
            );
        }

        string[] names = [spec.Keel, .. spec.Between, spec.Chine];
        FilledLine[] lines = [.. names.Select(n => FilledLine.From(table, Line(table, n)))];
        var sections = stations
            .Select(i => (IReadOnlyList<Vec3>)[.. lines.Where(l => l.Has(i)).Select(l => l.At(i))])
            .ToList();
        IReadOnlyList<Vec3> last = sections[^1];
        if (last[0].ChordTo(last[^1]) < ApexMm)
        {
            throw new JobFaultException(
                "offsets",
                $"keel and chine meet in a point at the after station {table.Stations[stations[^1]].Name}; a bottom may come to a point forward only: end the table at the transom"
            );
        }

        CheckCrossed(table, spec, stations, sections);
        LoftedSurface surface = Loft.Through(sections, -1 * Vec3.UnitZ, ApexMm);
        var on = stations.Select(
            (i, k) =>
                new StationOnHull(
                    table.Stations[i].Name,
                    table.Stations[i].PositionMm,
                    surface.StationU[k]
                )
        );
        return new(surface, [.. on]);
    }

    /// <summary>The chine must not lie inboard of the keel: a bottom folded back on itself has no outside.</summary>
    private static void CheckCrossed(
        OffsetTable table,
        HullSpec spec,
        ImmutableArray<int> stations,
        List<IReadOnlyList<Vec3>> sections
    )
    {
        for (int i = 0; i < sections.Count; i++)
        {
            Vec3 keel = sections[i][0],
                chine = sections[i][^1];
            bool apex = i == 0 && keel.ChordTo(chine) < ApexMm;
            if (!apex && !(chine.Y >= keel.Y))
            {
                throw new JobFaultException(
                    $"offsets, station {table.Stations[stations[i]].Name}",
                    $"'{spec.Chine}' at half-breadth {chine.Y:0.#} mm is inboard of '{spec.Keel}' at {keel.Y:0.#} mm: the lines cross there; correct the table, or name the right lines in [hull]"
                );
            }
        }
    }

    private static OffsetLine Line(OffsetTable table, string name) =>
        table.Find(name)
        ?? throw new JobFaultException("offsets", $"the table has no line '{name}'");

    private static (int First, int Last) Extent(OffsetLine line)
    {
        int first = -1,
            last = -2;
        for (int i = 0; i < line.HeightsMm.Length; i++)
        {
            if (line.HeightsMm[i] is not null && line.HalfBreadthsMm[i] is not null)
            {
                first = first < 0 ? i : first;
                last = i;
            }
        }

        return (first, last);
    }
}
