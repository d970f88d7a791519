using System.Collections.Immutable;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting;

/// <summary>What boards would make up for pieces that find none.</summary>
internal static class Shortfalls
{
    /// <summary>Lengths to ask a yard for are rounded up to this, mm.</summary>
    private const double AskedMm = 10;

    /// <summary>So many times a piece may be held to a board; with very many pieces only a few sizes are tried, those that promise most.</summary>
    private const long Looks = 20_000_000;
    private const int FewSizes = 3;

    public static ImmutableArray<Shortfall> Of(
        NestSpec spec,
        IEnumerable<UnplacedPiece> unplaced
    ) =>
        [
            .. unplaced
                .Select(u => u.Piece)
                .GroupBy(p => (p.ThicknessMm, Species: p.Species?.ToUpperInvariant(), p.LeastGrade))
                .Select(g => Of(spec, [.. g])),
        ];

    /// <summary>Boards as long and wide as those in the stock, where such would hold every piece; else as the longest and the widest piece ask for. The least area, then the fewest.</summary>
    private static Shortfall Of(NestSpec spec, ImmutableArray<SawPiece> pieces)
    {
        SawPiece any = pieces[0];
        double length =
                pieces.Max(p => p.Outline.Max(v => v.X) - p.Outline.Min(v => v.X))
                + (2 * spec.EndMm),
            width =
                pieces.Max(p => p.Outline.Max(v => v.Y) - p.Outline.Min(v => v.Y))
                + (2 * spec.EdgeMm),
            thickness = any.ThicknessMm + spec.PlaneMm;
        StockBoard Board(double lengthMm, double widthMm) =>
            new(
                "more",
                StockKind.Board,
                new(lengthMm, widthMm, thickness),
                new(any.Species, any.LeastGrade),
                new(Price: null, Count: null, OnHand: false),
                new(0, 0, []),
                new("", 0)
            );
        (double LengthMm, double WidthMm)[] known = spec
            .Boards.Where(b => b.Kind == StockKind.Board && StockMatch.Piece(spec, b, any))
            .Select(b => (b.LengthMm, b.WidthMm))
            .Where(b => b.LengthMm >= length && b.WidthMm + spec.ProudMm >= width)
            .Distinct()
            .ToArray();
        double mean = pieces.Average(p => p.Outline.Max(v => v.X) - p.Outline.Min(v => v.X));
        // Roughly, the area of such a board for each piece out of it.
        double Rough((double Length, double Width) size) =>
            size.Length
            * size.Width
            / (
                Math.Floor((size.Length + spec.KerfMm) / (Math.Min(mean, length) + spec.KerfMm))
                * Math.Floor((size.Width + spec.ProudMm + spec.KerfMm) / (width + spec.KerfMm))
            );
        (double Length, double Width)[] sizes =
            known.Length > 0
                ?
                [
                    .. known
                        .OrderBy(s => Rough((s.LengthMm, s.WidthMm)))
                        .Take(
                            (int)Math.Max(FewSizes, Looks / ((long)pieces.Length * pieces.Length))
                        ),
                ]
                : [(AskedMm * Math.Ceiling(length / AskedMm), width)];
        (double Length, double Width, int Count, double Area) best = sizes
            .Select(s =>
            {
                StockBoard board = Board(s.Length, s.Width);
                int count = SquareCuts
                    .FirstFit(
                        spec with
                        {
                            Boards = [board],
                            Objective = NestObjective.Area,
                        },
                        pieces,
                        [board],
                        b => b.AreaMm2
                    )
                    .Boards.Length;
                return (s.Length, s.Width, Count: count, Area: count * board.AreaMm2);
            })
            .OrderBy(s => s.Area)
            .ThenBy(s => s.Count)
            .First();
        return new(
            [.. pieces.Select(p => p.Id)],
            best.Count,
            best.Length,
            best.Width,
            thickness,
            any.Species,
            any.LeastGrade
        );
    }
}
