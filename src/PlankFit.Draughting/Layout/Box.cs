using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Layout;

/// <summary>An upright rectangle on a sheet, mm.</summary>
public readonly record struct Box(double Left, double Bottom, double Right, double Top)
{
    public double Width => Right - Left;
    public double Height => Top - Bottom;
    public Vec2 Middle => new((Left + Right) / 2, (Bottom + Top) / 2);

    /// <summary>The box that just holds the points.</summary>
    public static Box Around(IEnumerable<Vec2> points)
    {
        double left = double.PositiveInfinity,
            bottom = left,
            right = double.NegativeInfinity,
            top = right;
        foreach (Vec2 p in points)
        {
            left = Math.Min(left, p.X);
            right = Math.Max(right, p.X);
            bottom = Math.Min(bottom, p.Y);
            top = Math.Max(top, p.Y);
        }

        return new(left, bottom, right, top);
    }

    public Box Within(double margin) =>
        new(Left + margin, Bottom + margin, Right - margin, Top - margin);

    /// <summary>Cut into equal rows, the first at the top.</summary>
    public Box Row(int index, int rows) =>
        new(Left, Top - ((index + 1) * Height / rows), Right, Top - (index * Height / rows));

    public bool Overlaps(Box other) =>
        Left < other.Right && other.Left < Right && Bottom < other.Top && other.Bottom < Top;

    public bool Holds(Vec2 p) => p.X >= Left && p.X <= Right && p.Y >= Bottom && p.Y <= Top;
}
