using System.Globalization;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Structure;

namespace PlankFit.Export.Structure;

/// <summary>Boards as rows of the bill: what is bought, and what stands in the rack.</summary>
internal static class BoardRows
{
    public static IEnumerable<BillRow> Of(NestPlan nest)
    {
        SawnBoard[] bought = [.. nest.Boards.Where(b => !b.Stock.OnHand)],
            onHand = [.. nest.Boards.Where(b => b.Stock.OnHand)];
        string wanting = nest.Unplaced.IsEmpty
            ? ""
            : FormattableString.Invariant(
                $"; {nest.Unplaced.Length} {(nest.Unplaced.Length == 1 ? "piece has" : "pieces have")} no board yet and {(nest.Unplaced.Length == 1 ? "is" : "are")} not among it"
            );
        if (bought.Length > 0)
        {
            decimal? cost = Cost(bought);
            yield return new(
                "timber",
                "boards to buy",
                "all planks",
                bought.Length,
                "boards",
                $"the plan of cutting, sawing waste with it{(cost is null ? "; not all of them have a price" : "")}{wanting}"
            )
            {
                Cost = (double?)cost,
            };
        }

        if (onHand.Length > 0)
        {
            string worth = Cost(onHand) is { } cost
                ? $", by their prices {cost.ToString("0.00", CultureInfo.InvariantCulture)}"
                : "";
            yield return new(
                "timber",
                "boards of the rack",
                "all planks",
                onHand.Length,
                "boards",
                $"the plan of cutting; on hand{worth}, and not paid{(bought.Length == 0 ? wanting : "")}"
            );
        }
    }

    /// <summary>Null where one has no price.</summary>
    private static decimal? Cost(SawnBoard[] boards) =>
        boards.Any(b => b.Stock.Price is null) ? null : boards.Sum(b => b.Stock.Price!.Value);
}
