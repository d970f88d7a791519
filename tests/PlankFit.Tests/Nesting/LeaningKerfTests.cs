using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>What a kerf takes of a board, worked by hand.</summary>
public sealed class LeaningKerfTests
{
    /// <summary>At 45 degrees a kerf of 3 takes 3 times the root of 2 along the lane: of 2000 past a corner at 1150 are left 850 less 4.243.</summary>
    [Fact]
    public void AnOffcutBeginsWhereALeaningKerfEnds()
    {
        StockBoard stock = SawPieces.Board("B", 2000, 150);
        NestSpec spec = SawPieces.Spec(stock);
        SawnBoard board = new(
            "B",
            stock,
            [],
            [new(SawPieces.Parallelogram("S1-01", 1000, 150, 45), false, false, 0, default)]
        );
        Offcut kept = Assert.Single(Offcuts.Of(spec, BoardCuts.Of(board, spec)));
        Assert.Equal(850 - (3 * Math.Sqrt(2)), kept.LengthMm, 1e-9);
        Assert.Empty(OffcutLaws.Broken(spec, board));
    }

    /// <summary>148 of a board of 150 at its lower edge, and two lanes 5 apart with a kerf of 3: 2 mm are no rip for a saw, and are planed off.</summary>
    [Fact]
    public void LessThanAKerfIsNoRip()
    {
        StockBoard narrow = SawPieces.Board("B", 1000, 150),
            wide = SawPieces.Board("B", 1000, 305);
        NestSpec spec = SawPieces.Spec(narrow, wide);
        SawPiece one = SawPieces.Rectangle("S1-01", 1000, 148),
            two = SawPieces.Rectangle("S1-02", 1000, 152);
        SawCut planed = Assert.Single(
            BoardCuts
                .Of(
                    new(
                        "B",
                        narrow,
                        [new(0, 148, [Named.Piece("S1-01")])],
                        [new(one, false, false, 0, default)]
                    ),
                    spec
                )
                .Cuts
        );
        Assert.True(planed.IsPlaned);
        Assert.Equal((148, 2), (planed.From.Y, planed.KerfMm));

        SawCut[] cuts =
        [
            .. BoardCuts
                .Of(
                    new(
                        "B",
                        wide,
                        [
                            new(0, 148, [Named.Piece("S1-01")]),
                            new(153, 305, [Named.Piece("S1-02")]),
                        ],
                        [new(one, false, false, 0, default), new(two, false, false, 0, new(0, 153))]
                    ),
                    spec
                )
                .Cuts.OrderBy(c => c.From.Y),
        ];
        Assert.Equal(
            [(148, 3, false), (153, -2, true)],
            cuts.Select(c => (c.From.Y, c.KerfMm, c.IsPlaned))
        );
    }
}
