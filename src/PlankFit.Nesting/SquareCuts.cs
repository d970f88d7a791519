using System.Collections.Immutable;
using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Nesting;

/// <summary>
/// What a careful person without a plan would saw: the longest piece first, each as the rectangle round it, by square crosscuts, out of the first board that still has
/// room. A board is ripped into lanes as wide as the first piece in each. The plan of cutting is held against this.
/// </summary>
public static class SquareCuts
{
    /// <summary>
    /// The rack's boards in the order of their files, then the yard's: by price of a board or by price of its area, whichever comes out better, so that the
    /// comparison is a fair one.
    /// </summary>
    public static SquareCutting Of(NestSpec spec, ImmutableArray<SawPiece> pieces)
    {
        SquareCutting byBoard = FirstFit(spec, pieces, spec.CostOf),
            byArea = FirstFit(spec, pieces, b => spec.CostOf(b) / b.AreaMm2);
        return
            byArea.LeftOut.Length < byBoard.LeftOut.Length
            || (byArea.LeftOut.Length == byBoard.LeftOut.Length && byArea.Value < byBoard.Value)
            ? byArea
            : byBoard;
    }

    private static SquareCutting FirstFit(
        NestSpec spec,
        ImmutableArray<SawPiece> pieces,
        Func<StockBoard, double> dear
    )
    {
        ImmutableArray<StockBoard> order =
        [
            .. spec.Boards.Where(b => b.OnHand),
            .. spec.Boards.Where(b => !b.OnHand).OrderBy(dear).ThenBy(b => b.AreaMm2),
        ];
        var rows = order.Select(b => new SquareBoards(spec, b)).ToList();
        var left = ImmutableArray.CreateBuilder<SawPiece>();
        foreach (
            SawPiece piece in pieces
                .OrderByDescending(p => Box(p).Length)
                .ThenBy(p => p.Id.Length)
                .ThenBy(p => p.Id, StringComparer.Ordinal)
        )
        {
            var (corner, length, width) = Box(piece);
            bool Takes(SquareBoards row) =>
                Serves.Piece(spec, row.Stock, piece) && row.Take(piece, corner, length, width);
            // A yard's board that is begun is nearer than one to be bought.
            if (
                !rows.Where(r => r.Stock.OnHand).Any(Takes)
                && !rows.Where(r => !r.Stock.OnHand)
                    .Any(r =>
                        Serves.Piece(spec, r.Stock, piece)
                        && r.TakeBegun(piece, corner, length, width)
                    )
                && !rows.Where(r => !r.Stock.OnHand).Any(Takes)
            )
            {
                left.Add(piece);
            }
        }

        ImmutableArray<SawnBoard> sawn =
        [
            .. rows.OrderBy(r => spec.Boards.IndexOf(r.Stock)).SelectMany(r => r.Sawn()),
        ];
        return new(sawn, sawn.Sum(b => spec.CostOf(b.Stock)), left.ToImmutable());
    }

    private static (Vec2 Corner, double Length, double Width) Box(SawPiece piece)
    {
        double x = piece.Outline.Min(p => p.X),
            y = piece.Outline.Min(p => p.Y);
        return (new(x, y), piece.Outline.Max(p => p.X) - x, piece.Outline.Max(p => p.Y) - y);
    }
}

/// <summary>Boards sawn by square crosscuts.</summary>
/// <param name="Value">Area in mm² or price, as the objective says.</param>
/// <param name="LeftOut">Pieces that no board had room for.</param>
public sealed record SquareCutting(
    ImmutableArray<SawnBoard> Boards,
    double Value,
    ImmutableArray<SawPiece> LeftOut
);
