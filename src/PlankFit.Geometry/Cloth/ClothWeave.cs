using PlankFit.Geometry.Primitives;

namespace PlankFit.Geometry.Cloth;

/// <summary>
/// How the two sets of threads of a cloth lie in its flat coordinates, p along the roll and q across it: unit directions of a step along each, square to each
/// other.
/// </summary>
public sealed record ClothWeave(Vec2 First, Vec2 Second)
{
    private static readonly double Half = Math.Sqrt(0.5);

    /// <summary>Threads at 45 degrees to the roll, one set each way.</summary>
    public static readonly ClothWeave Diagonal = new(new(Half, -Half), new(Half, Half));

    /// <summary>Threads along the roll and across it.</summary>
    public static readonly ClothWeave Square = new(new(1, 0), new(0, 1));

    /// <summary>The flat place of the node that so many steps along each set lead to, in steps.</summary>
    internal Vec2 At(double first, double second) => (first * First) + (second * Second);

    /// <summary>The steps along each set that lead to a flat place.</summary>
    internal (double First, double Second) Steps(Vec2 flat) => (flat.Dot(First), flat.Dot(Second));
}
