using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Adjusting;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Trust;

namespace PlankFit.Planking.Taping;

/// <summary>Adjusts the table, both sides together, to all that the tape said.</summary>
public static class HullAdjuster
{
    /// <summary>A cell that moves by more of what was known of it, or by more mm, is no frame a little out: it is named, and not planked to unasked. Our own bounds, no source.</summary>
    private const double WildSigmas = 3;
    private const double WildMm = 25;

    /// <summary>Smaller moves of a cell are not listed, mm.</summary>
    private const double LeastMoveMm = 0.005;

    /// <param name="job">The table as drawn, and what was read.</param>
    /// <param name="seams">Where edges of planks that were taped have their marks; readings of others are left out.</param>
    /// <returns>Null where nothing was read of the hull.</returns>
    public static TapedHull? Of(
        PlankingJob job,
        TrustSpec trust,
        IReadOnlyDictionary<TapedEdge, TapedSeamPlace> seams
    )
    {
        ImmutableArray<TapeReading> readings =
        [
            .. job.AsBuilt.Readings.Where(r =>
                !r.Place.IsOfAPlankOfferedUp
                && (r.Place.Edge is not { } edge || seams.ContainsKey(edge))
            ),
        ];
        if (readings.IsEmpty)
        {
            return null;
        }

        var cells = TableCells.Of(job);
        var before = Estimate.Around(TwoSides.Of(trust, cells));
        TapePlace[] places = [.. readings.Select(r => r.Place)];
        var expected = new Expectations(job, cells, [.. places], seams);
        Vector<double> read = Vector<double>.Build.DenseOfEnumerable(readings.Select(r => r.Mm)),
            own = Vector<double>.Build.DenseOfEnumerable(
                places.Select(p =>
                    double.Hypot(
                        TapeSigmas.Of(trust, p.Kind),
                        p.Edge is { } edge ? seams[edge].MarksSigmaMm : 0
                    )
                )
            );
        var observed = new Observations(
            read,
            Matrix<double>.Build.DenseOfDiagonalVector(own.PointwisePower(2)),
            expected.At,
            expected.Slopes
        );
        var judged = Judged.Of(
            before,
            observed,
            [.. places.Select(p => Array.FindIndex(places, q => q.Equals(p)))]
        );
        Estimate widened = before.Widened(judged.Scale);
        ImmutableArray<TapedCell> moved = Moved(job, cells, widened, judged);
        bool wild = moved.Any(c => c.IsWild && !job.AsBuilt.AsMeasured.Contains(c.Name));
        int n = cells.Count;
        return new(
            Rows(readings, observed, before, judged),
            moved,
            widened,
            judged.After,
            new(
                judged.Kept.Length,
                judged.MisfitBefore,
                judged.Kept.IsEmpty ? 0 : Judged.LimitOf(judged.Kept.Length),
                judged.Scale
            ),
            wild || judged.Kept.IsEmpty
                ? null
                : new(
                    cells.Moved(judged.After.Values.SubVector(0, n)),
                    cells.Moved(judged.After.Values.SubVector(n, n))
                )
        )
        {
            AllCounted = AllCounted(job, cells, widened, observed, judged),
        };
    }

    /// <summary>Where slips were put aside: the cell that would move most if they were counted for less instead. Readings go in proportion, about what was found.</summary>
    private static (string Cell, double ByMm)? AllCounted(
        PlankingJob job,
        TableCells cells,
        Estimate before,
        Observations observed,
        Judged judged
    )
    {
        if (judged.Slips.IsEmpty)
        {
            return null;
        }

        Vector<double> found = judged.After.Values,
            there = observed.Expected(found);
        Matrix<double> slopes = observed.Slopes(found);
        Vector<double> by =
            HuberFit
                .Of(
                    before,
                    observed with
                    {
                        Expected = p => there + (slopes * (p - found)),
                        Slopes = _ => slopes,
                    }
                )
                .Values - found;
        int most = by.AbsoluteMaximumIndex();
        return (Name(job, cells.Cells[most % cells.Count]), Math.Abs(by[most]));
    }

    private static ImmutableArray<TapedRow> Rows(
        ImmutableArray<TapeReading> readings,
        Observations observed,
        Estimate before,
        Judged judged
    )
    {
        Vector<double> drawn = observed.Expected(before.Values),
            after = observed.Expected(judged.After.Values);
        Matrix<double> h = observed.Slopes(before.Values),
            spread = Estimate.Carried(h, before.Covariance) + observed.Errors;
        return
        [
            .. readings.Select(
                (r, i) =>
                {
                    int at = judged.Kept.IndexOf(i);
                    return new TapedRow(
                        r,
                        drawn[i],
                        TrustSpec.Within * Math.Sqrt(spread[i, i]),
                        after[i],
                        at >= 0 ? judged.Rows[at] : judged.Slips.First(s => s.Reading == i).Row,
                        at >= 0
                    );
                }
            ),
        ];
    }

    private static ImmutableArray<TapedCell> Moved(
        PlankingJob job,
        TableCells cells,
        Estimate before,
        Judged judged
    )
    {
        Vector<double> sigmas = before.Sigmas,
            after = judged.After.Sigmas;
        return
        [
            .. Enumerable
                .Range(0, 2 * cells.Count)
                .Select(i =>
                {
                    TableCell cell = cells.Cells[i % cells.Count];
                    double by = judged.After.Values[i];
                    return new TapedCell(
                        i < cells.Count ? Side.Starboard : Side.Port,
                        Name(job, cell),
                        by,
                        sigmas[i],
                        after[i],
                        Math.Abs(by) > WildMm || Math.Abs(by) > WildSigmas * sigmas[i] + 1e-6
                    );
                })
                .Where(c => Math.Abs(c.ByMm) > LeastMoveMm),
        ];
    }

    internal static string Name(PlankingJob job, TableCell cell)
    {
        string station = job.Offsets.Stations[cell.Station].Name;
        return cell.Kind switch
        {
            CellKind.Position => $"position/{station}",
            CellKind.Height => $"{cell.Line}/height/{station}",
            _ => $"{cell.Line}/half-breadth/{station}",
        };
    }
}
