using PlankFit.Geometry.Primitives;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Geometry;

/// <summary>Outlines that plainly lie in each other are told without the general library; what it says of those that do not is held to areas.</summary>
public sealed class PlainOutlineTests
{
    private static readonly Vec2[] Square = [new(0, 0), new(100, 0), new(100, 100), new(0, 100)];

    [Fact]
    public void ASquareIsPlain() => Assert.NotNull(PlainOutline.Of(Square));

    /// <summary>A bow-tie, a spike, a point twice, two points, sides that all but touch: where there is doubt the answer is no.</summary>
    [Fact]
    public void WhatComesNearItselfIsNot()
    {
        Vec2[][] doubtful =
        [
            [new(0, 0), new(100, 100), new(100, 0), new(0, 100)],
            [new(0, 0), new(100, 0), new(150, 0), new(100, 0), new(100, 100)],
            [new(0, 0), new(100, 0), new(100, 0), new(100, 100)],
            [new(0, 0), new(100, 0)],
            [new(0, 0), new(100, 0), new(100, 100), new(50, 1e-6), new(0, 100)],
        ];
        Assert.All(doubtful, outline => Assert.Null(PlainOutline.Of(outline)));
    }

    [Fact]
    public void WhatTouchesLiesNotWithin()
    {
        PlainOutline about = PlainOutline.Of(Square)!;
        Vec2[] Inner(double from) => [new(from, 10), new(90, 10), new(90, 90), new(from, 90)];
        Assert.True(PlainOutline.Of(Inner(1e-3))!.LiesWithin(about));
        Assert.False(PlainOutline.Of(Inner(1e-6))!.LiesWithin(about));
        Assert.False(PlainOutline.Of(Inner(-5))!.LiesWithin(about));
        Assert.False(about.LiesWithin(PlainOutline.Of(Inner(10))!));
    }

    /// <summary>By chance, one in the other or across its edge: all of both is as large as both less what they have in common; in the other it is the other itself.</summary>
    [Fact]
    public void BothTogetherAndInCommonAddUp() =>
        Assert.All(
            Enumerable.Range(1, 40),
            seed =>
            {
                var draw = new Draw(seed);
                double off = draw.OneOf(0.0, draw.Between(300, 900));
                Vec2[] about = Star(draw, 900, 1000, default),
                    within = Star(draw, 300, 400, new(off, -off));
                if (draw.Heads())
                {
                    Array.Reverse(within);
                }

                IReadOnlyList<Vec2> together = PlanarShapes.Together([within, about], []);
                double common = PlanarShapes.Common(within, about, 0).Sum(p => FlatPolygon.Area(p));
                double both =
                    Math.Abs(FlatPolygon.Area(about)) + Math.Abs(FlatPolygon.Area(within)) - common;
                // Across the edge their points may shut in a hole, which an outline has not.
                Assert.InRange(
                    FlatPolygon.Area(together) - both,
                    -0.01,
                    off == 0 ? 0.01 : both / 1000
                );
                if (off == 0)
                {
                    Assert.Equal(about.Length, together.Count);
                    Assert.All(
                        about.Zip(together),
                        p => Assert.True(p.First.ChordTo(p.Second) < 1e-6)
                    );
                }
            }
        );

    private static Vec2[] Star(Draw draw, double least, double most, Vec2 middle)
    {
        int n = draw.Whole(20, 60);
        return
        [
            .. Enumerable
                .Range(0, n)
                .Select(i =>
                {
                    double at = (i + draw.Between(0, 0.8)) * 2 * Math.PI / n,
                        out_ = draw.Between(least, most);
                    return middle + new Vec2(out_ * Math.Cos(at), out_ * Math.Sin(at));
                }),
        ];
    }
}
