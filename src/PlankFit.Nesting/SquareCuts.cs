using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Nesting.Effort;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting;

/// <summary>
/// What a careful person without a plan would saw: the longest piece first, each as the rectangle round it, by square crosscuts, out of the first board that still has
/// room. A board is ripped into lanes as wide as the first piece in each. The plan of cutting is held against the best of that.
/// </summary>
public static class SquareCuts
{
    /// <summary>Of so many rows of the yard's list each is tried as the first to buy, from the least of a sort of order on.</summary>
    private const int YardRows = 40;

    /// <summary>So many times a piece is held to a row of the stock in a moment, some tenths of a second.</summary>
    private const long MomentLooks = 5_000_000;

    /// <summary>
    /// The best of first fit over the orders in which boards may be taken: the rack's by their file, length, size, value and value of their area, either way round;
    /// the yard's by price of a board and of its area, and each row of its list before all others.
    /// </summary>
    /// <param name="valueOf">What a board counts for: of two orders that place as many pieces the one of less value is the better.</param>
    /// <param name="patience">Once it is over, further orders are begun only while that is a moment's work; what is then left untried is told.</param>
    public static SquareCutting Of(
        NestSpec spec,
        ImmutableArray<SawPiece> pieces,
        Func<StockBoard, double> valueOf,
        Patience patience
    )
    {
        long looks = 0;
        StockBoard[] rack = [.. spec.Boards.Where(b => b.OnHand)],
            yard = [.. spec.Boards.Where(b => !b.OnHand)];
        StockBoard[][] racks = [.. Orders(spec, rack)],
            yards =

            [
                .. Orders(spec, yard),
                .. yard.Take(YardRows)
                    .Select(first =>
                        yard.OrderBy(b => b == first ? 0 : 1).ThenBy(spec.CostOf).ToArray()
                    ),
            ];
        SquareCutting? best = null;
        // Where rack and yard both have their say, the order of one is settled with the other's in the order of its file.
        foreach (
            StockBoard[] order in racks
                .Select(r => (StockBoard[])[.. r, .. yards[0]])
                .Concat(yards.Skip(1).Select(y => (StockBoard[])[.. racks[0], .. y]))
        )
        {
            // The first is the measure that there is at any rate.
            if (best is not null && looks > MomentLooks && patience.IsOver)
            {
                return best with { IsWhole = false };
            }

            looks += (long)order.Length * pieces.Length;
            SquareCutting cutting = FirstFit(spec, pieces, order, valueOf);
            if (best is null || IsBetter(cutting, best))
            {
                best = cutting;
            }
        }

        return best!;
    }

    private static bool IsBetter(SquareCutting one, SquareCutting other) =>
        one.LeftOut.Length < other.LeftOut.Length
        || (one.LeftOut.Length == other.LeftOut.Length && one.Value < other.Value);

    private static IEnumerable<StockBoard[]> Orders(NestSpec spec, StockBoard[] boards)
    {
        yield return boards;
        foreach (
            Func<StockBoard, double> by in new Func<StockBoard, double>[]
            {
                b => b.LengthMm,
                b => b.AreaMm2,
                spec.CostOf,
                b => spec.CostOf(b) / b.AreaMm2,
            }
        )
        {
            yield return [.. boards.OrderBy(by)];
            yield return [.. boards.OrderByDescending(by)];
        }
    }

    /// <summary>Each piece in the first board with room, in an order of boards.</summary>
    internal static SquareCutting FirstFit(
        NestSpec spec,
        ImmutableArray<SawPiece> pieces,
        IReadOnlyList<StockBoard> order,
        Func<StockBoard, double> valueOf
    )
    {
        SquareBoards[] rows = [.. order.Select(b => new SquareBoards(spec, b))],
            rack = [.. rows.Where(r => r.Stock.OnHand)],
            yard = [.. rows.Where(r => !r.Stock.OnHand)];
        ImmutableArray<SawPiece>.Builder left = ImmutableArray.CreateBuilder<SawPiece>();
        foreach (
            (SawPiece piece, (Vec2 corner, double length, double width)) in pieces
                .Select(p => (Piece: p, Box: Box(p)))
                .OrderByDescending(p => p.Box.Length)
                .ThenBy(p => p.Piece.Id.ToString().Length)
                .ThenBy(p => p.Piece.Id.ToString(), StringComparer.Ordinal)
        )
        {
            bool Takes(SquareBoards row) =>
                row.MayTake(length, width)
                && StockMatch.Piece(spec, row.Stock, piece)
                && row.Take(piece, corner, length, width);
            // A yard's board that is begun is nearer than one to be bought.
            if (
                !rack.Any(Takes)
                && !yard.Any(r =>
                    StockMatch.Piece(spec, r.Stock, piece)
                    && r.TakeBegun(piece, corner, length, width)
                )
                && !yard.Any(Takes)
            )
            {
                left.Add(piece);
            }
        }

        var place = new Dictionary<StockBoard, int>(ReferenceEqualityComparer.Instance);
        foreach (StockBoard stock in spec.Boards)
        {
            place.TryAdd(stock, place.Count);
        }

        ImmutableArray<SawnBoard> sawn =
        [
            .. rows.OrderBy(r => place[r.Stock]).SelectMany(r => r.Sawn()),
        ];
        return new(sawn, sawn.Sum(b => valueOf(b.Stock)), left.ToImmutable());
    }

    private static (Vec2 Corner, double Length, double Width) Box(SawPiece piece)
    {
        double x = piece.Outline.Min(p => p.X),
            y = piece.Outline.Min(p => p.Y);
        return (new(x, y), piece.Outline.Max(p => p.X) - x, piece.Outline.Max(p => p.Y) - y);
    }
}

/// <summary>Boards sawn by square crosscuts.</summary>
/// <param name="Value">Of the boards cut into, as they were counted.</param>
/// <param name="LeftOut">Pieces that no board had room for.</param>
public sealed record SquareCutting(
    ImmutableArray<SawnBoard> Boards,
    double Value,
    ImmutableArray<SawPiece> LeftOut
)
{
    /// <summary>Every order of boards was tried.</summary>
    public bool IsWhole { get; init; } = true;
}
