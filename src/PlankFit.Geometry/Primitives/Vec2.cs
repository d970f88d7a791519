namespace PlankFit.Geometry.Primitives;

/// <summary>
/// A point or a vector in a plane. Unit: millimetres. On a flat plank X is s, outboard along the plank's own line,
/// and Y is n, counter-clockwise from s with the outer face up.
/// </summary>
public readonly record struct Vec2(double X, double Y)
{
    public double Norm => Math.Sqrt((X * X) + (Y * Y));

    public static Vec2 operator +(Vec2 a, Vec2 b) => new(a.X + b.X, a.Y + b.Y);

    public static Vec2 operator -(Vec2 a, Vec2 b) => new(a.X - b.X, a.Y - b.Y);

    public static Vec2 operator *(double k, Vec2 a) => new(k * a.X, k * a.Y);

    public static Vec2 operator /(Vec2 a, double k) => new(a.X / k, a.Y / k);

    public double Dot(Vec2 b) => (X * b.X) + (Y * b.Y);

    /// <summary>The third component of the cross product: positive where b lies counter-clockwise of this.</summary>
    public double Cross(Vec2 b) => (X * b.Y) - (Y * b.X);

    public Vec2 Unit() => this / Norm;

    /// <summary>Turned a quarter counter-clockwise.</summary>
    public Vec2 Left() => new(-Y, X);

    public double ChordTo(Vec2 b) => (b - this).Norm;

    public bool IsFinite => double.IsFinite(X) && double.IsFinite(Y);
}
