using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Reading.AsBuilt;

/// <summary>Points as arrays of numbers, every digit of them, so that what is read back is what was written.</summary>
internal static class PointText
{
    /// <summary>No minus before a nought.</summary>
    public static double Whole(double v) => v + 0.0;

    public static double[][] Of(ImmutableArray<Vec2> points) =>
        [.. points.Select(p => new[] { Whole(p.X), Whole(p.Y) })];

    public static double[][] Of(ImmutableArray<Vec3> points) =>
        [.. points.Select(p => new[] { Whole(p.X), Whole(p.Y), Whole(p.Z) })];

    /// <exception cref="FormatException">A point has not two numbers.</exception>
    public static ImmutableArray<Vec2> Flat(double[][] points) =>
        [.. points.Select(p => p.Length == 2 ? new Vec2(p[0], p[1]) : throw new FormatException())];

    /// <exception cref="FormatException">A point has not three numbers.</exception>
    public static ImmutableArray<Vec3> Space(double[][] points) =>
        [
            .. points.Select(p =>
                p.Length == 3 ? new Vec3(p[0], p[1], p[2]) : throw new FormatException()
            ),
        ];
}
