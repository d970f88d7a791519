using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Trust;

public enum CauseKind
{
    /// <summary>A frame stands to one side.</summary>
    Athwart,

    /// <summary>A frame stands high or low.</summary>
    Up,

    /// <summary>A station stands forward or aft of its place.</summary>
    Along,

    /// <summary>A frame is turned about the keel's edge.</summary>
    Heel,
}

/// <summary>One thing that moves several cells at once.</summary>
/// <param name="Station">The index of the station at which it is.</param>
/// <param name="Effect">By how much each cell moves, mm, for one mm of it; for a heel of one mm in a metre.</param>
/// <param name="Sigma">Its standard deviation, mm; of a heel mm in a metre.</param>
public sealed record SharedCause(CauseKind Kind, int Station, Vector<double> Effect, double Sigma)
{
    /// <summary>How frames may stand out of true, station by station. The keel's own edge is not moved, but along.</summary>
    public static ImmutableArray<SharedCause> Of(TrustSpec spec, TableCells cells)
    {
        FrameStanding s = spec.Standing;
        int[] stations = [.. cells.Cells.Select(c => c.Station).Distinct().Order()];
        return
        [
            .. stations
                .SelectMany(i =>
                    new SharedCause[]
                    {
                        new(
                            CauseKind.Athwart,
                            i,
                            OnFrame(cells, i, CellKind.HalfBreadth),
                            TrustSpec.Sigma(s.AthwartMm)
                        ),
                        new(
                            CauseKind.Up,
                            i,
                            OnFrame(cells, i, CellKind.Height),
                            TrustSpec.Sigma(s.UpMm)
                        ),
                        new(CauseKind.Along, i, AlongOf(cells, i), TrustSpec.Sigma(s.AlongMm)),
                        new(CauseKind.Heel, i, HeelOf(cells, i), TrustSpec.Sigma(s.HeelMmPerM)),
                    }
                )
                .Where(c => c.Sigma > 0 && c.Effect.L2Norm() > 0),
        ];
    }

    private static Vector<double> OnFrame(TableCells cells, int station, CellKind kind) =>
        Each(cells, station, c => c.Kind == kind && !c.OfKeel ? 1 : 0);

    private static Vector<double> AlongOf(TableCells cells, int station) =>
        Each(cells, station, c => c.Kind == CellKind.Position ? 1 : 0);

    /// <summary>Turned by a about the keel's edge: db = -a (h - h of the keel), dh = a (b - b of the keel).</summary>
    private static Vector<double> HeelOf(TableCells cells, int station)
    {
        const double OneInAMetre = 1e-3;
        OffsetLine keel = cells.Table.Named(cells.Keel);
        if (!keel.Has(station))
        {
            return Vector<double>.Build.Dense(cells.Count);
        }

        (double b, double h) = (
            keel.HalfBreadthsMm[station]!.Value,
            keel.HeightsMm[station]!.Value
        );
        return Each(
            cells,
            station,
            c =>
            {
                if (c.OfKeel || c.Kind == CellKind.Position)
                {
                    return 0;
                }

                OffsetLine line = cells.Table.Named(c.Line);
                return c.Kind == CellKind.HalfBreadth
                    ? -OneInAMetre * (line.HeightsMm[station]!.Value - h)
                    : OneInAMetre * (line.HalfBreadthsMm[station]!.Value - b);
            }
        );
    }

    private static Vector<double> Each(
        TableCells cells,
        int station,
        Func<TableCell, double> effect
    ) =>
        Vector<double>.Build.Dense(
            cells.Count,
            i => cells.Cells[i].Station == station ? effect(cells.Cells[i]) : 0
        );
}
