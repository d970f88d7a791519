using CsCheck;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>Of plans that take as much wood and leave as large a piece the one of fewest boards, against every plan there is of a few boards of one width.</summary>
public sealed class FewestBoardsTests
{
    private const double WidthMm = 100;

    [Fact]
    public void NoPlanOfAsMuchWoodAndAsLargeAPieceTakesFewerBoards() =>
        Gen.Select(Gen.Int[100, 1150].Array[2, 5], Gen.Int[0, 4], Gen.Bool)
            .Sample(
                (lengths, kerf, shortFirst) =>
                {
                    double[] boards = shortFirst ? [1200, 1200, 2400] : [2400, 1200, 1200];
                    NestSpec spec = SawPieces.Spec([
                        .. boards.Select(
                            (b, i) =>
                                SawPieces.Board(
                                    FormattableString.Invariant($"B-0{i + 1}"),
                                    b,
                                    WidthMm
                                )
                        ),
                    ]) with
                    {
                        KerfMm = kerf,
                    };
                    NestPlan plan = Planned.Lawful(
                        spec,
                        [
                            .. lengths.Select(
                                (l, i) =>
                                    SawPieces.Rectangle(
                                        FormattableString.Invariant($"S1-0{i + 1}"),
                                        l,
                                        WidthMm
                                    )
                            ),
                        ]
                    );
                    if (!plan.Unplaced.IsEmpty)
                    {
                        return;
                    }

                    double wood = plan.Boards.Sum(b => b.Stock.LengthMm),
                        left = Offcuts.Of(plan).Select(o => o.LengthMm).DefaultIfEmpty(0).Max();
                    foreach (
                        (double otherWood, double otherLeft, int count) in Every(
                            spec,
                            boards,
                            lengths
                        )
                    )
                    {
                        string told =
                            $"{string.Join(' ', lengths)}, kerf {kerf}: {wood} in {plan.Boards.Length} boards leaving {left}; {otherWood} in {count} leaves {otherLeft}";
                        Assert.False(otherWood < wood, told);
                        Assert.False(
                            otherWood == wood
                                && otherLeft > left - 0.1
                                && count < plan.Boards.Length,
                            told
                        );
                    }
                },
                iter: LongRuns.Of(50, 3000),
                threads: 2
            );

    /// <summary>Every way to share out the pieces that fits: the length of all boards cut into, the longest piece kept, and how many boards.</summary>
    private static IEnumerable<(double Wood, double Left, int Count)> Every(
        NestSpec spec,
        double[] boards,
        int[] lengths
    )
    {
        int ways = (int)Math.Pow(boards.Length, lengths.Length);
        for (int way = 0; way < ways; way++)
        {
            double[] free = [.. boards.Select(b => b + spec.KerfMm)];
            int rest = way;
            foreach (int length in lengths)
            {
                free[rest % boards.Length] -= length + spec.KerfMm;
                rest /= boards.Length;
            }

            if (free.Any(f => f < 0))
            {
                continue;
            }

            int[] cut =
            [
                .. Enumerable.Range(0, boards.Length).Where(b => free[b] < boards[b] + spec.KerfMm),
            ];
            yield return (
                cut.Sum(b => boards[b]),
                cut.Select(b => free[b] - spec.KerfMm)
                    .Where(f => f >= spec.LeastOffcutMm)
                    .DefaultIfEmpty(0)
                    .Max(),
                cut.Length
            );
        }
    }
}
