using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>A rectangle left over of a board, worth keeping.</summary>
/// <param name="Id">B-04-1: the board's, and a number from the largest.</param>
/// <param name="FromMm">Along the board from its marked end, to <paramref name="ToMm"/>.</param>
/// <param name="LowMm">Across, from the marked edge, to <paramref name="HighMm"/>.</param>
/// <param name="LengthMm">Along the grain.</param>
/// <param name="WidthMm">Across the grain.</param>
public sealed record Offcut(
    string Id,
    StockBoard Stock,
    double FromMm,
    double ToMm,
    double LowMm,
    double HighMm,
    double LengthMm,
    double WidthMm
)
{
    public double AreaMm2 => LengthMm * WidthMm;
}

/// <summary>What of a sawn board is worth keeping, square cut: the largest rectangle clear of pieces, cuts, faults and unusable ends, and again beside it.</summary>
public static class Offcuts
{
    private const double Touching = 1e-9;

    public static ImmutableArray<Offcut> Of(NestPlan plan) =>
        [.. plan.Boards.SelectMany(b => Of(plan.Spec, BoardCuts.Of(b, plan.Spec)))];

    public static ImmutableArray<Offcut> Of(NestSpec spec, BoardCutList list)
    {
        SawnBoard board = list.Board;
        StockBoard stock = board.Stock;
        var whole = new Rectangle(
            stock.MarkedEndMm,
            stock.LengthMm - stock.OtherEndMm,
            0,
            stock.WidthMm
        );
        List<Rectangle> taken =
        [
            // A kerf parts what is kept from every piece, whichever way the piece's end leans.
            .. board.Pieces.Select(p => Rectangle.Around(p.Outline).Grown(spec.KerfMm)),
            .. Faults(stock),
            .. list.Cuts.Select(c => Sawn(list, c)),
        ];
        var kept = ImmutableArray.CreateBuilder<Offcut>();
        while (Largest(whole, taken, spec, stock.GrainAcross) is { } free)
        {
            (double along, double across) = stock.GrainAcross
                ? (free.Height, free.Length)
                : (free.Length, free.Height);
            kept.Add(
                new(
                    FormattableString.Invariant($"{board.Id.Replace('.', '-')}-{kept.Count + 1}"),
                    stock,
                    free.X0,
                    free.X1,
                    free.Y0,
                    free.Y1,
                    along,
                    across
                )
            );
            taken.Add(free.Grown(spec.KerfMm));
        }

        return kept.ToImmutable();
    }

    private static IEnumerable<Rectangle> Faults(StockBoard stock) =>
        stock.Faults.Select(f => new Rectangle(
            f.FromMm,
            f.ToMm,
            f.LowMm ?? 0,
            f.HighMm ?? stock.WidthMm
        ));

    /// <summary>The area of the largest rectangle worth keeping in a box of the board, clear of all that is to be cut out; nought where there is none. In the frame of the board.</summary>
    internal static double LargestMm2(
        NestSpec spec,
        BoardFrame frame,
        (double From, double To, double Low, double High) box
    ) =>
        Largest(
            new(box.From, box.To, box.Low, box.High),
            [
                .. frame
                    .CutOuts.Where(c => c.IsEnd)
                    .Select(c => new Rectangle(c.FromMm, c.ToMm, c.LowMm, c.HighMm)),
                .. Faults(frame.Stock)
                    .Select(f =>
                        Rectangle.Around([
                            frame.Of(new Vec2(f.X0, f.Y0)),
                            frame.Of(new Vec2(f.X1, f.Y1)),
                        ])
                    ),
            ],
            spec,
            grainAcross: false
        )?.Area
        ?? 0;

    /// <summary>The largest rectangle that is free and worth keeping; every side of it lies on a side of something taken or of the board.</summary>
    private static Rectangle? Largest(
        Rectangle whole,
        List<Rectangle> taken,
        NestSpec spec,
        bool grainAcross
    )
    {
        // Of the side across the X axis: a band that is lower than this holds nothing worth keeping.
        double least = grainAcross ? spec.LeastOffcutMm : spec.LeastOffcutWidthMm;
        Rectangle[] sorted = [.. taken.OrderBy(t => t.X0)];
        double[] ys = Sides(taken.SelectMany(t => new[] { t.Y0, t.Y1 }), whole.Y0, whole.Y1);
        Rectangle? best = null;
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
                foreach (Rectangle t in sorted.Append(new(whole.X1, whole.X1, ys[low], ys[high])))
                {
                    if (t.Y0 >= ys[high] - Touching || t.Y1 <= ys[low] + Touching)
                    {
                        continue;
                    }

                    var free = new Rectangle(from, Math.Min(t.X0, whole.X1), ys[low], ys[high]);
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

    /// <summary>
    /// What a cut goes through, in the board's own coordinates: lanes are ripped to where they end, and ends carried across their whole lane. Of a rip, its
    /// kerf; of a cut across, as far along the grain as its kerf goes when it leans; of one along a piece, a box a kerf wider all round. What is sawn in a lane
    /// comes neither into an end that was sawn off before nor beyond the lane, which lies by itself by then.
    /// </summary>
    private static Rectangle Sawn(BoardCutList list, SawCut cut)
    {
        BoardFrame frame = list.Frame;
        double kerf = Math.Abs(cut.KerfMm),
            along = kerf / Math.Cos(cut.DegreesFromSquare * Math.PI / 180);
        Rectangle box = cut.Kind switch
        {
            CutKind.Rip => Rectangle.Around([cut.From, cut.To + new Vec2(0, cut.KerfMm)]),
            CutKind.EndOff => Rectangle.Around([cut.From, cut.To + new Vec2(cut.KerfMm, 0)]),
            CutKind.Edge => Rectangle.Around(cut.Line).Grown(kerf),
            _ => Rectangle.Around(cut.Line).Grown(Math.Max(kerf, along)),
        };
        if (cut.Lane is { } lane)
        {
            box = box with
            {
                X0 = Math.Min(box.X0, list.LaneEndsMm[lane]),
                X1 = Math.Min(box.X1, list.LaneEndsMm[lane]),
                Y0 = Math.Max(box.Y0, list.Lanes[lane].LowMm),
                Y1 = Math.Min(box.Y1, list.Lanes[lane].HighMm),
            };
        }

        return Rectangle.Around([
            frame.OnBoard(new Vec2(box.X0, box.Y0)),
            frame.OnBoard(new Vec2(box.X1, box.Y1)),
        ]);
    }

    private static double[] Sides(IEnumerable<double> at, double least, double most) =>
        [.. at.Where(y => y > least && y < most).Append(least).Append(most).Distinct().Order()];

    private readonly record struct Rectangle(double X0, double X1, double Y0, double Y1)
    {
        public double Length => X1 - X0;

        public double Height => Y1 - Y0;

        public double Area => Math.Max(0, Length) * Math.Max(0, Height);

        public static Rectangle Around(ImmutableArray<Vec2> points) =>
            new(
                points.Min(p => p.X),
                points.Max(p => p.X),
                points.Min(p => p.Y),
                points.Max(p => p.Y)
            );

        public Rectangle Grown(double by) => new(X0 - by, X1 + by, Y0 - by, Y1 + by);
    }
}
