using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>The side of the normal is judged at mid-bottom, and holds for the whole of a surface that twists.</summary>
public sealed class LoftSideTests
{
    /// <summary>
    /// Straight sections that turn about the keel from end to end, level amidships. Turned by a third of a turn in all, every normal leans to the side
    /// asked for, though a hull's length past the ends, where the splines only go on, none does; turned by three quarters, those at the ends lean away.
    /// </summary>
    [Theory]
    [InlineData(false, 1 / 3.0)]
    [InlineData(true, 1 / 3.0)]
    [InlineData(false, 0.75)]
    [InlineData(true, 0.75)]
    public void ATwistedBottomIsJudgedAmidships(bool below, double turns)
    {
        const int stations = 13;
        Vec3 outer = below ? -Vec3.UnitZ : Vec3.UnitZ;
        LoftedSurface loft = Loft.Through(
            [
                .. Enumerable
                    .Range(0, stations)
                    .Select(i =>
                    {
                        double x = 500 * i,
                            turn = 2 * Math.PI * turns * ((i / (stations - 1.0)) - 0.5);
                        Vec3 keel = new(x, 0, 0);
                        return (IReadOnlyList<Vec3>)
                            [keel, keel + (400 * new Vec3(0, Math.Cos(turn), Math.Sin(turn)))];
                    }),
            ],
            outer,
            0.01
        );
        double middle = 0.5 * (loft.UFrom + loft.UTo);
        Assert.Equal(1, loft.At(middle, 0.5).Normal.Dot(outer), 0.2);
        foreach (double end in new[] { loft.UFrom, loft.UTo })
        {
            Assert.Equal(Math.Cos(turns * Math.PI) > 0, loft.At(end, 0.5).Normal.Dot(outer) > 0);
        }
    }
}
