using CsCheck;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>Of plans that count the same, the one that leaves most in one piece.</summary>
public sealed class LeftInOnePieceTests
{
    /// <summary>Two boards of 2400 and 1900 in pieces: as long as one board's pieces fit into what the other has free, or change places with smaller ones, more is left in one.</summary>
    [Fact]
    public void NoPieceOrExchangeLeavesMoreInOne() =>
        Gen.Select(Gen.Int[200, 900].Array[4, 9], Gen.Int[0, 4])
            .Sample(
                (lengths, kerf) =>
                {
                    NestSpec spec = SawPieces.Spec(
                        SawPieces.Board("B-01", 2400, 100) with
                        {
                            Count = 6,
                        }
                    ) with
                    {
                        KerfMm = kerf,
                        Rounds = 4,
                    };
                    NestPlan plan = Planned.Lawful(
                        spec,
                        [
                            .. lengths.Select(
                                (l, i) =>
                                    SawPieces.Rectangle(
                                        FormattableString.Invariant($"S1-0{i + 1}"),
                                        l,
                                        100
                                    )
                            ),
                        ]
                    );
                    double[][] boards =
                    [
                        .. plan.Boards.Select(b =>
                            b.Pieces.Select(p =>
                                    p.Outline.Max(v => v.X) - p.Outline.Min(v => v.X) + kerf
                                )
                                .ToArray()
                        ),
                    ];
                    double[] free = [.. boards.Select(b => 2400 + kerf - b.Sum())];
                    int most = Array.IndexOf(free, free.Max());
                    foreach (double piece in boards[most])
                    {
                        for (int b = 0; b < boards.Length; b++)
                        {
                            if (b == most)
                            {
                                continue;
                            }

                            foreach (double back in boards[b].Prepend(0))
                            {
                                Assert.False(
                                    back < piece - 1.5 && piece - back <= free[b] - 1e-3,
                                    $"{piece} for {back} leaves {free[most]} + {piece - back} in one, {string.Join(" | ", boards.Select(x => string.Join(' ', x)))}"
                                );
                            }
                        }
                    }
                },
                iter: Long.Runs(30, 600),
                threads: 2
            );
}
