using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Skia;

/// <summary>Cuts a line into its dashes, so that a dashed line in a PDF is a handful of strokes and not thousands of filled slivers.</summary>
public static class Dashes
{
    /// <param name="points">At least one point; a closed line does not repeat its first.</param>
    /// <param name="dashesMm">On, off, on, ... in mm, not negative, their sum positive; an odd number of them is gone through twice.</param>
    /// <returns>The drawn pieces in order, each of two points or more, corners kept.</returns>
    public static List<List<Vec2>> Cut(
        ImmutableArray<Vec2> points,
        bool closed,
        ImmutableArray<double> dashesMm
    )
    {
        var pieces = new List<List<Vec2>>();
        List<Vec2>? piece = [points[0]];
        int turn = 0;
        double left = dashesMm[0];
        for (int i = 1; i < points.Length + (closed ? 1 : 0); i++)
        {
            (Vec2 from, Vec2 to) = (points[i - 1], points[i % points.Length]);
            double length = from.ChordTo(to);
            double done = 0.0;
            while (length - done > left)
            {
                done += left;
                Vec2 at = from + (done / length * (to - from));
                piece?.Add(at);
                Keep(piece);
                turn++;
                left = dashesMm[turn % dashesMm.Length];
                piece = turn % 2 == 0 ? [at] : null;
            }

            left -= length - done;
            piece?.Add(to);
        }

        Keep(piece);
        return pieces;

        void Keep(List<Vec2>? made)
        {
            if (made is { Count: > 1 })
            {
                pieces.Add(made);
            }
        }
    }
}
