using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Stock;

/// <summary>Which piece comes out of which board, and how near to the best that is.</summary>
/// <param name="Materials">One for each kind of stock that serves its own pieces only, planned by itself.</param>
/// <param name="Boards">All boards that are cut into, in the order of the stock's files.</param>
public sealed record NestPlan(
    NestSpec Spec,
    ImmutableArray<NestedMaterial> Materials,
    ImmutableArray<SawnBoard> Boards,
    ImmutableArray<UnplacedPiece> Unplaced,
    ImmutableArray<Finding> Findings
)
{
    /// <summary>What boards would make up for the pieces without a place.</summary>
    public ImmutableArray<Shortfall> Short { get; init; } = [];

    /// <summary>What was asked, beside <c>Spec</c>: another plan of the same would be this one, or one as good.</summary>
    public NestAsked Asked { get; init; } = new([], LengthUnit.Millimetre);

    /// <summary>What value and bound speak of: what is bought, where anything is.</summary>
    public NestMeasure Measure =>
        Materials.Select(m => m.Measure).DefaultIfEmpty(NestMeasure.Area).Max();

    /// <summary>In mm² or money, as <see cref="Measure"/> says. Materials measured by less than that add nothing to it.</summary>
    public double Value => Materials.Where(m => m.Measure == Measure).Sum(m => m.Value);

    /// <summary>No plan in rows has a lesser value; nought where nothing is proved of that.</summary>
    public double LowerBound => Materials.Where(m => m.Measure == Measure).Sum(m => m.LowerBound);

    /// <summary>How far the plan may be above the least possible, at the most; infinite where nothing is proved of that.</summary>
    public double GapPercent => Gap.Percent(Value, LowerBound);
}

/// <summary>What a plan of cutting is made for.</summary>
/// <param name="Pieces">In the order in which they were asked for.</param>
/// <param name="Units">In which sizes are told.</param>
public sealed record NestAsked(ImmutableArray<SawPiece> Pieces, LengthUnit Units);

/// <summary>The share of stock and pieces that have to do with each other only.</summary>
/// <param name="Name">9 mm douglas-fir, for people.</param>
/// <param name="LowerBound">Nought while pieces have no place: a plan of some of them is no measure for a plan of all.</param>
/// <param name="SquareCutsFirstFit">The least value found that square crosscuts use in the same boards: longest piece first, each in the first board that still has room, over each order of boards; null where they place fewer pieces.</param>
/// <param name="SquareCutsBoards">How many boards that takes.</param>
/// <param name="Rounds">Of improvement.</param>
public sealed record NestedMaterial(
    string Name,
    ImmutableArray<PieceId> PieceIds,
    double Value,
    double LowerBound,
    double? SquareCutsFirstFit,
    int? SquareCutsBoards,
    int Rounds
)
{
    /// <summary>What value, bound and the square crosscuts' value speak of.</summary>
    public NestMeasure Measure { get; init; }

    /// <summary>The search was ended while it still found better plans or bounds: more time is worth trying.</summary>
    public bool MoreMayHelp { get; init; }

    /// <summary>How far the plan may be above the least possible, at the most; infinite where nothing is proved of that.</summary>
    public double GapPercent => Gap.Percent(Value, LowerBound);
}

/// <summary>What a value and a bound are measured by, the last first: where something is bought, what stands in the rack is not counted.</summary>
public enum NestMeasure
{
    /// <summary>Of the boards cut into, mm²: there is a rack only, or nothing need be bought, and the bound is on plans that buy nothing.</summary>
    Area,

    /// <summary>The price of the boards cut into, all of them on hand.</summary>
    Cost,

    /// <summary>Of the boards to be bought, mm².</summary>
    BoughtArea,

    /// <summary>The price of the boards to be bought.</summary>
    BoughtCost,
}

public static class NestMeasures
{
    /// <summary>Only what is bought counts.</summary>
    public static bool IsBought(this NestMeasure measure) =>
        measure is NestMeasure.BoughtArea or NestMeasure.BoughtCost;
}

/// <summary>How far a value may be above the least possible.</summary>
public static class Gap
{
    /// <summary>Of the bound, since that is what the least possible is measured by; infinite where there is no bound.</summary>
    public static double Percent(double value, double lowerBound) =>
        lowerBound > 0 ? 100 * Math.Max(0, value - lowerBound) / lowerBound
        : value > 0 ? double.PositiveInfinity
        : 0;
}

/// <summary>One board and what lies in it.</summary>
/// <param name="Id">B-04, or B-04.2 for the second of a row of several.</param>
/// <param name="Lanes">The board is ripped into these first, where there are more than one or one narrower than the board; from the marked edge.</param>
/// <param name="Pieces">Lane by lane, each from the marked end.</param>
public sealed record SawnBoard(
    string Id,
    StockBoard Stock,
    ImmutableArray<SawnLane> Lanes,
    ImmutableArray<LaidPiece> Pieces
);

/// <summary>A strip of a board, along its grain.</summary>
/// <param name="LowMm">Across the grain from the marked edge, to <paramref name="HighMm"/>. In a sheet whose grain runs across, measured from its marked end.</param>
/// <param name="PieceIds">In order along it.</param>
public sealed record SawnLane(double LowMm, double HighMm, ImmutableArray<PieceId> PieceIds);

/// <summary>A piece that no board can give.</summary>
/// <param name="Why">What is missing and what would serve.</param>
public sealed record UnplacedPiece(SawPiece Piece, string Why);
