using PlankFit.Planking;

namespace PlankFit.Nesting;

/// <summary>What is missing where a piece finds no board, and what would serve.</summary>
internal static class Wants
{
    /// <summary>No board is of its thickness, wood and grade.</summary>
    public static string Stock(NestSpec spec, SawPiece piece, LengthUnit units)
    {
        string thickness =
            $"{LengthText.ForPaper(piece.ThicknessMm + spec.PlaneMm, units)} to {LengthText.ForPaper(piece.ThicknessMm + spec.PlaneMm + spec.ThickerMm, units)} thick";
        StockBoard[] thick =
        [
            .. spec.Boards.Where(b => Serves.Thickness(spec, b, piece.ThicknessMm)),
        ];
        if (thick.Length == 0)
        {
            return $"no board is {thickness}: add one to the stock";
        }

        StockBoard[] wood =
        [
            .. thick.Where(b => Serves.Piece(spec, b, piece with { LeastGrade = null })),
        ];
        return wood.Length == 0
            ? $"no board {thickness} is of {piece.Species}: add one to the stock"
            : $"no board {thickness}{(piece.Species is { } s ? " of " + s : "")} is of grade {piece.LeastGrade} or better: add one to the stock, or ask less of it";
    }

    /// <summary>There are boards of its sort, but none that is long and wide enough, or none left.</summary>
    public static string Room(NestSpec spec, StockShare share, SawPiece piece, LengthUnit units)
    {
        double length = Extent(piece, p => p.X),
            width = Extent(piece, p => p.Y);
        string size =
            $"{LengthText.ForPaper(Math.Ceiling(length), units)} long and {LengthText.ForPaper(width, units)} wide";
        StockBoard[] boards = [.. share.Serving(spec, piece).SelectMany(s => share.Sorts[s])];
        bool IsWide(StockBoard b) => StripRegion.Of(b, spec).WidthMm + spec.ProudMm >= width - 1e-6;
        double Longest(StockBoard b)
        {
            StripRegion r = StripRegion.Of(b, spec);
            return r.Clear(r.LeastV, r.LeastV + width, spec.KerfMm)
                .Concat(r.Clear(r.MostV - width, r.MostV, spec.KerfMm))
                .Select(s => s.LengthMm)
                .DefaultIfEmpty(0)
                .Max();
        }

        StockBoard[] wide = [.. boards.Where(IsWide)];
        if (wide.Length == 0)
        {
            double widest = boards.Max(b => StripRegion.Of(b, spec).WidthMm);
            return $"no board of its sort is wide enough (the widest has {LengthText.ForPaper(widest, units)}): one clear for {size} would serve";
        }

        double longest = wide.Max(Longest);
        return longest < length
            ? $"no board of its sort is clear for its length (the longest has {LengthText.ForPaper(Math.Floor(longest), units)}): one clear for {size} would serve, or a joint"
            : $"all boards that could give it are full: one more, clear for {size}, would serve";
    }

    private static double Extent(SawPiece piece, Func<Geometry.Vec2, double> along) =>
        piece.Outline.Max(along) - piece.Outline.Min(along);
}
