using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting;

/// <summary>From rows in strips to pieces in boards.</summary>
internal static class BoardLayout
{
    public static ImmutableArray<SawnBoard> Of(
        NestProblem problem,
        CuttingPlan cutting,
        PieceDealing dealing
    )
    {
        int[] used = new int[problem.Boards.Length];
        return
        [
            .. cutting
                .Boards.OrderBy(b => b.Board)
                .ThenBy(b => b.Rows.Length > 0 ? b.Rows[0].Row.Key : "", StringComparer.Ordinal)
                .Select(b => Board(problem, b, used[b.Board]++, dealing)),
        ];
    }

    private static SawnBoard Board(
        NestProblem problem,
        CuttingPlanBoard cut,
        int which,
        PieceDealing dealing
    )
    {
        (StockBoard stock, int nth) = problem.Boards[cut.Board].At(which);
        ImmutableArray<SawnLane>.Builder lanes = ImmutableArray.CreateBuilder<SawnLane>();
        ImmutableArray<LaidPiece>.Builder pieces = ImmutableArray.CreateBuilder<LaidPiece>();
        StripRegion region = problem.Boards[cut.Board].Region;
        double next = region.LeastV;
        for (int l = 0; l < cut.Ripping.Lanes.Length; l++)
        {
            RippedLane lane = cut.Ripping.Lanes[l];
            // Lanes as narrow as what lies in them, a kerf apart: one rip parts two. A lane that would come upon a fault there stays where it is clear.
            LaneRow[] rows = [.. cut.Rows.Where(r => r.Lane == l)];
            double low = IsClear(region, lane, rows, next, problem.KerfMm) ? next : lane.LowV;
            var laid = new List<(double From, LaidPiece Piece)>();
            double high = low;
            foreach (LaneRow row in rows)
            {
                double from = lane.Stretches[row.Stretch].FromU;
                high = Math.Max(high, low + row.Row.HeightMm);
                for (int i = 0; i < row.Row.Items.Length; i++)
                {
                    NestItem item = problem.Items[row.Row.Items[i]];
                    ItemPose pose = item.Poses[row.Row.Poses[i]];
                    ImmutableArray<SawPiece> copy = [.. item.Parts.Select(dealing.Next)];
                    for (int p = 0; p < copy.Length; p++)
                    {
                        var at = new Vec2(from + row.Row.FromMm[i], low);
                        LaidPiece piece = pose.Laid[p].Of(copy[p], at);
                        piece = copy.Length > 1 ? piece : problem.Ends.Sawn(row.Row, i, piece);
                        laid.Add((piece.Outline.Min(v => v.X), InBoard(stock, piece)));
                    }
                }
            }

            if (laid.Count > 0)
            {
                // Along the lane, whichever way round a block of several lies.
                LaidPiece[] inOrder = [.. laid.OrderBy(p => p.From).Select(p => p.Piece)];
                pieces.AddRange(inOrder);
                next = high + problem.KerfMm;
                lanes.Add(new(low, high, [.. inOrder.Select(p => p.Piece.Id)]));
            }
        }

        return new(stock.NameOf(nth), stock, lanes.ToImmutable(), pieces.ToImmutable());
    }

    /// <summary>Whether a lane's rows, where they are along the board, are clear of faults with the lane beginning at another place across it.</summary>
    private static bool IsClear(
        StripRegion region,
        RippedLane lane,
        LaneRow[] rows,
        double low,
        double kerfMm
    )
    {
        const double Touching = 1e-9;
        ImmutableArray<ClearStretch> clear = region.Clear(
            low,
            low + rows.Max(r => (double?)r.Row.HeightMm).GetValueOrDefault(),
            kerfMm
        );
        return rows.All(r =>
        {
            double from = lane.Stretches[r.Stretch].FromU;
            return clear.Any(c =>
                c.FromU <= from + Touching && c.ToU >= from + r.Row.LengthMm - Touching
            );
        });
    }

    /// <summary>From the strips' frame: in a sheet whose grain runs across, a quarter turn clockwise.</summary>
    public static LaidPiece InBoard(StockBoard stock, LaidPiece laid) =>
        !stock.GrainAcross
            ? laid
            : laid with
            {
                TiltDegrees = laid.TiltDegrees - 90,
                Shift = new(laid.Shift.Y, stock.WidthMm - laid.Shift.X),
            };
}
