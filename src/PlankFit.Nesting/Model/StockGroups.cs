using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Model;

/// <summary>Pieces and boards that have to do with each other only.</summary>
/// <param name="Sorts">Boards of each serve the same pieces.</param>
internal sealed record StockGroup(
    ImmutableArray<SawPiece> Pieces,
    ImmutableArray<ImmutableArray<StockBoard>> Sorts
)
{
    /// <summary>All its boards, in the order of the stock's files.</summary>
    public ImmutableArray<StockBoard> InOrder(NestSpec spec)
    {
        var own = new HashSet<StockBoard>(
            Sorts.SelectMany(s => s),
            ReferenceEqualityComparer.Instance
        );
        return [.. spec.Boards.Where(own.Contains)];
    }

    /// <summary>The sorts, by their place in this share, that serve a piece.</summary>
    public ImmutableArray<int> Serving(NestSpec spec, SawPiece piece) =>
        [
            .. Enumerable
                .Range(0, Sorts.Length)
                .Where(s => StockMatch.Piece(spec, Sorts[s][0], piece)),
        ];
}

/// <summary>Divides pieces and stock into shares that can be planned each by itself.</summary>
internal static class StockGroups
{
    /// <param name="unserved">Pieces that no board serves, by thickness, wood or grade.</param>
    public static ImmutableArray<StockGroup> Of(
        NestSpec spec,
        IReadOnlyList<SawPiece> pieces,
        out ImmutableArray<SawPiece> unserved
    )
    {
        ImmutableArray<StockBoard>[] sorts =
        [
            .. spec
                .Boards.GroupBy(b =>
                    (b.ThicknessMm, b.Species?.ToUpperInvariant(), StockMatch.Rank(spec, b.Grade))
                )
                .Select(g => g.ToImmutableArray()),
        ];
        int[] root = [.. Enumerable.Range(0, sorts.Length)];
        int Root(int s)
        {
            while (root[s] != s)
            {
                s = root[s];
            }

            return s;
        }

        var first = new Dictionary<PieceId, int>();
        List<PieceId>[] serves = sorts.Select(_ => new List<PieceId>()).ToArray();
        ImmutableArray<SawPiece>.Builder none = ImmutableArray.CreateBuilder<SawPiece>();
        foreach (SawPiece piece in pieces)
        {
            int[] serving =
            [
                .. Enumerable
                    .Range(0, sorts.Length)
                    .Where(s => StockMatch.Piece(spec, sorts[s][0], piece)),
            ];
            if (serving.Length == 0)
            {
                none.Add(piece);
                continue;
            }

            first[piece.Id] = serving[0];
            foreach (int s in serving)
            {
                serves[s].Add(piece.Id);
                int a = Root(serving[0]),
                    b = Root(s);
                root[Math.Max(a, b)] = Math.Min(a, b);
            }
        }

        unserved = none.ToImmutable();
        return
        [
            .. pieces
                .Where(p => first.ContainsKey(p.Id))
                .GroupBy(p => Root(first[p.Id]))
                .OrderBy(g => g.Key)
                .Select(g => new StockGroup(
                    [.. g],
                    [
                        // What serves the same pieces is one sort, whatever else parts it: each sort more is as much work again.
                        .. Enumerable
                            .Range(0, sorts.Length)
                            .Where(s => Root(s) == g.Key)
                            .GroupBy(s => string.Join('\n', serves[s]), StringComparer.Ordinal)
                            .Select(same => same.SelectMany(s => sorts[s]).ToImmutableArray()),
                    ]
                )),
        ];
    }
}
