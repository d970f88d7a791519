using System.Collections.Immutable;
using CsCheck;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>Boards that are said to serve where the stock does not reach: put into the stock they do.</summary>
public sealed class ShortfallTests
{
    /// <summary>Planks of two thicknesses and two grades by chance, and a rack that is short of boards, of their length or of their grade.</summary>
    [Fact]
    public void BoardsThatAreSaidToServeDo()
    {
        int isShort = 0;
        Gen.Select(Gen.Int[1, 1 << 20], Gen.Int[0, 6], Gen.Double[0, 40], Gen.Int[0, 1])
            .Sample(
                (seed, boards, end, thin) =>
                {
                    ImmutableArray<SawPiece> pieces =
                    [
                        .. SawPieces
                            .Slanting(seed, 9, 150, (35, 100), (300, 1900))
                            .Select(
                                (p, i) =>
                                    p with
                                    {
                                        ThicknessMm = i % 3 == 0 && thin == 1 ? 6 : 9,
                                        LeastGrade = i % 4 == 0 ? "clear" : null,
                                    }
                            ),
                    ];
                    NestSpec spec = SawPieces.Spec([
                        .. Enumerable
                            .Range(1, boards)
                            .Select(i =>
                                SawPieces.Board(
                                    FormattableString.Invariant($"B-0{i}"),
                                    1200 + (400 * i),
                                    i % 2 == 0 ? 150 : 320
                                ) with
                                {
                                    Grade = i % 3 == 0 ? "clear" : "common",
                                    MarkedEndMm = end,
                                }
                            ),
                    ]) with
                    {
                        Rounds = 0,
                        EndMm = end / 2,
                        EdgeMm = end / 10,
                        Grades = ["clear", "common"],
                    };
                    NestPlan plan = Planned.Lawful(spec, pieces);
                    Assert.Equal(
                        plan.Unplaced.Select(u => u.Piece.Id).ToHashSet(),
                        plan.Short.SelectMany(s => s.PieceIds).ToHashSet()
                    );
                    if (plan.Short.IsEmpty)
                    {
                        return;
                    }

                    Interlocked.Increment(ref isShort);
                    NestSpec more = spec with
                    {
                        Boards =
                        [
                            .. spec.Boards,
                            .. plan.Short.Select(
                                (s, i) =>
                                    new StockBoard(
                                        $"M-{i}",
                                        StockKind.Board,
                                        new(s.LengthMm, s.WidthMm, s.ThicknessMm),
                                        new(s.Species, s.LeastGrade),
                                        new(Price: null, Count: s.Boards, OnHand: true),
                                        new(0, 0, []),
                                        new("more", i)
                                    )
                            ),
                        ],
                    };
                    NestPlan whole = Planned.Lawful(more, pieces);
                    Assert.True(
                        whole.Unplaced.IsEmpty,
                        $"{string.Join(' ', whole.Unplaced.Select(u => u.Piece.Id))} find no board; {string.Join("; ", plan.Short)}"
                    );
                },
                iter: LongRuns.Of(12, 400),
                threads: 2
            );
        Assert.True(isShort > 0);
    }
}
