using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Seams;

namespace PlankFit.Planking.Laying;

/// <summary>What crept, since when, and by how much a plank.</summary>
internal static class SeamCreeps
{
    /// <summary>What a tape held twice tells apart, mm: a sixteenth of an inch. Common practice, no source.</summary>
    public const double TapeMm = 1.6;

    /// <summary>The station from which seams are measured; <see cref="PlankingChecks"/> has looked for it.</summary>
    public static StationOnHull From(PlankingJob job, HullSurface hull) =>
        job.AsBuilt.From is { } name ? hull.Stations.Single(s => s.Name == name) : hull.Stations[0];

    public static ImmutableArray<SeamCreep> Of(
        PlankingJob job,
        HullSurface drawnHull,
        IReadOnlyList<LaidLayer> asDrawn
    )
    {
        StationOnHull from = From(job, drawnHull);
        ImmutableArray<SeamCreep>.Builder drifts = ImmutableArray.CreateBuilder<SeamCreep>();
        foreach (LaidLayer layer in asDrawn)
        {
            foreach (Side side in new[] { Side.Starboard, Side.Port })
            {
                if (job.AsBuilt.Seams.All(m => m.Side != side || m.PlankId.Layer != layer.Number))
                {
                    continue;
                }

                // Where planks are sawn they were drawn where they were sawn, whatever the job says since.
                SeamRow row = SawnSeams.Row(
                    layer.Faces.Middle,
                    layer.Spec,
                    layer.Row,
                    LayerPlanner.CutOf(job, layer.Number, side),
                    layer.Tracing
                );
                foreach (PanelEdge edge in new[] { PanelEdge.Lower, PanelEdge.Upper })
                {
                    foreach (bool aft in new[] { false, true })
                    {
                        if (OneWay(job, layer, row, side, edge, aft, from) is { } drift)
                        {
                            drifts.Add(drift);
                        }
                    }
                }
            }
        }

        return drifts.ToImmutable();
    }

    private static SeamCreep? OneWay(
        PlankingJob job,
        LaidLayer layer,
        SeamRow row,
        Side side,
        PanelEdge edge,
        bool aft,
        StationOnHull from
    )
    {
        var rows = new List<(int Away, DriftRow Row)>();
        foreach (
            MeasuredSeam m in job.AsBuilt.Seams.Where(m =>
                m.At == edge && m.Side == side && m.PlankId.Layer == layer.Number
            )
        )
        {
            // The master's after seam is the first going aft, its forward seam the first going forward.
            int index = m.PlankId.Number - row.FirstNumber,
                away = aft ? index - row.Master : row.Master - 1 - index;
            if (
                away < 0
                || index < 0
                || index >= row.Seams.Length
                || TapeReadings.AlongEdge(layer.Faces, from, row.Seams[index], edge)
                    is not { } planned
            )
            {
                continue;
            }

            rows.Add((away, new(m.PlankId, planned, m.Mm)));
        }

        if (rows.Count == 0)
        {
            return null;
        }

        rows.Sort((a, b) => a.Away.CompareTo(b.Away));
        return new(
            layer.Number,
            side,
            edge,
            aft,
            [.. rows.Select(r => r.Row)],
            Slope(rows),
            Since(rows)?.PlankId
        );
    }

    /// <summary>mm of creep a plank, by least squares through the rows; a single row over the planks laid up to it.</summary>
    private static double Slope(List<(int Away, DriftRow Row)> rows)
    {
        if (rows.Count == 1)
        {
            return rows[0].Row.OffMm / (rows[0].Away + 1);
        }

        double n = rows.Count,
            sx = rows.Sum(r => (double)r.Away),
            sy = rows.Sum(r => r.Row.OffMm),
            sxx = rows.Sum(r => (double)r.Away * r.Away),
            sxy = rows.Sum(r => r.Away * r.Row.OffMm);
        return ((n * sxy) - (sx * sy)) / ((n * sxx) - (sx * sx));
    }

    /// <summary>The first plank from which on every seam is off by more than a tape can tell, all to one side.</summary>
    private static DriftRow? Since(List<(int Away, DriftRow Row)> rows)
    {
        DriftRow? since = null;
        for (int i = rows.Count - 1; i >= 0; i--)
        {
            double off = rows[i].Row.OffMm;
            if (Math.Abs(off) <= TapeMm || Math.Sign(off) != Math.Sign(rows[^1].Row.OffMm))
            {
                break;
            }

            since = rows[i].Row;
        }

        return since;
    }
}
