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
    public static ImmutableArray<Offcut> Of(NestPlan plan) =>
        [.. plan.Boards.SelectMany(b => Of(plan.Spec, BoardCuts.Of(b, plan.Spec)))];

    public static ImmutableArray<Offcut> Of(NestSpec spec, BoardCutList list)
    {
        SawnBoard board = list.Board;
        StockBoard stock = board.Stock;
        var whole = new BoardBox(
            stock.MarkedEndMm,
            stock.LengthMm - stock.OtherEndMm,
            0,
            stock.WidthMm
        );
        List<BoardBox> taken =
        [
            // A kerf parts what is kept from every piece, whichever way the piece's end leans.
            .. board.Pieces.Select(p => BoardBox.Around(p.Outline).Grown(spec.KerfMm)),
            .. FreeBoard.Faults(stock),
            .. list.Cuts.Select(c => OnBoard(list.Frame, KerfBox.Of(list, c))),
        ];
        ImmutableArray<Offcut>.Builder kept = ImmutableArray.CreateBuilder<Offcut>();
        foreach (BoardBox free in FreeBoard.Kept(whole, taken, spec, stock.GrainAcross))
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
        }

        return kept.ToImmutable();
    }

    private static BoardBox OnBoard(BoardFrame frame, BoardBox box) =>
        BoardBox.Around([
            frame.OnBoard(new Vec2(box.X0, box.Y0)),
            frame.OnBoard(new Vec2(box.X1, box.Y1)),
        ]);
}
