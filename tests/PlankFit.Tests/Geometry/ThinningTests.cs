using System.Collections.Immutable;
using CsCheck;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Tests.Geometry;

/// <summary>Thinned lines: what is left out lies within the tolerance of the chord over it, and what is kept is needed.</summary>
public sealed class ThinningTests
{
    [Fact]
    public void WhatLiesWithinTheToleranceIsLeftOut()
    {
        Vec2[] line =
        [
            new(0, 0),
            new(1, 0.03),
            new(2, -0.09),
            new(3, 5),
            new(10, 5.05),
            new(20, 5),
        ];
        Assert.Equal([line[0], line[2], line[3], line[5]], Thinning.Open(line, 0.1));
        Assert.Equal(line, Thinning.Open(line, 0.01));
        Assert.Equal([line[0], line[5]], Thinning.Open(line, 6));
    }

    /// <summary>A vertex that lies past the chord's end is as far off as it is from that end, though the chord's line goes through it.</summary>
    [Fact]
    public void PastTheChordsEndsTheDistanceIsToTheEnd()
    {
        Vec2[] beyond = [new(0, 0), new(12, 0), new(10, 0)],
            before = [new(0, 0), new(-2, 0), new(10, 0)];
        Assert.Equal(beyond, Thinning.Open(beyond, 1.9));
        Assert.Equal([new(0, 0), new(10, 0)], Thinning.Open(beyond, 2.1));
        Assert.Equal(before, Thinning.Open(before, 1.9));
        Assert.Equal([new(0, 0), new(10, 0)], Thinning.Open(before, 2.1));

        // Beside the chord, and near its start: only the height counts.
        Vec2[] beside = [new(0, 0), new(0.9, 0.4), new(10, 0)];
        Assert.Equal([new(0, 0), new(10, 0)], Thinning.Open(beside, 0.5));
    }

    /// <summary>A line that comes back to where it began has a chord of no length.</summary>
    [Fact]
    public void AChordOfNoLengthIsAPoint()
    {
        Vec2[] loop = [new(0, 0), new(3, 4), new(0, 0)];
        Assert.Equal(loop, Thinning.Open(loop, 4.9));
        Assert.Equal([new(0, 0), new(0, 0)], Thinning.Open(loop, 5.1));
    }

    [Fact]
    public void APolygonKeepsItsCornersAndNeverBecomesALine()
    {
        Vec2[] square =
        [
            new(0, 0),
            new(5, 0.05),
            new(10, 0),
            new(10, 5),
            new(10, 10),
            new(5, 9.95),
            new(0, 10),
            new(0.02, 5),
        ];
        Assert.Equal([square[0], square[2], square[4], square[6]], Thinning.Closed(square, 0.1));

        Vec2[] sliver = [new(0, 0), new(5, -0.05), new(10, 0), new(5, 0.05)];
        Assert.Equal(sliver, Thinning.Closed(sliver, 0.1));
        Vec2[] three = [new(0, 0), new(5, 0.05), new(10, 0)];
        Assert.Equal(three, Thinning.Closed(three, 0.1));
        Vec2[] kite = [new(0, 0), new(5, -0.05), new(10, 0), new(5, 3)];
        Assert.Equal([kite[0], kite[2], kite[3]], Thinning.Closed(kite, 0.1));
    }

    /// <summary>On lines by chance: ends stay, nothing is moved, and every vertex lies within the tolerance of the chord that took its place.</summary>
    [Fact]
    public void EveryVertexLeftOutLiesNearItsChord() =>
        Gen.Select(
                Gen.Select(Gen.Double[0, 100], Gen.Double[0, 30], (x, y) => new Vec2(x, y)).Array[
                    3,
                    40
                ],
                Gen.Double[0.1, 20]
            )
            .Sample(
                (line, within) =>
                {
                    ImmutableArray<Vec2> thin = Thinning.Open(line, within);
                    Assert.Equal(line[0], thin[0]);
                    Assert.Equal(line[^1], thin[^1]);
                    int next = 1;
                    foreach (Vec2 p in line[1..])
                    {
                        double off = SegmentDistance.Between(
                            In(p),
                            In(p),
                            In(thin[next - 1]),
                            In(thin[next])
                        );
                        Assert.InRange(off, 0, within + 1e-9);
                        next += p == thin[next] && next < thin.Length - 1 ? 1 : 0;
                    }

                    Assert.Equal(thin.Length - 1, next);
                },
                iter: 200
            );

    /// <summary>A line drawn a thousand times smaller loses the same vertices.</summary>
    [Fact]
    public void TheSizeOfALineDoesNotMatter()
    {
        Gen.Select(
                Gen.Select(Gen.Int[0, 40], Gen.Int[0, 30], (x, y) => new Vec2(x, y)).Array[3, 20],
                Gen.Int[0, 12]
            )
            .Sample(
                (line, within) =>
                {
                    const double scale = 1 / 1024.0;
                    double most = within + 0.37;
                    Assert.Equal(
                        Thinning.Open(line, most).Select(p => scale * p),
                        Thinning.Open([.. line.Select(p => scale * p)], scale * most)
                    );
                    Assert.Equal(
                        Thinning.Closed(line, most).Select(p => scale * p),
                        Thinning.Closed([.. line.Select(p => scale * p)], scale * most)
                    );
                },
                iter: 200
            );
    }

    private static Vec3 In(Vec2 p) => new(p.X, p.Y, 0);
}
