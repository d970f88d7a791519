using PlankFit.Geometry.Primitives;

namespace PlankFit.Tests.Geometry;

public sealed class TidyOutlineTests
{
    private const double ApartMm = 5e-4;

    [Fact]
    public void AnOutlineWithRoomIsLeftAsItIs()
    {
        Vec2[] square = [new(0, 0), new(5, 0), new(10, 0.001), new(10, 10), new(0, 10)];
        Assert.Equal(square, TidyOutline.Of(square, ApartMm));
    }

    [Fact]
    public void PointsThatAllButCoincideBecomeOne()
    {
        Vec2[] twice =
        [
            new(0, 0),
            new(10, 0),
            new(10, 1e-6),
            new(10, 10),
            new(0, 10),
            new(2e-5, 0),
        ];
        List<Vec2> tidy = TidyOutline.Of(twice, ApartMm);
        Assert.Equal(4, tidy.Count);
        Assert.All(tidy, p => Assert.Contains(p, twice));
    }

    /// <summary>Two sides that cross by a hair before they part: a tip of 0.0001 mm that runs back on itself.</summary>
    [Fact]
    public void ATipThatRunsBackOnItselfIsLeftOut()
    {
        Vec2[] crossed =
        [
            new(0, 0),
            new(10, 0),
            new(10, 10),
            new(12, 10.0001),
            new(9, 9.9999),
            new(0, 10),
        ];
        Assert.Equal(
            [new(0, 0), new(10, 0), new(10, 10), new(9, 9.9999), new(0, 10)],
            TidyOutline.Of(crossed, ApartMm)
        );
    }

    /// <summary>A sharp tip is cut back to where it is as thick as the distance, and no further.</summary>
    [Fact]
    public void ASharpTipLosesWhatIsThinnerThanTheDistance()
    {
        Vec2[] tip =
        [
            new(0, -1),
            .. Enumerable.Range(1, 40).Select(i => new Vec2(i, (i - 40) / 40.0)),
            .. Enumerable.Range(0, 40).Select(i => new Vec2(39 - i, (i + 1) / 40.0)),
        ];
        Assert.Equal(tip, TidyOutline.Of(tip, ApartMm));
        Assert.Equal(tip.Length - 2, TidyOutline.Of(tip, 0.051).Count(p => p.X < 39.5));
    }
}
