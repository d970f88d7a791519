using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Nesting;

/// <summary>What is missing where a piece finds no board, and what would serve.</summary>
internal static class WhyUnplaced
{
    /// <summary>No board is of its thickness, wood and grade.</summary>
    public static string Stock(NestSpec spec, SawPiece piece, LengthUnit units)
    {
        string thickness =
            $"{LengthText.ForPaper(piece.ThicknessMm + spec.PlaneMm, units)} to {LengthText.ForPaper(piece.ThicknessMm + spec.PlaneMm + spec.ThickerMm, units)} thick";
        StockBoard[] thick =
        [
            .. spec.Boards.Where(b => StockMatch.Thickness(spec, b, piece.ThicknessMm)),
        ];
        if (thick.Length == 0)
        {
            return $"no board is {thickness}: add one to the stock";
        }

        StockBoard[] wood =
        [
            .. thick.Where(b => StockMatch.Piece(spec, b, piece with { LeastGrade = null })),
        ];
        return wood.Length == 0
            ? $"no board {thickness} is of {piece.Species}: add one to the stock"
            : $"no board {thickness}{(piece.Species is { } s ? " of " + s : "")} is of grade {piece.LeastGrade} or better: add one to the stock, or ask less of it";
    }
}
