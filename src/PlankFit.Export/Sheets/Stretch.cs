using PlankFit.Geometry.Primitives;

namespace PlankFit.Export.Sheets;

/// <summary>What of a thing lies between two upright lines.</summary>
internal static class Stretch
{
    /// <summary>A closed shape, clipped at each of them in turn (Sutherland and Hodgman 1974, from memory): sides that run to and fro along a line may stand for parts that it severs.</summary>
    public static IReadOnlyList<Vec2> Of(IReadOnlyList<Vec2> shape, double fromX, double toX) =>
        Beyond(Beyond(shape, fromX, 1), toX, -1);

    /// <summary>The run of a chain from where it first comes between them to where it last is.</summary>
    public static IReadOnlyList<Vec2> OfChain(
        IReadOnlyList<Vec2> chain,
        double fromX,
        double toX
    ) => chain.All(p => p.X >= fromX && p.X <= toX) ? chain : Chain(chain, fromX, toX);

    private static List<Vec2> Chain(IReadOnlyList<Vec2> chain, double fromX, double toX)
    {
        var found = new List<Vec2>();
        for (int i = 1; i < chain.Count; i++)
        {
            Vec2 a = chain[i - 1],
                b = chain[i];
            if (Math.Max(a.X, b.X) < fromX || Math.Min(a.X, b.X) > toX)
            {
                continue;
            }

            if (found.Count == 0)
            {
                found.Add(Pulled(a, b, fromX, toX));
            }

            found.Add(Pulled(b, a, fromX, toX));
        }

        return found;
    }

    /// <summary>A point, or where its side to another comes between the lines.</summary>
    private static Vec2 Pulled(Vec2 p, Vec2 towards, double fromX, double toX)
    {
        double x = Math.Clamp(p.X, fromX, toX);
        return x == p.X ? p : p + ((x - p.X) / (towards.X - p.X) * (towards - p));
    }

    private static List<Vec2> Beyond(IReadOnlyList<Vec2> shape, double x, int way)
    {
        var found = new List<Vec2>();
        for (int i = 0; i < shape.Count; i++)
        {
            Vec2 a = shape[i],
                b = shape[(i + 1) % shape.Count];
            bool from = way * (a.X - x) >= 0,
                to = way * (b.X - x) >= 0;
            if (from)
            {
                found.Add(a);
            }

            if (from != to)
            {
                found.Add(a + ((x - a.X) / (b.X - a.X) * (b - a)));
            }
        }

        return found;
    }
}
