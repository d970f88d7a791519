using PlankFit.Planking.Stock;

namespace PlankFit.Export.Stock;

/// <summary>A piece where it lies.</summary>
/// <param name="From">Its nearest corner from the beginning of the grain; <paramref name="To"/> its furthest.</param>
/// <param name="Left">Of the board beyond it, to the end or what is unusable there.</param>
internal sealed record PieceInBoard(
    SawnBoard Board,
    int Lane,
    LaidPiece Piece,
    double From,
    double To,
    double Left
)
{
    public static IEnumerable<PieceInBoard> All(NestPlan nest) =>
        nest.Boards.SelectMany(b =>
            BoardCuts
                .Of(b, nest.Spec)
                .Places.Select(p => new PieceInBoard(
                    b,
                    p.Lane,
                    b.Pieces.First(l => l.Piece.Id == p.PieceId),
                    p.FromMm,
                    p.ToMm,
                    p.LeftMm
                ))
        );

    public static double Filled(SawnBoard board) =>
        board.Pieces.Sum(p => p.Piece.AreaMm2) / board.Stock.AreaMm2;
}
