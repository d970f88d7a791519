using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Fastenings;

/// <summary>Lines with the vertices left out that a fastening does not feel.</summary>
internal static class Lines
{
    /// <summary>A vertex nearer than this to the chord of those kept is left out, mm; rules are widened by as much.</summary>
    public const double ThinMm = 0.02;

    public static Vec2[] Thinned(IReadOnlyList<Vec2> line)
    {
        if (line.Count < 3)
        {
            return [.. line];
        }

        var kept = new List<Vec2> { line[0] };
        int from = 0;
        while (from < line.Count - 1)
        {
            // As far as the chord carries, looked for in doubling steps.
            int to = from + 1;
            for (
                int step = 1;
                from + step < line.Count && Carries(line, from, from + step);
                step *= 2
            )
            {
                to = from + step;
            }

            for (int next = to + 1; next < line.Count && Carries(line, from, next); next++)
            {
                to = next;
            }

            kept.Add(line[to]);
            from = to;
        }

        return [.. kept];
    }

    private static bool Carries(IReadOnlyList<Vec2> line, int from, int to)
    {
        Vec2 chord = line[to] - line[from];
        double length = chord.Norm;
        for (int i = from + 1; i < to; i++)
        {
            Vec2 off = line[i] - line[from];
            double along = length > 0 ? off.Dot(chord) / length : 0,
                across = length > 0 ? Math.Abs(chord.Cross(off)) / length : off.Norm;
            if (across > ThinMm || along < -ThinMm || along > length + ThinMm)
            {
                return false;
            }
        }

        return true;
    }
}
