using System.Runtime.CompilerServices;

namespace PlankFit.Geometry.Primitives;

/// <summary>A point or a vector in space. Unit: millimetres for points, any for vectors.</summary>
public readonly record struct Vec3(double X, double Y, double Z)
{
    public static readonly Vec3 Zero = default;
    public static readonly Vec3 UnitX = new(1, 0, 0);
    public static readonly Vec3 UnitY = new(0, 1, 0);
    public static readonly Vec3 UnitZ = new(0, 0, 1);

    public double NormSquared => (X * X) + (Y * Y) + (Z * Z);
    public double Norm => Math.Sqrt(NormSquared);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 operator +(Vec3 a, Vec3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 operator -(Vec3 a, Vec3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Vec3 operator -(Vec3 a) => new(-a.X, -a.Y, -a.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 operator *(double k, Vec3 a) => new(k * a.X, k * a.Y, k * a.Z);

    public static Vec3 operator *(Vec3 a, double k) => k * a;

    public static Vec3 operator /(Vec3 a, double k) => (1 / k) * a;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Dot(Vec3 b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vec3 Cross(Vec3 b) =>
        new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));

    /// <summary>The vector of length one in this direction; a zero vector gives NaN, which no later check forgives.</summary>
    public Vec3 Unit() => this / Norm;

    /// <summary>Straight distance through space, never a distance along a surface.</summary>
    public double ChordTo(Vec3 b) => (b - this).Norm;

    /// <summary>The mirror image in the hull's middle plane, y = 0.</summary>
    public Vec3 MirroredInY() => new(X, -Y, Z);

    public bool IsFinite => double.IsFinite(X) && double.IsFinite(Y) && double.IsFinite(Z);
}
