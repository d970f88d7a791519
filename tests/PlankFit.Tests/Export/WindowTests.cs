using System.Collections.Immutable;
using CsCheck;
using PlankFit.Draughting.Tiling;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Tests.Export;

public class WindowTests
{
    private static readonly Window Ten = new(new(0, 0), new(10, 10));

    private static readonly Gen<ImmutableArray<Vec2>> Lines = Gen.Select(
            Gen.Double[-300, 1300],
            Gen.Double[-300, 900]
        )
        .Select((x, y) => new Vec2(x, y))
        .Array[2, 40]
        .Select(points => points.ToImmutableArray());

    [Fact]
    public void ALineIsCutExactlyAtTheSides()
    {
        (ImmutableArray<Vec2> Points, bool Closed) piece = Assert.Single(
            Ten.Cut([new(-5, 2), new(15, 6)], false)
        );
        Assert.Equal([new(0, 3), new(10, 5)], piece.Points);
    }

    [Fact]
    public void ALineThatLeavesAndComesBackIsTwoPieces()
    {
        List<(ImmutableArray<Vec2> Points, bool Closed)> pieces = Ten.Cut(
            [new(2, 2), new(12, 2), new(12, 8), new(2, 8)],
            false
        );
        Assert.Equal(2, pieces.Count);
        Assert.Equal([new(2, 2), new(10, 2)], pieces[0].Points);
        Assert.Equal([new(10, 8), new(2, 8)], pieces[1].Points);
    }

    [Fact]
    public void AClosedLineThatBeginsInsideIsNotCutAtItsBeginning()
    {
        (ImmutableArray<Vec2> Points, bool Closed) piece = Assert.Single(
            Ten.Cut([new(5, 5), new(12, 5), new(12, 12), new(5, 12)], true)
        );
        Assert.False(piece.Closed);
        Assert.Equal([new(5, 10), new(5, 5), new(10, 5)], piece.Points);
    }

    [Fact]
    public void WhatOnlyTouchesOrMissesIsLeftOutAndWhatIsInsideIsKeptWhole()
    {
        Assert.Empty(Ten.Cut([new(-5, 5), new(5, 15)], false));
        Assert.Empty(Ten.Cut([new(-1, 0), new(-1, 9)], false));
        ImmutableArray<Vec2> inside = [new(1, 1), new(9, 1), new(5, 9)];
        (ImmutableArray<Vec2> Points, bool Closed) whole = Assert.Single(Ten.Cut(inside, true));
        Assert.True(whole.Closed);
        Assert.Equal(inside, whole.Points);
    }

    /// <summary>Cut into windows that lie side by side without overlap, nothing is lost and nothing is there twice.</summary>
    [Fact]
    public void ThePiecesInWindowsSideBySideAddUpToTheWholeLine() =>
        Gen.Select(Lines, Gen.Bool)
            .Sample(
                (points, closed) =>
                {
                    double sum = 0.0;
                    for (int i = 0; i < 8; i++)
                    {
                        for (int j = 0; j < 5; j++)
                        {
                            var least = new Vec2((220.5 * i) - 300.25, (260.5 * j) - 300.25);
                            var window = new Window(least, least + new Vec2(220.5, 260.5));
                            sum += window.Cut(points, closed).Sum(p => Length(p.Points, p.Closed));
                        }
                    }

                    Assert.Equal(Length(points, closed), sum, 1e-6);
                }
            );

    [Fact]
    public void TheAreasInWindowsSideBySideAddUpToTheWholeArea() =>
        Lines.Sample(points =>
        {
            double sum = 0.0;
            for (int i = 0; i < 4; i++)
            {
                var least = new Vec2((441.0 * i) - 300.25, -300.25);
                var window = new Window(least, least + new Vec2(441, 1302.5));
                sum += Area(window.CutArea(points));
            }

            Assert.Equal(Area(points), sum, 1e-4);
        });

    internal static double Length(ImmutableArray<Vec2> points, bool closed)
    {
        double length = 0.0;
        for (int i = closed ? 0 : 1; i < points.Length; i++)
        {
            length += points[i].ChordTo(points[(i + points.Length - 1) % points.Length]);
        }

        return length;
    }

    private static double Area(ImmutableArray<Vec2> points) =>
        0.5 * points.Select((p, i) => p.Cross(points[(i + 1) % points.Length])).Sum();
}
