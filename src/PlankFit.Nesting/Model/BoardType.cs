using PlankFit.Planking;

namespace PlankFit.Nesting;

/// <summary>One row of the stock, as the search for a plan sees it.</summary>
/// <param name="Sort">Boards of the same sort serve the same pieces.</param>
/// <param name="Count">How many there are; as many as there are pieces where the yard has any number.</param>
/// <param name="Cost">What cutting into one of them costs: area in mm² or price.</param>
internal sealed record BoardType(
    StockBoard Stock,
    int Sort,
    int Count,
    double Cost,
    StripRegion Region
);
