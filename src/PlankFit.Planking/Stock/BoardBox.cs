using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>A rectangle of a board along its sides, mm, in the frame of whoever asks.</summary>
internal readonly record struct BoardBox(double X0, double X1, double Y0, double Y1)
{
    public double Length => X1 - X0;

    public double Height => Y1 - Y0;

    public double Area => Math.Max(0, Length) * Math.Max(0, Height);

    public static BoardBox Around(ImmutableArray<Vec2> points) =>
        new(points.Min(p => p.X), points.Max(p => p.X), points.Min(p => p.Y), points.Max(p => p.Y));

    public BoardBox Grown(double by) => new(X0 - by, X1 + by, Y0 - by, Y1 + by);
}
