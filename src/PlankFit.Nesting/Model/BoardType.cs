using System.Collections.Immutable;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Model;

/// <summary>Equal boards of the stock, as the search for a plan sees them.</summary>
/// <param name="Rows">The rows of the stock that have them; none where it stands for boards that the search leaves alone, to bound what they could give.</param>
/// <param name="Sort">Boards of the same sort serve the same pieces.</param>
/// <param name="Count">How many there are; no more than there are pieces.</param>
/// <param name="Asked">What of it the objective counts: area in mm² or price; nought on hand where there is a yard.</param>
/// <param name="Cost">The same with a little for its area where that is nought, so that wood that costs nothing is not wasted.</param>
/// <param name="AreaMm2">All of it.</param>
internal sealed record BoardType(
    ImmutableArray<StockBoard> Rows,
    int Sort,
    int Count,
    double Asked,
    double Cost,
    double AreaMm2,
    StripRegion Region
)
{
    /// <summary>It is in no plan, and only in the bound.</summary>
    public bool OnlyBounds => Rows.IsEmpty;

    /// <summary>Of what is in the bound only: the boards that it is as long as, each with its own width and cost.</summary>
    public ImmutableArray<BoardType> Merged { get; init; } = [];

    /// <summary>The first of them, which all others are like.</summary>
    public StockBoard Stock => Rows[0];

    /// <summary>Which board of which row the nth of them is, both counted from 0.</summary>
    public (StockBoard Row, int Which) At(int n)
    {
        int row = 0;
        while (Rows[row].Count is { } count && n >= count)
        {
            n -= count;
            row++;
        }

        return (Rows[row], n);
    }
}
