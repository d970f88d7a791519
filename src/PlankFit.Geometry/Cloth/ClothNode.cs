using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Cloth;

/// <summary>A crossing of two threads, by the steps along each set that lead to it.</summary>
internal readonly record struct Knot(int First, int Second)
{
    public static Knot operator +(Knot a, Knot b) => new(a.First + b.First, a.Second + b.Second);

    public static Knot operator -(Knot a, Knot b) => new(a.First - b.First, a.Second - b.Second);
}

/// <summary>Where a crossing lies on the ground.</summary>
/// <param name="Gauss">Curvature of the ground there, 1/mm².</param>
/// <param name="Turning">Shear there that comes of the first line's turning in the surface, rad.</param>
/// <param name="Bulge">Shear there that comes of the ground's own curvature, rad.</param>
internal readonly record struct ClothNode(
    Uv At,
    Vec3 P,
    double Gauss,
    double Turning,
    double Bulge
);
