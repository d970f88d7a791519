using System.Reflection;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>The slope at a reading is at most twice that of the flatter bay beside it, in the first bay and in the last. The class is Planking's own, so it is called by reflection.</summary>
public sealed class MonotoneJoinSlopeTests
{
    /// <summary>A long flat bay beside a short steep one: Fritsch and Carlson (from memory) give 3 × 1040 / 1080 = 2.89 times the flat bay's 0.001; twice is what is let.</summary>
    [Theory]
    [InlineData(new double[] { 0, 1000, 1040 }, new double[] { 0, 1, 101 }, 1000)]
    [InlineData(new double[] { 0, 40, 1040 }, new double[] { 0, 100, 101 }, 40)]
    public void NoMoreThanTwiceTheFlatterBay(double[] x, double[] y, double at)
    {
        Type type = typeof(Job).Assembly.GetType("PlankFit.Planking.Hulls.MonotoneJoin", true)!;
        object join = type.GetMethod("Through", BindingFlags.Public | BindingFlags.Static)!
            .Invoke(null, [x, y])!;
        double slope = (double)type.GetMethod("SlopeAt")!.Invoke(join, [at])!;
        Assert.Equal(0.002, slope, 1e-9);
    }
}
