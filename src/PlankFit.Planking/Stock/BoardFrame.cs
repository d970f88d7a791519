using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>
/// A board as it lies before the saw, its grain from left to right: X along the grain, Y across it, mm. For a board that is from its marked end and from its
/// marked edge. A sheet whose grain runs across is turned a quarter: along from the edge that is not marked, across from the marked end.
/// </summary>
public readonly record struct BoardFrame(StockBoard Stock)
{
    public double LengthMm => EndsMm ?? (Stock.GrainAcross ? Stock.WidthMm : Stock.LengthMm);

    /// <summary>Where the empty end of a lane has been sawn off; null while it is as long as its stock.</summary>
    internal double? EndsMm { get; init; }

    /// <summary>Where a lane begins, its empty near end sawn off; nought while it begins with its stock.</summary>
    internal double BeginsMm { get; init; }

    public double WidthMm => Stock.GrainAcross ? Stock.LengthMm : Stock.WidthMm;

    /// <summary>From the board's own coordinates to the frame's.</summary>
    public Vec2 Of(Vec2 onBoard) =>
        Stock.GrainAcross ? new(Stock.WidthMm - onBoard.Y, onBoard.X) : onBoard;

    /// <summary>The way back.</summary>
    public Vec2 OnBoard(Vec2 inFrame) =>
        Stock.GrainAcross ? new(inFrame.Y, Stock.WidthMm - inFrame.X) : inFrame;

    /// <summary>A direction, to the frame's.</summary>
    public Vec2 Turned(Vec2 direction) =>
        Stock.GrainAcross ? new(-direction.Y, direction.X) : direction;

    public ImmutableArray<Vec2> Of(LaidPiece laid)
    {
        BoardFrame self = this;
        return [.. laid.Outline.Select(p => self.Of(p))];
    }

    /// <summary>What is to be cut out or cut off: faults, and what is unusable at both ends of the board.</summary>
    public ImmutableArray<CutOut> CutOuts
    {
        get
        {
            StockBoard stock = Stock;
            BoardFrame self = this;
            ImmutableArray<CutOut>.Builder found = ImmutableArray.CreateBuilder<CutOut>();
            void Add(double x0, double x1, double y0, double y1, bool isEnd)
            {
                if (x1 > x0 && y1 > y0)
                {
                    Vec2 a = self.Of(new Vec2(x0, y0)),
                        b = self.Of(new Vec2(x1, y1));
                    found.Add(
                        new(
                            Math.Min(a.X, b.X),
                            Math.Max(a.X, b.X),
                            Math.Min(a.Y, b.Y),
                            Math.Max(a.Y, b.Y),
                            isEnd
                        )
                    );
                }
            }

            Add(0, Math.Min(stock.MarkedEndMm, stock.LengthMm), 0, stock.WidthMm, true);
            foreach (BoardFault fault in stock.Faults)
            {
                Add(
                    Math.Max(0, fault.FromMm),
                    Math.Min(stock.LengthMm, fault.ToMm),
                    Math.Max(0, fault.LowMm ?? 0),
                    Math.Min(stock.WidthMm, fault.HighMm ?? stock.WidthMm),
                    false
                );
            }

            Add(
                Math.Max(0, stock.LengthMm - stock.OtherEndMm),
                stock.LengthMm,
                0,
                stock.WidthMm,
                true
            );
            return found.ToImmutable();
        }
    }
}

/// <summary>A box of a board that no piece may lie in, in the frame of <see cref="BoardFrame"/>, mm.</summary>
/// <param name="IsEnd">Unusable length at an end, and no knot or split.</param>
public sealed record CutOut(double FromMm, double ToMm, double LowMm, double HighMm, bool IsEnd);
