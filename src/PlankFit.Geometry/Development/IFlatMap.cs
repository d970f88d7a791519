using PlankFit.Geometry.Primitives;

namespace PlankFit.Geometry.Development;

/// <summary>
/// A panel laid flat: where each point of the surface comes to lie, mm, seen from the outer side.
/// </summary>
public interface IFlatMap
{
    /// <summary>The flat place of the surface point (u, v).</summary>
    Vec2 At(double u, double v);

    /// <summary>The rates of the flat place with u and with v.</summary>
    (Vec2 Du, Vec2 Dv) RatesAt(double u, double v);
}

/// <summary>A rigid motion of the plane, without mirroring: Origin comes to (0, 0), XAxis to (1, 0).</summary>
internal readonly record struct FlatFrame(Vec2 Origin, Vec2 XAxis)
{
    public Vec2 Place(Vec2 p) => Turn(p - Origin);

    public Vec2 Turn(Vec2 d) => new(d.Dot(XAxis), d.Dot(XAxis.Left()));

    /// <summary>
    /// The frame in which the lower edge's chord lies on the x axis with its left end at the origin and the upper edge
    /// above it. Seen from outside, forward is then to the right on a starboard bottom and to the left on a port one.
    /// </summary>
    public static FlatFrame Above(Vec2 lowerFrom, Vec2 lowerTo, Vec2 upperMiddle)
    {
        Vec2 chord = (lowerTo - lowerFrom).Unit();
        return chord.Cross(upperMiddle - lowerFrom) > 0
            ? new(lowerFrom, chord)
            : new(lowerTo, -1 * chord);
    }
}

internal sealed class FramedMap(IFlatMap map, FlatFrame frame) : IFlatMap
{
    public Vec2 At(double u, double v) => frame.Place(map.At(u, v));

    public (Vec2 Du, Vec2 Dv) RatesAt(double u, double v)
    {
        (Vec2 du, Vec2 dv) = map.RatesAt(u, v);
        return (frame.Turn(du), frame.Turn(dv));
    }
}
