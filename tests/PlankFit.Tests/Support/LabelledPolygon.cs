using PlankFit.Geometry.Primitives;

namespace PlankFit.Tests.Support;

/// <summary>What a stretch of a plank's boundary is.</summary>
internal enum Stretch
{
    Stem,
    Chine,
    Transom,
    Keel,
    ForwardSeam,
    AfterSeam,
}

/// <summary>A convex polygon, counter-clockwise; each edge, from its vertex to the next, remembers what it lies on.</summary>
internal sealed record LabelledPolygon(IReadOnlyList<(Vec2 At, Stretch On)> Corners)
{
    /// <summary>The part on the inner side of the line { p : outward · p = reach }; the cut is labelled.</summary>
    public LabelledPolygon Clip(Vec2 outward, double reach, Stretch label)
    {
        List<(Vec2, Stretch)> kept = [];
        for (int i = 0; i < Corners.Count; i++)
        {
            (Vec2 a, Stretch on) = Corners[i];
            Vec2 b = Corners[(i + 1) % Corners.Count].At;
            double outA = outward.Dot(a) - reach,
                outB = outward.Dot(b) - reach;
            Vec2 Cross() => a + (outA / (outA - outB) * (b - a));
            if (outA <= 0)
            {
                kept.Add((a, on));
                if (outB > 0)
                {
                    kept.Add((Cross(), label));
                }
            }
            else if (outB < 0)
            {
                kept.Add((Cross(), on));
            }
        }

        return new(kept);
    }

    public IEnumerable<(Stretch On, Vec2 From, Vec2 To)> Edges =>
        Corners.Select((c, i) => (c.On, c.At, Corners[(i + 1) % Corners.Count].At));

    public (Vec2 From, Vec2 To)? Edge(Stretch on) =>
        Edges.Where(e => e.On == on).Select(e => ((Vec2, Vec2)?)(e.From, e.To)).FirstOrDefault();

    public double Area => 0.5 * Edges.Sum(e => e.From.Cross(e.To));

    /// <summary>The same polygon with no edge longer than this; nothing but the number of vertices changes.</summary>
    public LabelledPolygon Divided(double? maxChordMm)
    {
        if (maxChordMm is not { } most)
        {
            return this;
        }

        List<(Vec2, Stretch)> corners = [];
        foreach ((Stretch on, Vec2 from, Vec2 to) in Edges)
        {
            int parts = (int)Math.Ceiling(from.ChordTo(to) / most);
            for (int k = 0; k < parts; k++)
            {
                corners.Add((from + ((double)k / parts * (to - from)), on));
            }
        }

        return new(corners);
    }

    /// <summary>Beginning at the vertex with the least n, the most inboard where several share it.</summary>
    public LabelledPolygon FromLeastN()
    {
        double least = Corners.Min(c => c.At.Y);
        int first = Enumerable
            .Range(0, Corners.Count)
            .Where(i => Corners[i].At.Y < least + 1e-7)
            .MinBy(i => Corners[i].At.X);
        return new([.. Corners.Skip(first), .. Corners.Take(first)]);
    }
}
