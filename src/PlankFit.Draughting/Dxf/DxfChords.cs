using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Dxf;

/// <summary>
/// Lines with as few vertices as a cutter needs: chords within <see cref="WithinMm"/> of the shape and the shape's corners where they are. Of two corners nearer
/// to each other than <see cref="ApartMm"/> the blunter goes, unless that would cut off more than a chord may.
/// </summary>
public static class DxfChords
{
    /// <summary>How far a chord may lie off the shape, mm: no saw or router follows less. Our own, no source.</summary>
    public const double WithinMm = 0.01;

    /// <summary>The least from one vertex to the next, mm: our own, no source.</summary>
    public const double ApartMm = 0.05;

    /// <summary>A vertex left out may lie this far off the chord: a drawing's own chords are within 0.002 mm of the shape, and coordinates are rounded.</summary>
    private const double OffMm = 0.0079;

    /// <summary>A turn of more than 5 degrees is a corner: chords within 0.002 mm of a curve turn so much only on a radius of 2 mm (our own, no source).</summary>
    private const double CornerRadians = 5 * Math.PI / 180;

    internal static IReadOnlyList<Vec2> Of(IReadOnlyList<Vec2> points, bool closed)
    {
        if (points.Count < 3)
        {
            return points;
        }

        List<int> corners = Corners(points, closed);
        if (closed && corners.Count < 2)
        {
            return Thinning.Closed(points, OffMm);
        }

        List<Vec2> thinned = [];
        for (int k = 0; k < corners.Count - (closed ? 0 : 1); k++)
        {
            int from = corners[k],
                to = k + 1 < corners.Count ? corners[k + 1] : corners[0] + points.Count;
            Vec2[] run =
            [
                .. Enumerable.Range(from, to - from + 1).Select(i => points[i % points.Count]),
            ];
            thinned.AddRange(Thinning.Open(run, OffMm).SkipLast(1));
        }

        if (!closed)
        {
            thinned.Add(points[^1]);
        }

        // Never down to a line.
        return closed && thinned.Count < 3 ? points : thinned;
    }

    /// <summary>Where the line turns, and the ends of an open one; none nearer to another than vertices are to be.</summary>
    private static List<int> Corners(IReadOnlyList<Vec2> points, bool closed)
    {
        int last = points.Count - 1;
        double TurnAt(int i) =>
            !closed && (i == 0 || i == last)
                ? double.PositiveInfinity
                : Turn(points[i == 0 ? last : i - 1], points[i], points[i == last ? 0 : i + 1]);
        List<int> kept = [];
        foreach (int i in Enumerable.Range(0, points.Count).Where(i => TurnAt(i) > CornerRadians))
        {
            while (
                kept.Count > 0
                && points[kept[^1]].ChordTo(points[i]) < ApartMm
                && TurnAt(kept[^1]) < TurnAt(i)
            )
            {
                kept.RemoveAt(kept.Count - 1);
            }

            bool end = !closed && i == last;
            if (end || kept.Count == 0 || points[kept[^1]].ChordTo(points[i]) >= ApartMm)
            {
                kept.Add(i);
            }
        }

        if (closed && kept.Count > 1 && points[kept[0]].ChordTo(points[kept[^1]]) < ApartMm)
        {
            kept.RemoveAt(TurnAt(kept[0]) < TurnAt(kept[^1]) ? 0 : kept.Count - 1);
        }

        return kept;
    }

    private static double Turn(Vec2 before, Vec2 at, Vec2 after)
    {
        Vec2 came = at - before,
            goes = after - at;
        return Math.Abs(Math.Atan2(came.Cross(goes), came.Dot(goes)));
    }
}
