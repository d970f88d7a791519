using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking;

namespace PlankFit.Nesting;

/// <summary>One share of stock and pieces, planned by itself.</summary>
internal static class ShareNesting
{
    public static NestedShare Of(
        NestSpec spec,
        StockShare share,
        LengthUnit units,
        IProgress<NestProgress> progress,
        CancellationToken enough
    )
    {
        ImmutableArray<BoardType> boards =
        [
            .. share
                .Sorts.SelectMany(
                    (sort, s) => sort.Select(b => Board(spec, b, s, share.Pieces.Length))
                )
                .OrderBy(b => spec.Boards.IndexOf(b.Stock)),
        ];
        ImmutableArray<NestItem> items = ItemsOf.Pieces(share.Pieces, p => share.Serving(spec, p));
        ImmutableArray<int> instead;
        ImmutableArray<SawPiece> apart = [];
        if (spec.PairsTogether)
        {
            items =
            [
                .. items,
                .. TwinBlocks.Of(
                    new EndTable(items, spec.KerfMm),
                    boards,
                    spec,
                    out instead,
                    out apart
                ),
            ];
        }
        else
        {
            items =
            [
                .. items,
                .. TaperedPairs.Of(
                    items,
                    spec.KerfMm,
                    [.. boards.Select(b => b.Region.WidthMm + spec.ProudMm).Distinct()]
                ),
            ];
            instead = [.. items.Select(_ => -1)];
        }

        var ends = new EndTable(items, spec.KerfMm);
        var problem = new NestProblem(
            boards,
            share.Sorts.Length,
            ends,
            spec.KerfMm,
            spec.ProudMm,
            instead
        );
        string name = Name(share, spec);
        NestResult result = NestSearch.Run(
            problem,
            spec.Seed,
            spec.Rounds ?? int.MaxValue,
            (round, cutting, bound) =>
                progress.Report(
                    new(
                        name,
                        round,
                        cutting.Cost(problem),
                        bound,
                        cutting.Boards.Length,
                        share.Pieces.Length - cutting.Counts(problem).Sum()
                    )
                ),
            enough
        );
        SquareCutting square = SquareCuts.Of(
            spec with
            {
                Boards = [.. share.Sorts.SelectMany(s => s).OrderBy(spec.Boards.IndexOf)],
            },
            share.Pieces
        );
        var dealt = new PieceDealing(items);
        ImmutableArray<SawnBoard> sawn = BoardLayout.Of(problem, result.Cutting, dealt);
        ImmutableArray<SawPiece> left = dealt.Left();
        // Square crosscuts take no care of pairs, and are no measure for a plan that does.
        bool comparable = square.LeftOut.Length <= left.Length && !spec.PairsTogether;
        return new(
            [
                new(
                    name,
                    [.. share.Pieces.Select(p => p.Id).Except(left.Select(p => p.Id))],
                    result.Cutting.Cost(problem),
                    result.Bound,
                    comparable ? square.Value : null,
                    comparable ? square.Boards.Length : null,
                    result.Rounds
                ),
            ],
            sawn,
            [.. left.Select(p => new UnplacedPiece(p, Wants.Room(spec, share, p, units)))],
            apart
        );
    }

    private static BoardType Board(NestSpec spec, StockBoard board, int sort, int pieces) =>
        new(
            board,
            sort,
            Math.Min(board.Count ?? pieces, pieces),
            spec.Objective == NestObjective.Cost ? (double)(board.Price ?? 0) : board.AreaMm2,
            StripRegion.Of(board, spec)
        );

    private static string Name(StockShare share, NestSpec spec)
    {
        string Mm(double mm) => mm.ToString("0.###", CultureInfo.InvariantCulture);
        string thickness = string.Join(
            " and ",
            share.Pieces.Select(p => p.ThicknessMm).Distinct().Order().Select(t => Mm(t) + " mm")
        );
        string woods = string.Join(
            " and ",
            share
                .Pieces.Select(p => p.Species)
                .OfType<string>()
                .Distinct()
                .Order(StringComparer.Ordinal)
        );
        // Where there are both, they are told apart.
        string from =
            spec.Boards.All(b => b.OnHand) || spec.Boards.All(b => !b.OnHand) ? ""
            : share.Sorts.All(s => s.All(b => b.OnHand)) ? " from the rack"
            : share.Sorts.All(s => s.All(b => !b.OnHand)) ? " to buy"
            : "";
        return (woods.Length > 0 ? $"{thickness} {woods}" : thickness) + from;
    }
}

/// <param name="Apart">Twins that could not be asked of one board.</param>
internal sealed record NestedShare(
    ImmutableArray<NestedMaterial> Materials,
    ImmutableArray<SawnBoard> Boards,
    ImmutableArray<UnplacedPiece> Unplaced,
    ImmutableArray<SawPiece> Apart
)
{
    public static readonly NestedShare Nothing = new([], [], [], []);
}
