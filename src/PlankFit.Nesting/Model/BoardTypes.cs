using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Model;

/// <summary>The boards of a share as the search takes them: equal ones as one, and none that could always be done without.</summary>
internal static class BoardTypes
{
    public static ImmutableArray<BoardType> Of(NestSpec spec, StockGroup share, BoardCosts costs)
    {
        var order = new Dictionary<StockBoard, int>(ReferenceEqualityComparer.Instance);
        foreach (StockBoard board in spec.Boards)
        {
            order.TryAdd(board, order.Count);
        }

        BoardType[] equal =
        [
            .. share
                .Sorts.SelectMany((sort, s) => sort.Select(b => (Board: b, Sort: s)))
                .OrderBy(b => order[b.Board])
                .GroupBy(b => Alike(b.Board, b.Sort, StripRegion.Of(b.Board, spec), costs))
                .Select(g => Of(spec, [.. g.Select(b => b.Board)], g.First().Sort, share, costs)),
        ];
        return WithoutDominated(equal, share.Pieces.Length);
    }

    private static BoardType Of(
        NestSpec spec,
        ImmutableArray<StockBoard> rows,
        int sort,
        StockGroup share,
        BoardCosts costs
    )
    {
        int pieces = share.Pieces.Length;
        return new(
            rows,
            sort,
            (int)Math.Min(pieces, rows.Sum(r => (long)(r.Count ?? pieces))),
            costs.Asked(rows[0]),
            costs.Cost(rows[0]),
            rows[0].AreaMm2,
            StripRegion.Of(rows[0], spec)
        );
    }

    /// <summary>Boards of which this is the same take each other's place in any plan.</summary>
    private static string Alike(StockBoard board, int sort, StripRegion region, BoardCosts costs) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{sort} {board.Kind} {board.OnHand} {board.GrainAcross} {board.LengthMm:R} {board.WidthMm:R} {costs.Cost(board):R} {region.LeastU:R} {region.MostU:R} {region.LeastV:R} {region.MostV:R} {string.Join(' ', region.Faults)}"
        );

    /// <summary>
    /// No plan uses more boards than there are pieces: a board is not needed where there are as many others that hold whatever it holds and count no more.
    /// </summary>
    private static ImmutableArray<BoardType> WithoutDominated(BoardType[] types, int pieces)
    {
        (BoardType Type, int Index)[] byLength = types
            .Select((t, i) => (Type: t, Index: i))
            .Where(t => t.Type.Region.Faults.IsEmpty)
            .OrderByDescending(t => t.Type.Region.LengthMm)
            .ToArray();
        bool Needed(BoardType board, int index)
        {
            int better = 0;
            foreach ((BoardType other, int i) in byLength)
            {
                if (other.Region.LengthMm < board.Region.LengthMm)
                {
                    break;
                }

                if (i != index && Dominates(other, i, board, index))
                {
                    better += other.Count;
                    if (better >= pieces)
                    {
                        return false;
                    }
                }
            }

            return true;
        }

        return [.. types.Where(Needed)];
    }

    private static bool Dominates(BoardType better, int i, BoardType board, int j) =>
        better.Sort == board.Sort
        && better.Cost <= board.Cost
        && better.Asked <= board.Asked
        && better.AreaMm2 <= board.AreaMm2
        && better.Region.WidthMm >= board.Region.WidthMm
        // Of two that are alike in all this the first stays.
        && (i < j || !IsAlike(better, board));

    private static bool IsAlike(BoardType a, BoardType b) =>
        b.Region.Faults.IsEmpty
        && a.Cost == b.Cost
        && a.Asked == b.Asked
        && a.AreaMm2 == b.AreaMm2
        && a.Region.LengthMm == b.Region.LengthMm
        && a.Region.WidthMm == b.Region.WidthMm;
}
