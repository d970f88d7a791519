using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Planks;

/// <summary>
/// Cutting a shape off along a line that is straight or nearly so, carried straight on past its ends. The line is taken as a height over its own chord, which a
/// sawn end always is. After Sutherland and Hodgman's clipping by a half-plane (from memory), with the cut following the line.
/// </summary>
internal static class LineClip
{
    /// <summary>What is left of a counter-clockwise shape on the inner side of the line.</summary>
    public static List<Vec2> Cut(List<Vec2> shape, IReadOnlyList<Vec2> line, Vec2 outward)
    {
        var axis = new Axis(line, outward);
        var kept = new List<Vec2>(shape.Count + line.Count);
        double? leftAt = null;
        double? firstEntry = null;
        for (int i = 0; i < shape.Count; i++)
        {
            Vec2 a = shape[i],
                b = shape[(i + 1) % shape.Count];
            double fa = axis.Beyond(a),
                fb = axis.Beyond(b);
            if (fa <= 0)
            {
                kept.Add(a);
            }

            if (fa <= 0 == fb <= 0)
            {
                continue;
            }

            Vec2 meet = axis.Meet(a, fa, b, fb);
            if (fa <= 0)
            {
                leftAt = axis.Along(meet);
                kept.Add(meet);
            }
            else
            {
                if (leftAt is { } from)
                {
                    kept.AddRange(axis.Between(from, axis.Along(meet)));
                }
                else
                {
                    // The walk began outside: the cut that leads here is closed at the end.
                    firstEntry = axis.Along(meet);
                    kept.Insert(0, meet);
                    leftAt = null;
                    continue;
                }

                kept.Add(meet);
                leftAt = null;
            }
        }

        if (leftAt is { } open && firstEntry is { } entry)
        {
            kept.AddRange(axis.Between(open, entry));
        }

        return kept;
    }

    /// <summary>
    /// The line that all of them lie inside of: one of them where it lies outermost all along, else, where they change places, the greatest height at every place at
    /// which any of them has a point. Between two places that is the chord of what curves outward, and so lies outside as well.
    /// </summary>
    public static IReadOnlyList<Vec2> Outermost(
        IReadOnlyList<IReadOnlyList<Vec2>> lines,
        Vec2 outward
    )
    {
        const double same = 1e-9;
        Axis[] axes = [.. lines.Select(l => new Axis(l, outward))];
        for (int i = 0; i < lines.Count; i++)
        {
            if (lines.All(l => l.All(p => axes[i].Beyond(p) <= same)))
            {
                return lines[i];
            }
        }

        // Heights are taken over one chord, whatever line they belong to.
        Vec2 along = -1 * outward.Left();
        Vec2 At(double place)
        {
            double height = lines.Max(l => HeightOver(l, along, outward, place));
            return (place * along) + (height * outward);
        }

        double[] places = [.. lines.SelectMany(l => l).Select(p => p.Dot(along)).Order()];
        var made = new List<Vec2>();
        foreach (double place in places)
        {
            if (made.Count == 0 || place - made[^1].Dot(along) > 1e-6)
            {
                made.Add(At(place));
            }
        }

        return made;
    }

    /// <summary>How far out a line stands at a place, carried straight on past its ends.</summary>
    private static double HeightOver(
        IReadOnlyList<Vec2> line,
        Vec2 along,
        Vec2 outward,
        double place
    )
    {
        bool rising = line[^1].Dot(along) >= line[0].Dot(along);
        int Nth(int i) => rising ? i : line.Count - 1 - i;
        int k = 0;
        while (k < line.Count - 2 && line[Nth(k + 1)].Dot(along) < place)
        {
            k++;
        }

        Vec2 a = line[Nth(k)],
            b = line[Nth(k + 1)];
        double run = (b - a).Dot(along);
        double slope = run > 1e-9 ? (b - a).Dot(outward) / run : 0;
        return a.Dot(outward) + (slope * (place - a.Dot(along)));
    }

    /// <summary>The line over its chord: places along it and heights outward from it.</summary>
    private sealed class Axis
    {
        private readonly Vec2 origin,
            along,
            outward;
        private readonly Vec2[] points; // by rising place
        private readonly double[] place,
            height;

        public Axis(IReadOnlyList<Vec2> line, Vec2 outward)
        {
            origin = line[0];
            Vec2 chord = line[^1] - line[0];

            // Square to outward, so that rising places run one way for all lines of an end.
            along = chord.Norm > 1e-9 ? chord.Unit() : outward.Left();
            Vec2 left = along.Left();
            this.outward = left.Dot(outward) > 0 ? left : -1 * left;
            points = [.. line];
            place = Array.ConvertAll(points, p => along.Dot(p - origin));
            height = Array.ConvertAll(points, p => this.outward.Dot(p - origin));
        }

        public double Along(Vec2 p) => along.Dot(p - origin);

        /// <summary>How far a point lies beyond the line, outward.</summary>
        public double Beyond(Vec2 p) => outward.Dot(p - origin) - Height(Along(p));

        /// <summary>Where the side a to b crosses the line, given how far both lie beyond it; the line's height is nearly linear, so that few secants do.</summary>
        public Vec2 Meet(Vec2 a, double fa, Vec2 b, double fb)
        {
            double low = 0,
                high = 1,
                fLow = fa,
                fHigh = fb;
            for (int i = 0; i < 60 && high - low > 1e-15; i++)
            {
                double t =
                    i % 3 == 2 ? (low + high) / 2 : low + ((high - low) * fLow / (fLow - fHigh));
                double f = Beyond(a + (t * (b - a)));
                if (Math.Abs(f) < 1e-12)
                {
                    return a + (t * (b - a));
                }

                if (f <= 0 == fLow <= 0)
                {
                    (low, fLow) = (t, f);
                }
                else
                {
                    (high, fHigh) = (t, f);
                }
            }

            return a + ((low + high) / 2 * (b - a));
        }

        /// <summary>The line's own points strictly between two places, in the order from one to the other.</summary>
        public IEnumerable<Vec2> Between(double from, double to)
        {
            double low = Math.Min(from, to) + 1e-9,
                high = Math.Max(from, to) - 1e-9;
            IEnumerable<Vec2> inside = points.Where((_, i) => place[i] > low && place[i] < high);
            return from <= to ? inside : inside.Reverse();
        }

        private double Height(double at)
        {
            int n = points.Length;
            if (n == 2 || at <= place[0] || at >= place[^1])
            {
                // Past its ends the line goes on as its last stretches point.
                int i = n == 2 || at <= place[0] ? 0 : n - 2;
                double run = place[i + 1] - place[i];
                double slope = run > 1e-9 ? (height[i + 1] - height[i]) / run : 0;
                return height[i] + (slope * (at - place[i]));
            }

            int low = 0,
                high = n - 2;
            while (low < high)
            {
                int middle = (low + high + 1) >> 1;
                (low, high) = place[middle] <= at ? (middle, high) : (low, middle - 1);
            }

            double part = (at - place[low]) / (place[low + 1] - place[low]);
            return height[low] + (part * (height[low + 1] - height[low]));
        }
    }
}
