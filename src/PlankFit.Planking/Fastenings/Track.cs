using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Fastenings;

/// <summary>A line on a flat plank along which fastenings are set, by its own length, mm.</summary>
internal sealed class Track
{
    private readonly Vec2[] points;
    private readonly double[] at;

    /// <summary>Runs from the end with the lesser s (the lesser n where both are abreast), whichever way it is given: both sides of the boat are then done alike.</summary>
    public Track(IEnumerable<Vec2> line)
    {
        points = [.. line];
        Vec2 run = points[^1] - points[0];
        if (Math.Abs(run.X) > 1e-3 ? run.X < 0 : run.Y < 0)
        {
            Array.Reverse(points);
        }

        at = new double[points.Length];
        for (int i = 1; i < points.Length; i++)
        {
            at[i] = at[i - 1] + points[i].ChordTo(points[i - 1]);
        }
    }

    public double LengthMm => at[^1];

    /// <summary>The place at a length along, moved to the left by an offset.</summary>
    public Vec2 At(double mm, double offsetMm = 0)
    {
        int i = Array.BinarySearch(at, mm);
        i = Math.Clamp(i < 0 ? ~i : i, 1, at.Length - 1);
        Vec2 side = points[i] - points[i - 1];
        double length = at[i] - at[i - 1];
        if (length <= 0)
        {
            return points[i];
        }

        Vec2 on = points[i - 1] + ((mm - at[i - 1]) / length * side);
        return offsetMm == 0 ? on : on + (offsetMm / length * side.Left());
    }
}
