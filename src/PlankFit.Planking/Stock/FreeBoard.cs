using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>What of a board, or of a part of it, is free and worth keeping: the largest rectangle, and again beside it.</summary>
internal static class FreeBoard
{
    private const double Touching = 1e-9;

    /// <summary>The areas of all that is worth keeping in a box of the board, the largest first, clear of all that is to be cut out and of what is taken. In the frame of the board.</summary>
    public static double[] AreasMm2(
        NestSpec spec,
        BoardFrame frame,
        BoardBox box,
        IEnumerable<BoardBox> taken
    ) =>
        [
            .. Kept(
                    box,
                    [
                        .. frame
                            .CutOuts.Where(c => c.IsEnd)
                            .Select(c => new BoardBox(c.FromMm, c.ToMm, c.LowMm, c.HighMm)),
                        .. Faults(frame.Stock)
                            .Select(f =>
                                BoardBox.Around([
                                    frame.Of(new Vec2(f.X0, f.Y0)),
                                    frame.Of(new Vec2(f.X1, f.Y1)),
                                ])
                            ),
                        .. taken,
                    ],
                    spec,
                    grainAcross: false
                )
                .Select(k => k.Area),
        ];

    /// <summary>The largest free rectangle, the largest beside it, and so on.</summary>
    public static IEnumerable<BoardBox> Kept(
        BoardBox whole,
        List<BoardBox> taken,
        NestSpec spec,
        bool grainAcross
    )
    {
        while (Largest(whole, taken, spec, grainAcross) is { } free)
        {
            yield return free;
            taken.Add(free.Grown(spec.KerfMm));
        }
    }

    /// <summary>The largest rectangle that is free and worth keeping; every side of it lies on a side of something taken or of the board.</summary>
    private static BoardBox? Largest(
        BoardBox whole,
        List<BoardBox> taken,
        NestSpec spec,
        bool grainAcross
    )
    {
        // Of the side across the X axis: a band that is lower than this holds nothing worth keeping.
        double least = grainAcross ? spec.LeastOffcutMm : spec.LeastOffcutWidthMm;
        BoardBox[] sorted = [.. taken.OrderBy(t => t.X0)];
        double[] ys = Sides(taken.SelectMany(t => new[] { t.Y0, t.Y1 }), whole.Y0, whole.Y1);
        BoardBox? best = null;
        for (int low = 0; low < ys.Length; low++)
        {
            for (int high = low + 1; high < ys.Length; high++)
            {
                double height = ys[high] - ys[low];
                if (height < least || height * whole.Length <= (best?.Area ?? 0))
                {
                    continue;
                }

                // Between two heights the free stretches are what no obstacle in that band covers.
                double from = whole.X0;
                foreach (BoardBox t in sorted.Append(new(whole.X1, whole.X1, ys[low], ys[high])))
                {
                    if (t.Y0 >= ys[high] - Touching || t.Y1 <= ys[low] + Touching)
                    {
                        continue;
                    }

                    var free = new BoardBox(from, Math.Min(t.X0, whole.X1), ys[low], ys[high]);
                    (double along, double across) = grainAcross
                        ? (free.Height, free.Length)
                        : (free.Length, free.Height);
                    if (
                        along >= spec.LeastOffcutMm
                        && across >= spec.LeastOffcutWidthMm
                        && (best is null || free.Area > best.Value.Area + Touching)
                    )
                    {
                        best = free;
                    }

                    from = Math.Max(from, t.X1);
                }
            }
        }

        return best;
    }

    /// <summary>In the board's own coordinates.</summary>
    public static IEnumerable<BoardBox> Faults(StockBoard stock) =>
        stock.Faults.Select(f => new BoardBox(
            f.FromMm,
            f.ToMm,
            f.LowMm ?? 0,
            f.HighMm ?? stock.WidthMm
        ));

    private static double[] Sides(IEnumerable<double> at, double least, double most) =>
        [.. at.Where(y => y > least && y < most).Append(least).Append(most).Distinct().Order()];
}
