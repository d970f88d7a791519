using System.Collections.Immutable;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Model;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Nesting;

/// <summary>Which piece comes out of which board.</summary>
public static class NestPlanner
{
    /// <param name="units">For what is said of pieces that no board gives.</param>
    /// <param name="progress">Told whenever plan or bound get better.</param>
    /// <param name="enough">Ends the search: the best plan found is returned, never an exception.</param>
    public static NestPlan Of(
        NestSpec spec,
        ImmutableArray<SawPiece> pieces,
        LengthUnit units,
        IProgress<NestProgress> progress,
        CancellationToken enough
    ) => Until(spec, pieces, units, progress, new Patience(enough));

    /// <param name="patience">Ends the search where it is over: the best plan found is returned, a whole one however early that is.</param>
    public static NestPlan Until(
        NestSpec spec,
        ImmutableArray<SawPiece> pieces,
        LengthUnit units,
        IProgress<NestProgress> progress,
        Patience patience
    )
    {
        ImmutableArray<NestedMaterial>.Builder materials =
            ImmutableArray.CreateBuilder<NestedMaterial>();
        ImmutableArray<SawnBoard>.Builder boards = ImmutableArray.CreateBuilder<SawnBoard>();
        ImmutableArray<UnplacedPiece>.Builder unplaced =
            ImmutableArray.CreateBuilder<UnplacedPiece>();
        ImmutableArray<StockGroup> shares = StockGroups.Of(
            spec,
            pieces,
            out ImmutableArray<SawPiece> unserved
        );
        unplaced.AddRange(
            unserved.Select(p => new UnplacedPiece(p, WhyUnplaced.Stock(spec, p, units)))
        );
        // All at once, so that none takes the time of the others; they have nothing to do with each other.
        Task<NestedShare>[] searches =
        [
            .. shares.Select(share =>
                Task.Run(() => GroupNesting.Of(spec, share, units, progress, patience))
            ),
        ];
        NestedShare[] all = Task.WhenAll(searches).GetAwaiter().GetResult();
        foreach (NestedShare nested in all)
        {
            materials.AddRange(nested.Materials);
            boards.AddRange(nested.Boards);
            unplaced.AddRange(nested.Unplaced);
        }

        ImmutableArray<UnplacedPiece> left = unplaced.ToImmutable();
        return new(
            spec,
            materials.ToImmutable(),
            [
                .. boards
                    .OrderBy(b => spec.Boards.IndexOf(b.Stock))
                    .ThenBy(b => b.Id.Length)
                    .ThenBy(b => b.Id, StringComparer.Ordinal)
                    .Select(b => TurnedEnds.Of(b, spec)),
            ],
            left,
            NestFindings.Of(left, Apart(all, boards))
        )
        {
            Short = Shortfalls.Of(spec, left),
            Asked = new(pieces, units),
        };
    }

    /// <summary>
    /// The plan of a job that was changed: the one before where stock, rules and pieces are the same by value, and else another. How long or in how many rounds to search
    /// is one of the rules: who wants a better plan of the same gives more of it.
    /// </summary>
    /// <param name="before">Null where there is none.</param>
    /// <param name="patience">Asked for where the plan is made anew.</param>
    public static NestPlan Again(
        NestPlan? before,
        NestSpec spec,
        ImmutableArray<SawPiece> pieces,
        LengthUnit units,
        IProgress<NestProgress> progress,
        Func<Patience> patience
    ) =>
        before is not null
        && before.Asked.Units == units
        && SameValue.Are(before.Spec, spec)
        && SameValue.Are(before.Asked.Pieces, pieces)
            ? before
            : Until(spec, pieces, units, progress, patience());

    /// <summary>Twins that could not be asked of one board, and did not come into one board all the same.</summary>
    private static ImmutableArray<SawPiece> Apart(
        IEnumerable<NestedShare> shares,
        IEnumerable<SawnBoard> boards
    )
    {
        var board = boards
            .SelectMany(b => b.Pieces.Select(p => (p.Piece.Id, Board: b.Id)))
            .ToDictionary(x => x.Id, x => x.Board);
        return
        [
            .. shares
                .SelectMany(s => s.Apart)
                .DistinctBy(p => p.Id)
                .Where(p =>
                    board.GetValueOrDefault(p.Id) is not { } its
                    || board.GetValueOrDefault(p.Twin!.Value) != its
                ),
        ];
    }
}
