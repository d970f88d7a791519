using System.Collections.Immutable;

namespace PlankFit.Planking.Stock;

/// <summary>What a plan of cutting uses of the stock, in mm² and money.</summary>
/// <param name="PiecesMm2">What lies in pieces.</param>
/// <param name="OffcutsMm2">What is left over and kept.</param>
/// <param name="BoardsMm2">All boards that are cut into.</param>
/// <param name="BoughtMm2">Of these, what is bought.</param>
/// <param name="Cost">Of what is bought; null where something bought has no price.</param>
public sealed record StockUse(
    double PiecesMm2,
    double OffcutsMm2,
    double BoardsMm2,
    double BoughtMm2,
    decimal? Cost
)
{
    /// <summary>Dust, corners and faults.</summary>
    public double WastedMm2 => BoardsMm2 - PiecesMm2 - OffcutsMm2;

    public static StockUse Of(NestPlan plan)
    {
        ImmutableArray<Offcut> offcuts = Offcuts.Of(plan);
        SawnBoard[] bought = [.. plan.Boards.Where(b => !b.Stock.OnHand)];
        return new(
            plan.Boards.Sum(b => b.Pieces.Sum(p => p.Piece.AreaMm2)),
            offcuts.Sum(o => o.AreaMm2),
            plan.Boards.Sum(b => b.Stock.AreaMm2),
            bought.Sum(b => b.Stock.AreaMm2),
            bought.Any(b => b.Stock.Price is null) ? null : bought.Sum(b => b.Stock.Price!.Value)
        );
    }
}
