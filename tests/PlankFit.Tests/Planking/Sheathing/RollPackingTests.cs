using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Sheathing;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>Courses and rolls against figures worked by hand.</summary>
public sealed class RollPackingTests
{
    private const double Excess = 25,
        Lap = 50,
        Roll = 1270;

    /// <summary>A side of 8000 with 25 of excess all round, 50 of lap, a roll of 1270: one course along where the girth is 1150, two where it is 1300; across seven.</summary>
    [Theory]
    [InlineData(1150, CourseRule.Along, 0, 8050)]
    [InlineData(1150, CourseRule.Across, 6, 8400)]
    [InlineData(1300, CourseRule.Along, 1, 16100)]
    [InlineData(1300, CourseRule.Across, 6, 9450)]
    [InlineData(1150, CourseRule.FewestJoins, 0, 8050)]
    [InlineData(1300, CourseRule.FewestMetres, 6, 9450)]
    public void ARectangleInCourses(double girth, CourseRule rule, int joins, double metres)
    {
        ClothCourses courses = CoursePlanner.Of(
            Rectangle(8000 + (2 * Excess), girth + (2 * Excess)),
            Roll,
            Lap,
            rule,
            ([], []),
            0
        )!;
        Assert.Equal(joins, courses.JoinsMm.Length);
        Assert.Equal(metres, courses.MetresMm, 1e-6);
    }

    /// <summary>Joins are moved off those of the cloth before as far as there is room.</summary>
    [Fact]
    public void JoinsKeepOffThoseBefore()
    {
        ClothCourses first = Courses([]),
            second = Courses(first.JoinsMm);
        Assert.All(
            second.JoinsMm,
            j => Assert.All(first.JoinsMm, f => Assert.True(Math.Abs(j - f) >= 150))
        );

        static ClothCourses Courses(ImmutableArray<double> before) =>
            CoursePlanner.Of(
                Rectangle(8050, 1200),
                1270,
                50,
                CourseRule.Across,
                ([], before),
                150
            )!;
    }

    /// <summary>
    /// A side whose girth grows straight from nothing to 1200 over 6100, in five pieces of 1220 with ends of 240(k − 1) and 240k: by themselves 3600 of roll; two by two
    /// head to tail 3120; those of both sides, where one may be turned over, 6000, which is all area.
    /// </summary>
    [Fact]
    public void WedgesHeadToTail()
    {
        ImmutableArray<Vec2>[] side = [.. Enumerable.Range(1, 5).Select(Wedge)];
        Assert.Equal(3600, side.Sum(p => p.Max(q => q.X)), 1e-9);
        Assert.Equal(3120, RollPacking.Of(side, 1220, false).LengthMm, 1e-6);
        (ImmutableArray<PackedPiece> both, double length) = RollPacking.Of(
            [.. side, .. side],
            1220,
            true
        );
        Assert.Equal(6000, length, 1e-6);
        Assert.Equal(6000, 2 * side.Sum(p => FlatPolygon.Area(p)) / 1220, 1e-9);
        Apart(both, 1220, length);
    }

    /// <summary>Two narrow pieces lie abreast.</summary>
    [Fact]
    public void NarrowOnesLieAbreast()
    {
        (ImmutableArray<PackedPiece> laid, double length) = RollPacking.Of(
            [Rectangle(4000, 600), Rectangle(3900, 600)],
            1270,
            false
        );
        Assert.Equal(4000, length, 1e-9);
        Apart(laid, 1270, length);
    }

    [Fact]
    public void ShapesByChanceNeverOverlap() =>
        Assert.All(
            Enumerable.Range(1, 12),
            seed =>
            {
                var draw = new Draw(seed);
                ImmutableArray<Vec2>[] shapes =
                [
                    .. Enumerable.Range(0, draw.Whole(1, 7)).Select(_ => Shape(draw)),
                ];
                bool over = draw.Whole(0, 1) == 1;
                (ImmutableArray<PackedPiece> laid, double length) = RollPacking.Of(
                    shapes,
                    1270,
                    over
                );
                Assert.Equal(Enumerable.Range(0, shapes.Length), laid.Select(l => l.Piece).Order());
                Assert.All(laid, l => Assert.True(over || !l.Over));
                Assert.True(length <= shapes.Sum(s => s.Max(p => p.X)) + 1e-6);
                Assert.True(length >= (shapes.Sum(s => FlatPolygon.Area(s)) / 1270) - 1e-6);
                Assert.All(
                    laid,
                    l =>
                        Assert.Equal(
                            FlatPolygon.Area(shapes[l.Piece]),
                            FlatPolygon.Area(l.Outline),
                            1e-3
                        )
                );
                Apart(laid, 1270, length);
            }
        );

    /// <summary>By a general library: no two share more than a sliver, and all lie on the roll.</summary>
    private static void Apart(ImmutableArray<PackedPiece> laid, double roll, double length)
    {
        Polygon[] rings = [.. laid.Select(l => Ring(l.Outline))];
        for (int i = 0; i < rings.Length; i++)
        {
            Envelope box = rings[i].EnvelopeInternal;
            Assert.True(
                box.MinX >= -1e-6
                    && box.MaxX <= length + 1e-6
                    && box.MinY >= -1e-6
                    && box.MaxY <= roll + 1e-6
            );
            for (int j = 0; j < i; j++)
            {
                Assert.True(rings[i].Common(rings[j]).Area < 1e-3);
            }
        }
    }

    private static ImmutableArray<Vec2> Shape(Draw draw)
    {
        double length = draw.Between(300, 5000),
            width = draw.Between(150, 1270),
            a = draw.Between(0, 0.4) * length,
            b = draw.Between(0.6, 1) * length;
        ImmutableArray<Vec2> shape =
        [
            new(0, 0),
            new(length, 0),
            new(b, width * 0.7),
            new((a + b) / 2, width),
            new(a, width),
        ];
        return shape;
    }

    private static ImmutableArray<Vec2> Wedge(int k) =>
        [new(0, 0), new(240 * (k - 1), 0), new(240 * k, 1220), new(0, 1220)];

    private static ImmutableArray<Vec2> Rectangle(double length, double width) =>
        [new(0, 0), new(length, 0), new(length, width), new(0, width)];

    private static Polygon Ring(ImmutableArray<Vec2> outline) =>
        new(new LinearRing([.. outline.Append(outline[0]).Select(p => new Coordinate(p.X, p.Y))]));
}
