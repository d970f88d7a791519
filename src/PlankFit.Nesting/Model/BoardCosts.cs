using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Model;

/// <summary>
/// What boards count in one model of rack and yard. Where there are both, what is bought is made least, and wood on hand counts a small part of what the yard asks for
/// as much; where there is one of them only, its boards count what the objective says.
/// </summary>
/// <param name="HasBoth">There is a rack, and a yard beside it.</param>
/// <param name="TiePerMm2">What wood that the objective does not count costs all the same.</param>
internal sealed record BoardCosts(NestSpec Spec, bool HasBoth, bool OnlyYard, double TiePerMm2)
{
    /// <summary>Of what the objective counts of as much wood: so little that no more is bought for it, and enough for a solver to see.</summary>
    private const double Tie = 1e-3;

    public static BoardCosts Of(NestSpec spec, IReadOnlyCollection<StockBoard> boards)
    {
        bool rack = boards.Any(b => b.OnHand),
            yard = boards.Any(b => !b.OnHand);
        double rate = boards
            .Where(b => !(rack && yard) || !b.OnHand)
            .Select(b => spec.CostOf(b) / b.AreaMm2)
            .Where(r => r > 0)
            .DefaultIfEmpty(1)
            .Min();
        return new(spec, rack && yard, !rack, Tie * rate);
    }

    public double Asked(StockBoard board) => HasBoth && board.OnHand ? 0 : Spec.CostOf(board);

    public double Cost(StockBoard board) =>
        Asked(board) is > 0 and var asked ? asked : TiePerMm2 * board.AreaMm2;

    /// <summary>One board in a measure.</summary>
    public double In(NestMeasure measure, StockBoard board) =>
        measure == NestMeasure.Area ? board.AreaMm2 : Asked(board);

    /// <summary>What a plan is measured by: where nothing of what is asked for is spent, the wood that it takes.</summary>
    public NestMeasure Measure(double asked) =>
        asked > 0
            ? (HasBoth || OnlyYard, Spec.Objective) switch
            {
                (true, NestObjective.Area) => NestMeasure.BoughtArea,
                (true, _) => NestMeasure.BoughtCost,
                (false, NestObjective.Area) => NestMeasure.Area,
                (false, _) => NestMeasure.Cost,
            }
            : NestMeasure.Area;
}
