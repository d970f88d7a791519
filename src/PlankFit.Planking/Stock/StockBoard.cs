using System.Collections.Immutable;

namespace PlankFit.Planking.Stock;

/// <summary>
/// A board or a sheet, or a count of equal ones, as stock.csv has it. Lengths in mm. Along the board x runs from its marked end, across it y from its marked
/// edge, seen with the marked face up.
/// </summary>
/// <param name="Id">B-04; a row of several boards gives B-04.1, B-04.2 and so on to each.</param>
/// <param name="LengthMm">Along the grain for a board; for a sheet, along its marked edge.</param>
/// <param name="Species">Null where the row does not say: it serves any wood.</param>
/// <param name="Price">Of one board, in the builder's own money; null where the row does not say.</param>
/// <param name="Count">How many there are; null for as many as are wanted, which only a yard's list may say.</param>
/// <param name="OnHand">In the rack already, and not to be bought.</param>
/// <param name="MarkedEndMm">Unusable length at the marked end; <paramref name="OtherEndMm"/> at the other.</param>
/// <param name="File">Where it was read, with <paramref name="Line"/>, for messages.</param>
public sealed record StockBoard(
    string Id,
    StockKind Kind,
    double LengthMm,
    double WidthMm,
    double ThicknessMm,
    string? Species,
    string? Grade,
    decimal? Price,
    int? Count,
    bool OnHand,
    double MarkedEndMm,
    double OtherEndMm,
    ImmutableArray<BoardFault> Faults,
    string File,
    int Line
)
{
    /// <summary>A sheet's face grain runs along its marked edge, or across it. A board's always runs along.</summary>
    public bool GrainAcross { get; init; }

    public double AreaMm2 => LengthMm * WidthMm;
}

public enum StockKind
{
    Board,

    /// <summary>Plywood and the like: wide, and planks lie abreast in it.</summary>
    Sheet,
}

/// <summary>A knot, a split or any other place to be cut out.</summary>
/// <param name="FromMm">Along the board from its marked end, to <paramref name="ToMm"/>.</param>
/// <param name="LowMm">Across, from the marked edge, to <paramref name="HighMm"/>; both null where it takes the whole width.</param>
public sealed record BoardFault(double FromMm, double ToMm, double? LowMm, double? HighMm);
