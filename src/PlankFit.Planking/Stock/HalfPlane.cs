using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>What of an outline lies on one side of a straight line.</summary>
internal static class HalfPlane
{
    /// <summary>A vertex so near the line is on it, mm.</summary>
    public const double NearMm = 1e-9;

    /// <summary>The part of which no point p has p · way above a limit: one outline where the line meets it in two places.</summary>
    public static ImmutableArray<Vec2> Of(IReadOnlyList<Vec2> outline, Vec2 way, double limit)
    {
        ImmutableArray<Vec2>.Builder cut = ImmutableArray.CreateBuilder<Vec2>(outline.Count + 2);
        for (int i = 0; i < outline.Count; i++)
        {
            Vec2 a = outline[i],
                b = outline[(i + 1) % outline.Count];
            double over = a.Dot(way) - limit,
                next = b.Dot(way) - limit;
            if (over <= NearMm)
            {
                cut.Add(a);
            }

            if ((over > NearMm && next < -NearMm) || (over < -NearMm && next > NearMm))
            {
                cut.Add(a + (over / (over - next) * (b - a)));
            }
        }

        return cut.ToImmutable();
    }
}
