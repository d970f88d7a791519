using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Tiling;

/// <summary>An upright rectangle in a drawing's own millimetres, and what is left of a line or an area inside it.</summary>
public readonly record struct Window(Vec2 Least, Vec2 Most)
{
    public double Width => Most.X - Least.X;

    public double Height => Most.Y - Least.Y;

    public bool Holds(Vec2 p) => p.X >= Least.X && p.X <= Most.X && p.Y >= Least.Y && p.Y <= Most.Y;

    /// <summary>
    /// The pieces of a line inside, cut exactly at the sides, in the line's order. A line that lies wholly inside comes back whole and closed as it was.
    /// Source of the cutting of a segment: Liang and Barsky 1984, "A new concept and method for line clipping".
    /// </summary>
    public List<(ImmutableArray<Vec2> Points, bool Closed)> Cut(
        ImmutableArray<Vec2> points,
        bool closed
    )
    {
        Window window = this;
        if (points.All(window.Holds))
        {
            return [(points, closed)];
        }

        var pieces = new List<List<Vec2>>();
        bool joined = false; // the last piece ends where the next segment begins
        int count = points.Length - (closed ? 0 : 1);
        for (int i = 0; i < count; i++)
        {
            (Vec2 from, Vec2 to) = (points[i], points[(i + 1) % points.Length]);
            if (Inside(from, to) is not var (enter, leave))
            {
                joined = false;
                continue;
            }

            if (!joined || enter > 0)
            {
                pieces.Add([At(from, to, enter)]);
            }

            pieces[^1].Add(At(from, to, leave));
            joined = leave == 1;
        }

        // A closed line that begins inside: its last piece runs on into its first.
        if (closed && joined && pieces.Count > 1 && pieces[0][0] == points[0])
        {
            pieces[^1].AddRange(pieces[0].Skip(1));
            pieces[0] = pieces[^1];
            pieces.RemoveAt(pieces.Count - 1);
        }

        return [.. pieces.Select(p => (p.ToImmutableArray(), false))];
    }

    /// <summary>
    /// An area cut to the window, as one polygon; where the area falls apart, its parts are joined by lines along the window's sides, which a fill without an
    /// outline does not show. Source: Sutherland and Hodgman 1974, "Reentrant polygon clipping".
    /// </summary>
    public ImmutableArray<Vec2> CutArea(ImmutableArray<Vec2> area)
    {
        (Vec2 least, Vec2 most) = (Least, Most);
        ImmutableArray<Vec2> left = CutSide(area, p => p.X - least.X);
        ImmutableArray<Vec2> right = CutSide(left, p => most.X - p.X);
        ImmutableArray<Vec2> below = CutSide(right, p => p.Y - least.Y);
        return CutSide(below, p => most.Y - p.Y);
    }

    /// <summary>The part of a segment inside, as fractions of its length; null where none of it is.</summary>
    private (double Enter, double Leave)? Inside(Vec2 from, Vec2 to)
    {
        Vec2 along = to - from;
        ReadOnlySpan<double> towards = [-along.X, along.X, -along.Y, along.Y];
        ReadOnlySpan<double> room =
        [
            from.X - Least.X,
            Most.X - from.X,
            from.Y - Least.Y,
            Most.Y - from.Y,
        ];
        (double enter, double leave) = (0.0, 1.0);
        for (int side = 0; side < 4; side++)
        {
            if (towards[side] == 0)
            {
                if (room[side] < 0)
                {
                    return null;
                }
            }
            else if (towards[side] < 0)
            {
                enter = Math.Max(enter, room[side] / towards[side]);
            }
            else
            {
                leave = Math.Min(leave, room[side] / towards[side]);
            }
        }

        return enter < leave ? (enter, leave) : null;
    }

    private static Vec2 At(Vec2 from, Vec2 to, double part) =>
        part switch
        {
            0 => from,
            1 => to,
            _ => from + (part * (to - from)),
        };

    private static ImmutableArray<Vec2> CutSide(
        ImmutableArray<Vec2> area,
        Func<Vec2, double> inside
    )
    {
        ImmutableArray<Vec2>.Builder kept = ImmutableArray.CreateBuilder<Vec2>(area.Length + 4);
        for (int i = 0; i < area.Length; i++)
        {
            (Vec2 from, Vec2 to) = (area[i], area[(i + 1) % area.Length]);
            (double a, double b) = (inside(from), inside(to));
            if (a >= 0)
            {
                kept.Add(from);
            }

            if ((a < 0) != (b < 0) && a != 0 && b != 0)
            {
                kept.Add(from + (a / (a - b) * (to - from)));
            }
        }

        return kept.DrainToImmutable();
    }
}
