using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Nesting;

/// <summary>Pieces that no cut across parts, and ends that no straight cut makes: the smallest cases that chance found, worked by hand.</summary>
public sealed class PartedAbreastTests
{
    /// <summary>
    /// A corner piece and its twin point to point, a kerf between: the shortest way between them runs square across the grain, and so the cut that parts them
    /// runs along it.
    /// </summary>
    [Fact]
    public void TwinsPointToPointArePartedAlongTheGrain()
    {
        SawPiece one = SawPieces.Of("S1-01", new(0, 0), new(420, 0), new(255, 149)),
            other = SawPieces.Of("P1-01", new(255, 0), new(420, 149), new(0, 149));
        BoardCutList list = Lawful(
            0.7,
            new(
                "B",
                SawPieces.Board("B", 600, 320),
                [new(0, 320, [Named.Piece("S1-01"), Named.Piece("P1-01")])],
                [Laid(one, 10, 0), Laid(other, 10, 149.7)]
            )
        );
        Assert.DoesNotContain(list.Cuts, c => c.Kind == CutKind.Stopped);
        SawCut parting = Assert.Single(
            list.Cuts,
            c => c.Kind == CutKind.Edge && c.From.Y < 200 && c.From.Y == c.To.Y
        );
        Assert.Equal((10, 430), (parting.From.X, parting.To.X));
        Assert.Equal(149, Math.Min(parting.From.Y, parting.From.Y + parting.KerfMm), 1e-9);
        Assert.Equal(149.7, Math.Max(parting.From.Y, parting.From.Y + parting.KerfMm), 1e-9);
    }

    /// <summary>
    /// Two stretches that meet in a hollow, at 33 and at 19 degrees to the grain: either carried on straight would go into the piece, so the end is one cut that
    /// follows the line. The hollow is 37.6 mm beside the chord: |331 x 144.8 - 220.7 x 182.5| / 378.
    /// </summary>
    [Theory]
    [InlineData(220.7, 144.8)]
    [InlineData(110.3, 37.6)]
    public void AHollowEndIsSawnToTheLine(double x, double y)
    {
        // The hollow lies on the other side of the chord for the second, as a half turn of the first.
        SawPiece piece =
            y > 100
                ? SawPieces.Of("S1-01", new(0, 0), new(x, y), new(331, 182.5), new(0, 182.5))
                : SawPieces.Of("S1-01", new(0, 0), new(331, 0), new(331 - x, y), new(0, 182.5));
        BoardCutList list = Lawful(
            4.5,
            new("B", SawPieces.Board("B", 900, 221), [], [Laid(piece, 60, 0)])
        );
        SawCut end = Assert.Single(
            list.Cuts,
            c => c.EndOf == Named.Piece("S1-01") && c.Kind != CutKind.Edge
        );
        Assert.True(end.ToTheLine);
        Assert.Equal(3, end.Line.Length);
        double chord = Math.Sqrt((331 * 331) + (182.5 * 182.5));
        Assert.Equal(
            Math.Abs((331 * (y > 100 ? y : 182.5 - y)) - ((y > 100 ? x : 331 - x) * 182.5)) / chord,
            end.OffMm,
            1e-6
        );
    }

    /// <summary>A stretch within ten degrees of the grain, an edge by itself, and an end meet in a hollow: they are one cut as well.</summary>
    [Fact]
    public void AHollowBetweenAnEdgeAndAnEndIsSawnToTheLine()
    {
        BoardCutList list = Lawful(
            3,
            new(
                "B",
                SawPieces.Board("B", 900, 200),
                [],
                [
                    Laid(
                        SawPieces.Of("S1-01", new(0, 0), new(600, 0), new(400, 30), new(200, 200)),
                        20,
                        0
                    ),
                ]
            )
        );
        Assert.Single(list.Cuts, c => c.ToTheLine);
    }

    /// <summary>
    /// A saw without a kerf, and three pieces corner to side: the way from one to the next has no length and no direction, and the cut between them goes along
    /// the side that is touched.
    /// </summary>
    [Fact]
    public void PiecesThatTouchArePartedAlongASide()
    {
        SawPiece wedge = SawPieces.Of("S1-01", new(0, 0), new(1676, 101.1323), new(0, 101.1323)),
            below = SawPieces.Of(
                "S1-02",
                new(0, 0),
                new(1128.6813, 0),
                new(1175.3733, 20.2695),
                new(39.9054, 91.2124)
            ),
            beside = SawPieces.Of(
                "S1-03",
                new(1196.9881, 0),
                new(1138, 136),
                new(0, 136),
                new(0, 81.6)
            );
        Lawful(
            0,
            new(
                "B",
                SawPieces.Board("B", 3536, 154),
                [new(0, 136, [Named.Piece("S1-01"), Named.Piece("S1-02"), Named.Piece("S1-03")])],
                [Laid(wedge, 1, 0), Laid(below, 1472.6981, 0), Laid(beside, 1911.5607, 0)]
            )
        );
    }

    private static LaidPiece Laid(SawPiece piece, double x, double y) =>
        new(piece, false, false, 0, new(x, y));

    private static BoardCutList Lawful(double kerf, SawnBoard board)
    {
        NestSpec spec = SawPieces.Spec(board.Stock) with { KerfMm = kerf };
        Assert.Empty(SawLaws.Broken(spec, board));
        return BoardCuts.Of(board, spec);
    }
}
