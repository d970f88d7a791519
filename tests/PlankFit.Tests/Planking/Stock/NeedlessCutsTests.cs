using PlankFit.Export.Stock;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Tests.Nesting;
using PlankFit.Tests.Support;
using SawPieces = PlankFit.Tests.Nesting.SawPieces;

namespace PlankFit.Tests.Planking.Stock;

/// <summary>No cut is asked for that a saw cannot make, or that an earlier one has made: kerf 3, boards of 139.7.</summary>
public sealed class NeedlessCutsTests
{
    private const double Width = 139.7;

    /// <summary>An edge that leaves its lane's by 0.3 to 0.7 mm: a saw wants wood on both sides, and a plane takes it.</summary>
    [Fact]
    public void LessThanAKerfAlongAPieceIsPlanedOff()
    {
        BoardCutList list = Cut(
            SawPieces.Of(
                "S1-01",
                new(0, 0),
                new(2000, 0),
                new(2000, Width - 0.7),
                new(0, Width - 0.3)
            )
        );
        SawCut edge = Assert.Single(list.Cuts, c => c.Kind == CutKind.Edge);
        Assert.True(edge.IsPlaned);
        Assert.Equal(0.7, edge.KerfMm, 6);
        Assert.Equal(
            "plane the upper edge, at most 1/32\"",
            BoardCutWords.Kind(list, edge, LengthUnit.Foot)
        );
        Assert.Equal("0\"", BoardCutWords.Place(list, edge, upper: false, LengthUnit.Foot));
    }

    /// <summary>Ends of 44 and 46 degrees, the first with a round of 0.2: neither can be carried on, and what parts them leaves no more than 0.3 mm on the first.</summary>
    [Fact]
    public void ACutThatPartsMakesTheEndThatItRunsAlong()
    {
        BoardCutList list = Cut(
            SawPieces.Of(
                "S1-01",
                [new(0, 0), .. Round(2683.7, 2819.85, 0.75, way: 1), new(0, Width)]
            ),
            SawPieces.Of(
                "S1-02",
                new(2687.9, 0),
                new(4000, 0),
                new(4000, Width),
                new(2832.16, Width)
            )
        );
        Assert.DoesNotContain(list.Cuts, c => c.Kind == CutKind.Parting);
        SawCut end = Assert.Single(list.Cuts, c => c.EndOf == Named.Piece("S1-01"));
        Assert.Null(end.BeginOf);
        Assert.False(Assert.Single(list.Cuts, c => c.BeginOf == Named.Piece("S1-02")).IsPlaned);
    }

    /// <summary>Nearly alike, both with a round: what parts them makes the first, and leaves 1.3 mm at the most on the second, which no saw takes off.</summary>
    [Fact]
    public void LessThanAKerfOnAPartedEndIsPlanedOff()
    {
        Vec2[] second = Round(2687.96, 2825.6, 0.75, way: -1);
        BoardCutList list = Cut(
            SawPieces.Of(
                "S1-01",
                [new(0, 0), .. Round(2683.7, 2819.85, 0.75, way: 1), new(0, Width)]
            ),
            SawPieces.Of(
                "S1-02",
                [second[0], new(4000, 0), new(4000, Width), .. second.Skip(1).Reverse()]
            )
        );
        SawCut begin = Assert.Single(list.Cuts, c => c.BeginOf == Named.Piece("S1-02"));
        Assert.True(begin.IsPlaned);
        Assert.InRange(-begin.KerfMm, 0.8, 1.5);
        Assert.StartsWith(
            "plane the end, at most",
            BoardCutWords.Kind(list, begin, LengthUnit.Foot),
            StringComparison.Ordinal
        );
        Assert.False(SawSettings.IsSet(begin));
    }

    /// <summary>An end from the lower edge to the upper that stands out by 0.2 mm at a part of its way.</summary>
    private static Vec2[] Round(double low, double high, double at, int way)
    {
        Vec2 from = new(low, 0),
            to = new(high, Width),
            away = -way * (to - from).Unit().Left();
        return [from, from + (at * (to - from)) + (0.2 * away), to];
    }

    private static BoardCutList Cut(params SawPiece[] pieces)
    {
        StockBoard stock = SawPieces.Board("B-01", 4200, Width);
        NestSpec spec = SawPieces.Spec(stock);
        SawnBoard board = new(
            "B-01",
            stock,
            [],
            [.. pieces.Select(p => new LaidPiece(p, false, false, 0, new(0, 0)))]
        );
        BoardCutList list = BoardCuts.Of(board, spec);
        Assert.Empty(SawLaws.Broken(spec, list));
        Assert.Empty(BoardCutsLaws.Broken(spec, list));
        return list;
    }
}
