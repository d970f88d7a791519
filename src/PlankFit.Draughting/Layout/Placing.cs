using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Layout;

/// <summary>Where a thing in true size comes to lie on a sheet: scaled, flipped where asked, and moved.</summary>
/// <param name="X">Paper millimetres per millimetre across; negative flips.</param>
/// <param name="Y">The same up the sheet.</param>
public readonly record struct Placing(double X, double Y, Vec2 Origin)
{
    public Vec2 this[Vec2 p] => new(Origin.X + (X * p.X), Origin.Y + (Y * p.Y));

    public ImmutableArray<Vec2> Of(IEnumerable<Vec2> points)
    {
        Placing self = this;
        return [.. points.Select(p => self[p])];
    }

    /// <summary>So that the middle of a thing in true size comes to the middle of a box.</summary>
    public static Placing Centred(Box thing, Box on, double x, double y) =>
        new(x, y, on.Middle - new Vec2(x * thing.Middle.X, y * thing.Middle.Y));

    /// <summary>The way back to true size.</summary>
    public Vec2 Back(Vec2 paper) => new((paper.X - Origin.X) / X, (paper.Y - Origin.Y) / Y);
}
