using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Framing;

/// <summary>The part of a line that lies inside a flat outline, in one run.</summary>
internal static class RunInside
{
    /// <summary>A run shorter than this touches a corner and does not cross, mm.</summary>
    private const double ShortestMm = 0.2;

    /// <summary>From where it first enters to where it last leaves; empty where it does not cross.</summary>
    public static ImmutableArray<Vec2> Of(ImmutableArray<Vec2> line, ImmutableArray<Vec2> outline)
    {
        (Vec2 low, Vec2 high) = Around(outline);
        var cuts = new List<double> { 0, line.Length - 1 };
        for (int i = 0; i + 1 < line.Length; i++)
        {
            Vec2 a = line[i],
                along = line[i + 1] - a;
            if (BothOutside(a, line[i + 1], low, high))
            {
                continue;
            }

            for (int k = 0; k < outline.Length; k++)
            {
                Vec2 c = outline[k],
                    side = outline[(k + 1) % outline.Length] - c;
                double across = along.Cross(side);
                double p = (c - a).Cross(side) / across,
                    q = (c - a).Cross(along) / across;
                if (p is >= 0 and <= 1 && q is >= 0 and <= 1)
                {
                    cuts.Add(i + p);
                }
            }
        }

        cuts.Sort();
        double? from = null;
        double to = 0;
        for (int i = 0; i + 1 < cuts.Count; i++)
        {
            if (
                cuts[i + 1] > cuts[i]
                && FlatPolygon.Holds(outline, At(line, (cuts[i] + cuts[i + 1]) / 2))
            )
            {
                from ??= cuts[i];
                to = cuts[i + 1];
            }
        }

        return from is { } first && At(line, first).ChordTo(At(line, to)) > ShortestMm
            ? Between(line, first, to)
            : [];
    }

    private static (Vec2 Low, Vec2 High) Around(ImmutableArray<Vec2> outline)
    {
        Vec2 low = outline[0],
            high = outline[0];
        foreach (Vec2 p in outline)
        {
            low = new(Math.Min(low.X, p.X), Math.Min(low.Y, p.Y));
            high = new(Math.Max(high.X, p.X), Math.Max(high.Y, p.Y));
        }

        return (low, high);
    }

    private static bool BothOutside(Vec2 a, Vec2 b, Vec2 low, Vec2 high) =>
        Math.Max(a.X, b.X) < low.X
        || Math.Min(a.X, b.X) > high.X
        || Math.Max(a.Y, b.Y) < low.Y
        || Math.Min(a.Y, b.Y) > high.Y;

    private static Vec2 At(ImmutableArray<Vec2> line, double part)
    {
        int i = Math.Min((int)part, line.Length - 2);
        return line[i] + ((part - i) * (line[i + 1] - line[i]));
    }

    private static ImmutableArray<Vec2> Between(ImmutableArray<Vec2> line, double from, double to)
    {
        ImmutableArray<Vec2>.Builder run = ImmutableArray.CreateBuilder<Vec2>();
        run.Add(At(line, from));
        for (int i = (int)Math.Floor(from) + 1; i < to; i++)
        {
            if (line[i].ChordTo(run[^1]) > 1e-6)
            {
                run.Add(line[i]);
            }
        }

        Vec2 last = At(line, to);
        if (last.ChordTo(run[^1]) < 1e-6 && run.Count > 1)
        {
            run.RemoveAt(run.Count - 1);
        }

        run.Add(last);
        return run.ToImmutable();
    }
}
