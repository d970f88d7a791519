using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Layout;

/// <summary>Small questions about lines and shapes on paper, where a thousandth of a millimetre does not matter.</summary>
public static class Segments
{
    /// <summary>The part of a line inside an upright box, or null (Liang and Barsky 1984, from memory).</summary>
    public static (Vec2 From, Vec2 To)? Clip(Vec2 a, Vec2 b, Box box)
    {
        Vec2 d = b - a;
        double enter = 0,
            leave = 1;
        return
            Limit(-d.X, a.X - box.Left)
            && Limit(d.X, box.Right - a.X)
            && Limit(-d.Y, a.Y - box.Bottom)
            && Limit(d.Y, box.Top - a.Y)
            ? (a + (enter * d), a + (leave * d))
            : null;

        bool Limit(double towards, double room)
        {
            if (towards == 0)
            {
                return room >= 0;
            }

            double at = room / towards;
            if (towards < 0)
            {
                enter = Math.Max(enter, at);
            }
            else
            {
                leave = Math.Min(leave, at);
            }

            return enter < leave;
        }
    }

    /// <summary>A chain clipped to a box: the pieces that are left, each with at least two points.</summary>
    public static IEnumerable<List<Vec2>> Clip(IReadOnlyList<Vec2> chain, Box box, bool closed)
    {
        List<Vec2> piece = [];
        int count = closed ? chain.Count : chain.Count - 1;
        for (int i = 0; i < count; i++)
        {
            if (Clip(chain[i], chain[(i + 1) % chain.Count], box) is not { } part)
            {
                continue;
            }

            if (piece.Count > 0 && piece[^1].ChordTo(part.From) > 1e-9)
            {
                yield return piece;
                piece = [];
            }

            if (piece.Count == 0)
            {
                piece.Add(part.From);
            }

            piece.Add(part.To);
        }

        if (piece.Count > 1)
        {
            yield return piece;
        }
    }

    /// <summary>Whether two stretches cross or touch.</summary>
    public static bool Meet(Vec2 a, Vec2 b, Vec2 c, Vec2 d)
    {
        Vec2 ab = b - a,
            cd = d - c;
        double across = ab.Cross(cd);
        if (across == 0)
        {
            return false;
        }

        double s = (c - a).Cross(cd) / across,
            t = (c - a).Cross(ab) / across;
        return s is >= 0 and <= 1 && t is >= 0 and <= 1;
    }

    /// <summary>The point of a chain at x, walking along it; null where it does not reach there.</summary>
    public static double? YAt(IReadOnlyList<Vec2> chain, double x)
    {
        for (int i = 1; i < chain.Count; i++)
        {
            Vec2 a = chain[i - 1],
                b = chain[i];
            if ((a.X <= x && x <= b.X) || (b.X <= x && x <= a.X))
            {
                return a.X == b.X ? a.Y : a.Y + ((x - a.X) / (b.X - a.X) * (b.Y - a.Y));
            }
        }

        return null;
    }

    /// <summary>The upright box around a lettering, what hangs below the baseline included.</summary>
    public static Box Around(Lettering text)
    {
        Vec2 along = text.Along(),
            foot = text.LeftEnd() - (0.3 * text.HeightMm * along.Left()),
            width = text.WidthMm() * along,
            height = 1.3 * text.HeightMm * along.Left();
        return Box.Around([foot, foot + width, foot + width + height, foot + height]);
    }
}
