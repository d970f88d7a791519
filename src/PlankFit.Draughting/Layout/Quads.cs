using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Layout;

/// <summary>Turned rectangles around lettering, and what meets them.</summary>
public static class Quads
{
    /// <summary>The four corners around a lettering as it is turned, what hangs below its baseline included, with room to spare.</summary>
    public static Vec2[] Around(Lettering text, double clearMm)
    {
        Vec2 along = text.Along(),
            up = along.Left(),
            foot = text.LeftEnd() - (((0.3 * text.HeightMm) + clearMm) * up) - (clearMm * along),
            width = (text.WidthMm() + (2 * clearMm)) * along,
            height = ((1.3 * text.HeightMm) + (2 * clearMm)) * up;
        return [foot, foot + width, foot + width + height, foot + height];
    }

    /// <summary>The same without what would hang below its baseline where nothing does: figures mostly.</summary>
    public static Vec2[] Tight(Lettering text, double clearMm)
    {
        Vec2[] around = Around(text, clearMm);
        if (text.Text.IndexOfAny([.. "gjpqy,;()/Q"]) >= 0)
        {
            return around;
        }

        Vec2 up = 0.3 * text.HeightMm * text.Along().Left();
        return [around[0] + up, around[1] + up, around[2], around[3]];
    }

    /// <summary>Whether two convex shapes have a place in common: no side of either parts them.</summary>
    public static bool Overlap(Vec2[] a, Vec2[] b) => !Parts(a, b) && !Parts(b, a);

    /// <summary>Whether a line runs through or into a convex shape.</summary>
    public static bool Struck(Polyline line, Vec2[] quad)
    {
        int n = line.Points.Length,
            sides = line.Closed ? n : n - 1;
        for (int i = 0; i < sides; i++)
        {
            if (Part(line.Points[i], line.Points[(i + 1) % n], quad) is not null)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a stretch runs through or into a convex shape.</summary>
    public static bool Struck(Vec2 a, Vec2 b, Vec2[] quad) => Part(a, b, quad) is not null;

    /// <summary>What is left of a chain outside all the shapes: pieces of two points or more.</summary>
    public static IEnumerable<List<Vec2>> Outside(
        IReadOnlyList<Vec2> chain,
        IReadOnlyList<Vec2[]> quads
    )
    {
        List<Vec2> piece = [chain[0]];
        for (int i = 0; i + 1 < chain.Count; i++)
        {
            Vec2 a = chain[i],
                side = chain[i + 1] - a;
            double at = 0;
            foreach (
                (double enter, double leave) in quads
                    .Select(q => Part(a, chain[i + 1], q))
                    .OfType<(double, double)>()
                    .OrderBy(p => p.Item1)
            )
            {
                if (enter > at)
                {
                    piece.Add(a + (enter * side));
                    yield return piece;
                    piece = [];
                }
                else if (piece.Count > 1)
                {
                    yield return piece;
                    piece = [];
                }

                at = Math.Max(at, leave);
                piece = [a + (at * side)];
            }

            if (at < 1)
            {
                piece.Add(chain[i + 1]);
            }
        }

        if (piece.Count > 1)
        {
            yield return piece;
        }
    }

    /// <summary>The part of a stretch inside a counter-clockwise convex shape (Cyrus and Beck 1978, from memory); null where there is none.</summary>
    private static (double Enter, double Leave)? Part(Vec2 a, Vec2 b, Vec2[] quad)
    {
        Vec2 d = b - a;
        double enter = 0,
            leave = 1;
        for (int i = 0; i < quad.Length; i++)
        {
            Vec2 side = quad[(i + 1) % quad.Length] - quad[i];
            double inside = side.Cross(a - quad[i]),
                towards = side.Cross(d);
            if (towards == 0)
            {
                if (inside < 0)
                {
                    return null;
                }
            }
            else if (towards > 0)
            {
                enter = Math.Max(enter, -inside / towards);
            }
            else
            {
                leave = Math.Min(leave, -inside / towards);
            }
        }

        return enter < leave ? (enter, leave) : null;
    }

    /// <summary>Whether a side of the first has all of the second beyond it.</summary>
    private static bool Parts(Vec2[] a, Vec2[] b)
    {
        for (int i = 0; i < a.Length; i++)
        {
            Vec2 side = a[(i + 1) % a.Length] - a[i];
            if (b.All(p => side.Cross(p - a[i]) < 0))
            {
                return true;
            }
        }

        return false;
    }
}
