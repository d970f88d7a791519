using PlankFit.Planking.Stock;

namespace PlankFit.Export.Stock;

/// <summary>How long, wide and thick a board is.</summary>
internal readonly record struct BoardSize(double LengthMm, double WidthMm, double ThicknessMm);

/// <summary>Boards of one size, wood, grade and price that are to be got.</summary>
/// <param name="Named">Their rows in the yard's list; null where no list has them, and they are for pieces that find no board.</param>
/// <param name="One">The price of one; null where the list has none.</param>
internal sealed record Bought(
    int Count,
    StockKind Kind,
    BoardSize Size,
    string? Species,
    string? Grade,
    string? Named,
    decimal? One
)
{
    public decimal? Price => One * Count;

    /// <summary>What is missing first, then what is bought in the order of the yard's list.</summary>
    public static IEnumerable<Bought> All(NestPlan nest) =>
        nest
            .Short.Select(s => new Bought(
                s.Boards,
                StockKind.Board,
                new(s.LengthMm, s.WidthMm, s.ThicknessMm),
                s.Species,
                s.LeastGrade,
                null,
                null
            ))
            .Concat(
                nest.Boards.Select(b => b.Stock)
                    .Where(b => !b.OnHand)
                    .GroupBy(b =>
                        (b.Kind, b.LengthMm, b.WidthMm, b.ThicknessMm, b.Species, b.Grade, b.Price)
                    )
                    .Select(g => new Bought(
                        g.Count(),
                        g.Key.Kind,
                        new(g.Key.LengthMm, g.Key.WidthMm, g.Key.ThicknessMm),
                        g.Key.Species,
                        g.Key.Grade,
                        string.Join(" ", g.Select(b => b.Id).Distinct()),
                        g.Key.Price
                    ))
            );
}
