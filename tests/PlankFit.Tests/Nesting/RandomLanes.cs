using System.Collections.Immutable;
using CsCheck;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>Boards by chance that are ripped into lanes, sheets among them, with bad ends and faults; in each lane pieces with square or leaning ends lie one after another wherever no fault is.</summary>
internal static class RandomLanes
{
    public static Gen<(NestSpec Spec, SawnBoard Board)> Gen =>
        CsCheck
            .Gen.Select(Stock, Lane.Array[2, 6], CsCheck.Gen.Bool, Kerf)
            .Select(
                (stock, lanes, clean, kerf) =>
                {
                    // Half of all boards have one fault across them all.
                    StockBoard board = clean
                        ? stock with
                        {
                            Faults =
                            [
                                .. stock
                                    .Faults.Take(1)
                                    .Select(f => f with { LowMm = null, HighMm = null }),
                            ],
                        }
                        : stock;
                    NestSpec spec = SawPieces.Spec(board) with { KerfMm = kerf };
                    return (spec, Laid(board, lanes, kerf));
                }
            )
            .Where(lanes => !lanes.Item2.Pieces.IsEmpty);

    /// <summary>A sixteenth, an eighth and a quarter of an inch, metric saws, and one that takes nothing.</summary>
    private static Gen<double> Kerf =>
        CsCheck.Gen.OneOf(
            CsCheck.Gen.Const(25.4 / 16),
            CsCheck.Gen.Const(3.0),
            CsCheck.Gen.Const(25.4 / 8),
            CsCheck.Gen.Const(0.0),
            CsCheck.Gen.Double[0.5, 6.35]
        );

    private static Gen<StockBoard> Stock =>
        CsCheck
            .Gen.Select(
                CsCheck.Gen.Double[1500, 4200],
                CsCheck.Gen.Select(CsCheck.Gen.Double[0, 60], CsCheck.Gen.Double[0, 60]),
                Fault.Array[0, 3],
                CsCheck.Gen.Bool
            )
            .Select(
                (length, ends, faults, sheet) =>
                    SawPieces.Board("B-01", length, 0) with
                    {
                        Kind = sheet ? StockKind.Sheet : StockKind.Board,
                        MarkedEndMm = ends.Item1,
                        OtherEndMm = ends.Item2,
                        Faults =
                        [
                            .. faults.Select(f => new BoardFault(
                                f.At * length,
                                Math.Min(length, (f.At * length) + f.Long),
                                f.Low,
                                f.Low + f.Wide
                            )),
                        ],
                    }
            );

    private static Gen<(double At, double Long, double? Low, double Wide)> Fault =>
        CsCheck.Gen.Select(
            CsCheck.Gen.Double[0, 1],
            CsCheck.Gen.OneOf(CsCheck.Gen.Const(0.0), CsCheck.Gen.Double[0, 150]),
            CsCheck.Gen.OneOf(
                CsCheck.Gen.Const((double?)null),
                CsCheck.Gen.Double[0, 500].Select(d => (double?)d)
            ),
            CsCheck.Gen.Double[1, 200]
        );

    /// <summary>How wide, how much more than a kerf from the one before, and pieces: how long, and how far each end leans.</summary>
    private static Gen<(
        double Wide,
        double Off,
        (double Long, double Begin, double End)[] Pieces
    )> Lane =>
        CsCheck.Gen.Select(
            CsCheck.Gen.Double[40, 160],
            CsCheck.Gen.OneOf(
                CsCheck.Gen.Const(0.0),
                CsCheck.Gen.Const(0.0),
                CsCheck.Gen.Double[0, 120]
            ),
            CsCheck
                .Gen.Select(
                    CsCheck.Gen.OneOf(
                        CsCheck.Gen.Const(600.0),
                        CsCheck.Gen.Const(900.0),
                        CsCheck.Gen.Double[350, 1800]
                    ),
                    Lean,
                    Lean
                )
                .Array[1, 3]
        );

    private static Gen<double> Lean =>
        CsCheck.Gen.OneOf(
            CsCheck.Gen.Const(0.0),
            CsCheck.Gen.Const(0.0),
            CsCheck.Gen.Double[-0.8, 0.8]
        );

    private static SawnBoard Laid(
        StockBoard stock,
        (double Wide, double Off, (double Long, double Begin, double End)[] Pieces)[] sizes,
        double kerf
    )
    {
        ImmutableArray<SawnLane>.Builder lanes = ImmutableArray.CreateBuilder<SawnLane>();
        ImmutableArray<LaidPiece>.Builder pieces = ImmutableArray.CreateBuilder<LaidPiece>();
        double low = 0;
        int number = 0;
        foreach (
            (double wide, double off, (double Long, double Begin, double End)[]? sawn) in sizes
        )
        {
            double at = stock.MarkedEndMm,
                high = low + wide;
            List<PieceId> ids = [];
            foreach ((double length, double begin, double end) in sawn)
            {
                double a = begin * wide,
                    b = end * wide,
                    nearest = Math.Min(0, a),
                    furthest = length + Math.Max(0, b);
                // Straight on, or behind the fault that is in its way.
                double from = at;
                while (
                    stock
                        .Faults.Where(f =>
                            (f.LowMm ?? 0) < high
                            && (f.HighMm ?? double.PositiveInfinity) > low
                            && f.FromMm < from + furthest - nearest + kerf
                            && f.ToMm + kerf > from
                        )
                        .Select(f => (double?)f.ToMm)
                        .Max()
                        is { } fault
                )
                {
                    from = fault + kerf + 1e-6;
                }

                double to = from + furthest - nearest;
                if (to > stock.LengthMm - stock.OtherEndMm)
                {
                    continue;
                }

                SawPiece piece = SawPieces.Of(
                    $"S1-{++number:00}",
                    new(0, 0),
                    new(length, 0),
                    new(length + b, wide),
                    new(a, wide)
                );
                pieces.Add(new(piece, false, false, 0, new(from - nearest, low)));
                ids.Add(piece.Id);
                at = to + (2 * kerf);
            }

            if (ids.Count > 0)
            {
                lanes.Add(new(low, high, [.. ids]));
            }

            low = high + kerf + off;
        }

        StockBoard board = stock with { WidthMm = low + 50 };
        return new(board.Id, board, lanes.ToImmutable(), pieces.ToImmutable());
    }
}
