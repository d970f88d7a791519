using System.Collections.Immutable;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;
using PlankFit.Nesting.Search;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;

namespace PlankFit.Nesting;

/// <summary>One share of stock and pieces, planned by itself.</summary>
internal static class GroupNesting
{
    /// <summary>Of a stock of very many boards some are searched with, and others again so many times.</summary>
    private const int Again = 4;

    public static NestedShare Of(
        NestSpec spec,
        StockGroup share,
        LengthUnit units,
        IProgress<NestProgress> progress,
        Patience patience
    )
    {
        var costs = BoardCosts.Of(spec, [.. share.Sorts.SelectMany(s => s)]);
        ImmutableArray<BoardType> all = BoardTypes.Of(spec, share, costs);
        ImmutableArray<NestItem> items = ItemsOf.Pieces(share.Pieces, p => share.Serving(spec, p));
        ImmutableArray<int> instead;
        ImmutableArray<SawPiece> apart = [];
        if (spec.PairsTogether)
        {
            var singles = new EndTable(items, spec.KerfMm);
            if (!singles.IsOfMany)
            {
                singles.WorkOut(patience);
            }

            items =
            [
                .. items,
                .. PortStarboardPairs.Of(singles, all, spec, patience, out instead, out apart),
            ];
        }
        else
        {
            items =
            [
                .. items,
                .. HeadToTailPairs.Of(
                    items,
                    spec.KerfMm,
                    [.. all.Select(b => b.Region.WidthMm + spec.ProudMm).Distinct()],
                    patience
                ),
            ];
            instead = [.. items.Select(_ => -1)];
        }

        var ends = new EndTable(items, spec.KerfMm, RowTurns.Of(items, spec.Saw));
        double[] heights = [.. items.Select(i => i.HeightMm).OrderDescending()];
        string name = Name(share, units);
        (NestProblem Problem, NestResult Result) Search(
            ImmutableArray<BoardType> boards,
            bool mayChooseAnew
        )
        {
            var problem = new NestProblem(
                boards,
                share.Sorts.Length,
                ends,
                spec.KerfMm,
                spec.ProudMm,
                instead
            );
            NestResult result = NestSearch.Run(
                problem,
                costs,
                spec.Seed,
                spec.Rounds ?? int.MaxValue,
                mayChooseAnew,
                (round, cutting, standing) =>
                    progress.Report(
                        new(
                            name,
                            round,
                            standing.Value,
                            standing.Bound,
                            cutting.Boards.Length,
                            share.Pieces.Length - cutting.Counts(problem).Sum()
                        )
                    ),
                patience
            );
            return (problem, result);
        }

        (NestProblem problem, NestResult result) = Search(
            BoardChoice.First(all, heights, share.Pieces.Sum(p => p.AreaMm2), spec.KerfMm),
            mayChooseAnew: true
        );
        // With what a plan tells of the boards that would suit, as long as that leads to better ones.
        bool better = problem.Boards.Any(b => b.OnlyBounds);
        for (int again = 0; better && again < Again && !patience.IsOver; again++)
        {
            (NestProblem other, NestResult next) = Search(
                BoardChoice.Second(all, problem, result.Cutting, result.Paying, heights),
                mayChooseAnew: again + 1 < Again / 2
            );
            better = next.Standing.IsBetterThan(result.Standing);
            (problem, result) = better
                ? (other, next with { Standing = next.Standing.Raised(result.Standing) })
                : (problem, result with { Standing = result.Standing.Raised(next.Standing) });
        }

        NestMeasure measure = result.Standing.Measure;
        SquareCutting square = SquareCuts.Of(
            spec with
            {
                Boards = share.InOrder(spec),
            },
            share.Pieces,
            b => b.OnHand && measure.IsBought() ? 0 : costs.In(measure, b),
            patience
        );
        var dealt = new PieceDealing(items);
        ImmutableArray<SawnBoard> sawn = BoardLayout.Of(
            problem,
            JoinedBoards.Of(spec, problem, result.Cutting, patience),
            dealt
        );
        ImmutableArray<SawPiece> left = dealt.Left();
        var wants = new RoomWanted(spec, share, units);
        // Square crosscuts take no care of pairs, and are no measure for a plan that does; nor is the best of some orders of boards.
        bool comparable =
            square.IsWhole && square.LeftOut.Length <= left.Length && !spec.PairsTogether;
        return new(
            [
                new(
                    name,
                    [.. share.Pieces.Select(p => p.Id).Except(left.Select(p => p.Id))],
                    result.Standing.Value,
                    result.Standing.Bound,
                    comparable ? square.Value : null,
                    comparable ? square.Boards.Length : null,
                    result.Rounds
                )
                {
                    Measure = measure,
                    MoreMayHelp = result.MoreMayHelp,
                },
            ],
            sawn,
            [.. left.Select(p => new UnplacedPiece(p, wants.Of(p)))],
            apart
        );
    }

    private static string Name(StockGroup share, LengthUnit units)
    {
        string thickness = string.Join(
            " and ",
            share
                .Pieces.Select(p => p.ThicknessMm)
                .Order()
                .Select(t => LengthText.FormatExact(t, units))
                .Distinct()
        );
        string woods = string.Join(
            " and ",
            share
                .Pieces.Select(p => p.Species)
                .OfType<string>()
                .Distinct()
                .Order(StringComparer.Ordinal)
        );
        return woods.Length > 0 ? $"{thickness} {woods}" : thickness;
    }
}

/// <param name="Apart">Twins that could not be asked of one board.</param>
internal sealed record NestedShare(
    ImmutableArray<NestedMaterial> Materials,
    ImmutableArray<SawnBoard> Boards,
    ImmutableArray<UnplacedPiece> Unplaced,
    ImmutableArray<SawPiece> Apart
);
