using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Seams;

/// <summary>The width of the stock, and what may be asked of it.</summary>
internal static class StockRoom
{
    /// <summary>What planks are kept narrower than their stock, mm: as written, to a ten-thousandth, they are not wider than it either.</summary>
    public const double SpareMm = 2e-4;

    /// <summary>How much wider than the stock, less half of what is spared, a flat shape is between its outermost points square to the plank's own line; nought where it is not.</summary>
    public static double LacksMm(ImmutableArray<Vec2> flat, double stockMm) =>
        Math.Max(0, flat.Max(p => p.Y) - flat.Min(p => p.Y) - (stockMm - (SpareMm / 2)));

    /// <summary>The band of stock that holds a net shape from low to high: about the plank's own line where it does, else moved by what it takes.</summary>
    public static (double Bottom, double Top) Band(double low, double high, double stockMm)
    {
        double wide = stockMm - (SpareMm / 2),
            bottom = Math.Min(Math.Max(-wide / 2, high - wide), low);
        return (bottom, Math.Max(bottom + wide, high));
    }
}
