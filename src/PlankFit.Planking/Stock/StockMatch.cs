namespace PlankFit.Planking.Stock;

/// <summary>Which boards a piece may be sawn out of, its shape apart.</summary>
public static class StockMatch
{
    /// <summary>Thickness is read off a rule: so much less than wanted still counts as it, mm.</summary>
    private const double ReadMm = 0.05;

    /// <summary>Thick enough to be planed and not thicker than wanted by more than the job allows; of the wood, where both say which; of a grade no worse than asked.</summary>
    public static bool Piece(NestSpec spec, StockBoard board, SawPiece piece) =>
        Thickness(spec, board, piece.ThicknessMm)
        && (
            board.Species is null
            || piece.Species is null
            || string.Equals(board.Species, piece.Species, StringComparison.OrdinalIgnoreCase)
        )
        && (piece.LeastGrade is not { } least || Rank(spec, board.Grade) <= Rank(spec, least));

    public static bool Thickness(NestSpec spec, StockBoard board, double finishedMm)
    {
        double rough = finishedMm + spec.PlaneMm;
        return board.ThicknessMm >= rough - ReadMm
            && board.ThicknessMm <= rough + spec.ThickerMm + ReadMm;
    }

    /// <summary>0 for the best; a board that names no grade, or none of the list, is worse than all of it.</summary>
    public static int Rank(NestSpec spec, string? grade)
    {
        int at = grade is null
            ? -1
            : spec
                .Grades.ToList()
                .FindIndex(g => string.Equals(g, grade, StringComparison.OrdinalIgnoreCase));
        return at < 0 ? spec.Grades.Length : at;
    }
}
