using System.Collections.Immutable;
using PlankFit.Export.Shown;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Patterns;

/// <summary>Where words may stand on a plank on which other things are marked.</summary>
internal static class ClearPlace
{
    /// <summary>A mark's own room, to every side, mm.</summary>
    private const double MarkMm = 1.5 * 2.2;

    /// <summary>Steps away from a place, the nearest first.</summary>
    private static readonly ImmutableArray<Vec2> Around =
    [
        .. Enumerable
            .Range(-20, 41)
            .SelectMany(x => Enumerable.Range(-6, 13).Select(y => new Vec2(6 * x, 6 * y)))
            .OrderBy(v => v.Norm),
    ];

    /// <summary>The place nearest to one wanted where words of a size stand on no mark; the one wanted where there is none near.</summary>
    /// <param name="half">Half the words' width and height, mm.</param>
    public static Vec2 Of(Plank plank, IEnumerable<IOnPlanks> added, Vec2 wanted, Vec2 half)
    {
        Vec2[] marks = [.. added.SelectMany(a => a.Places(plank))];
        if (marks.Length == 0)
        {
            return wanted;
        }

        Vec2[] net = [.. plank.FlatNet];
        bool IsFree(Vec2 at) =>
            marks.All(m =>
                Math.Abs(m.X - at.X) > half.X + MarkMm || Math.Abs(m.Y - at.Y) > half.Y + MarkMm
            )
            && new[] { -1, 1 }.All(x =>
                new[] { -1, 1 }.All(y =>
                    FlatPolygon.Holds(net, at + new Vec2(x * half.X, y * half.Y))
                )
            );
        foreach (Vec2 away in Around)
        {
            if (IsFree(wanted + away))
            {
                return wanted + away;
            }
        }

        return wanted;
    }
}
