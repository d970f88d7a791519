using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;

namespace PlankFit.Planking.Girths;

/// <summary>The bottom of one side as corrected, and what was done to it, station by station.</summary>
/// <param name="Moves">Every cell of the table that was changed, station by station.</param>
internal sealed record CorrectedHull(
    HullSurface Hull,
    ImmutableArray<GirthRow> Rows,
    ImmutableArray<FairingMove> Moves
);

/// <summary>
/// Bends the table smoothly to the girths that were measured. The keel is held; chine and lines between move along their own section, in proportion to their
/// distance from the keel. Between measured stations the change overshoots nowhere, and beyond the outermost it is held (<see cref="MonotoneJoin"/>), but for
/// a point where keel and chine meet, which stays.
/// </summary>
internal static class GirthCorrection
{
    /// <summary>The girth is brought to what was measured within this, mm.</summary>
    private const double WithinMm = 0.002;

    private const int MostRounds = 8;

    /// <summary>Smaller moves of a cell are the rounds' own noise and are not listed, mm.</summary>
    private const double LeastMoveMm = 0.005;

    public static CorrectedHull Of(PlankingJob job, ImmutableArray<MeasuredGirth> girths)
    {
        HullSurface table = HullLoft.Build(job.Offsets, job.Hull.Panel);
        if (girths.IsEmpty)
        {
            return new(table, [], []);
        }

        double[] drawn = Girths(job, table);
        double[] wanted = Wanted(table, drawn, girths);
        double[] scale = [.. drawn.Select(_ => 1.0)];
        HullSurface hull = table;
        OffsetTable offsets = job.Offsets;
        double[] now = drawn;
        for (int round = 0; round < MostRounds && Worst(now, wanted) > WithinMm; round++)
        {
            for (int i = 0; i < scale.Length; i++)
            {
                scale[i] *= now[i] > 1 ? wanted[i] / now[i] : 1;
            }

            offsets = Scaled(job, table, scale);
            hull = HullLoft.Build(offsets, job.Hull.Panel);
            now = Girths(job, hull);
        }

        return new(hull, Rows(table, drawn, now, girths), Moves(job.Offsets, offsets));
    }

    /// <summary>The table moved to another that is known already, and what that makes of the girths.</summary>
    public static CorrectedHull To(
        PlankingJob job,
        OffsetTable offsets,
        ImmutableArray<MeasuredGirth> girths
    )
    {
        HullSurface table = HullLoft.Build(job.Offsets, job.Hull.Panel),
            hull = HullLoft.Build(offsets, job.Hull.Panel);
        return new(
            hull,
            Rows(table, Girths(job, table), Girths(job, hull), girths),
            Moves(job.Offsets, offsets)
        );
    }

    private static ImmutableArray<GirthRow> Rows(
        HullSurface table,
        double[] drawn,
        double[] now,
        ImmutableArray<MeasuredGirth> girths
    ) =>
        [
            .. table.Stations.Select(
                (s, i) =>
                    new GirthRow(
                        s.Name,
                        s.PositionMm,
                        drawn[i],
                        now[i],
                        girths.FirstOrDefault(g => g.Station == s.Name)?.Mm
                    )
            ),
        ];

    private static ImmutableArray<FairingMove> Moves(OffsetTable old, OffsetTable now)
    {
        ImmutableArray<FairingMove>.Builder moves = ImmutableArray.CreateBuilder<FairingMove>();
        for (int i = 0; i < old.Stations.Length; i++)
        {
            foreach ((OffsetLine was, OffsetLine line) in old.Lines.Zip(now.Lines))
            {
                Add(Measure.Height, was.HeightsMm[i], line.HeightsMm[i]);
                Add(Measure.HalfBreadth, was.HalfBreadthsMm[i], line.HalfBreadthsMm[i]);
                void Add(Measure measure, double? from, double? to)
                {
                    if (from is { } a && to is { } b && Math.Abs(b - a) > LeastMoveMm)
                    {
                        moves.Add(new(was.Name, measure, old.Stations[i].Name, i, a, b));
                    }
                }
            }
        }

        return moves.ToImmutable();
    }

    private static double Worst(double[] now, double[] wanted) =>
        now.Zip(wanted).Max(p => p.First > 1 ? Math.Abs(p.First - p.Second) : 0);

    private static double[] Girths(PlankingJob job, HullSurface hull) =>
        [.. hull.Stations.Select(s => SectionGirth.OnInnerFace(job, hull, s))];

    private static double[] Wanted(
        HullSurface table,
        double[] drawn,
        ImmutableArray<MeasuredGirth> girths
    )
    {
        var known = girths
            .Select(g => (Index: IndexOf(table, g.Station), g.Mm))
            .Where(g => g.Index >= 0)
            // Where keel and chine meet in a point there is nothing to move.
            .Concat(
                drawn
                    .Select((g, i) => (Index: i, Mm: g))
                    .Where(g => g.Mm <= 1 && girths.All(m => IndexOf(table, m.Station) != g.Index))
            )
            .OrderBy(g => g.Index)
            .ToList();
        if (known.Count == 0)
        {
            return drawn;
        }

        double[] x = [.. known.Select(k => table.Stations[k.Index].PositionMm)],
            off = [.. known.Select(k => k.Mm - drawn[k.Index])];
        var join = MonotoneJoin.Through(x, off);
        return [.. drawn.Select((g, i) => g + join.At(table.Stations[i].PositionMm))];
    }

    private static int IndexOf(HullSurface table, string station)
    {
        for (int i = 0; i < table.Stations.Length; i++)
        {
            if (table.Stations[i].Name == station)
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>Every line from the one after the keel to the chine, moved from the keel's point by the station's factor. Cells that the table leaves empty stay empty.</summary>
    private static OffsetTable Scaled(PlankingJob job, HullSurface table, double[] scale)
    {
        OffsetLine keel = job.Offsets.Find(job.Hull.Panel.Lower)!;
        string[] moved = [.. job.Hull.Panel.Between, job.Hull.Panel.Upper];
        var at = new Dictionary<int, double>();
        for (int i = 0; i < job.Offsets.Stations.Length; i++)
        {
            int on = IndexOf(table, job.Offsets.Stations[i].Name);
            if (on >= 0)
            {
                at[i] = scale[on];
            }
        }

        double?[] Moved(ImmutableArray<double?> cells, ImmutableArray<double?> from) =>
            [
                .. cells.Select(
                    (c, i) =>
                        c is { } v && from[i] is { } k && at.TryGetValue(i, out double f)
                            ? k + (f * (v - k))
                            : c
                ),
            ];
        return job.Offsets with
        {
            Lines =
            [
                .. job.Offsets.Lines.Select(l =>
                    moved.Contains(l.Name)
                        ? l with
                        {
                            HeightsMm = [.. Moved(l.HeightsMm, keel.HeightsMm)],
                            HalfBreadthsMm = [.. Moved(l.HalfBreadthsMm, keel.HalfBreadthsMm)],
                        }
                        : l
                ),
            ],
        };
    }
}
