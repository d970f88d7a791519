using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Planks;

/// <summary>
/// Where a sawn plank lies in the flat coordinates of its place: turned and moved as one piece, never stretched. Its own begin at the end that it was sawn with, those
/// of the place at the end that the place has now.
/// </summary>
internal readonly record struct FlatShift(double Cos, double Sin, Vec2 By)
{
    public static readonly FlatShift None = new(1, 0, default);

    /// <summary>A plank that lies within this of where it was sawn for has not moved, mm.</summary>
    private const double SameMm = 1e-3;

    /// <summary>The motion that brings points nearest to others, by least squares (the planar case of Procrustes' problem: Schönemann 1966, from memory).</summary>
    /// <param name="from">At least two, <paramref name="to"/> as many.</param>
    public static FlatShift Between(IReadOnlyList<Vec2> from, IReadOnlyList<Vec2> to)
    {
        if (from.Zip(to).All(p => p.First.ChordTo(p.Second) < SameMm))
        {
            return None;
        }

        Vec2 a = Middle(from),
            b = Middle(to);
        double dot = 0,
            cross = 0;
        for (int i = 0; i < from.Count; i++)
        {
            dot += (from[i] - a).Dot(to[i] - b);
            cross += (from[i] - a).Cross(to[i] - b);
        }

        double size = Math.Sqrt((dot * dot) + (cross * cross)),
            cos = size > 0 ? dot / size : 1,
            sin = size > 0 ? cross / size : 0;
        return new(cos, sin, b - new Vec2((cos * a.X) - (sin * a.Y), (sin * a.X) + (cos * a.Y)));
    }

    /// <summary>From the sawn plank's coordinates to its place's.</summary>
    public Vec2 To(Vec2 p) => Turned(p, Sin) + By;

    /// <summary>From the place's coordinates to the sawn plank's.</summary>
    public Vec2 Back(Vec2 p) => Turned(p - By, -Sin);

    private Vec2 Turned(Vec2 p, double sin) =>
        new((Cos * p.X) - (sin * p.Y), (sin * p.X) + (Cos * p.Y));

    private static Vec2 Middle(IReadOnlyList<Vec2> points) =>
        (1.0 / points.Count) * points.Aggregate(default(Vec2), (a, b) => a + b);
}
