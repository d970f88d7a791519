using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;

namespace PlankFit.Planking.Hulls;

/// <summary>
/// A line of the table with its unknown cells between first and last value filled by a spline along the hull. Beyond its first and last value the line
/// does not exist.
/// </summary>
internal sealed class FilledLine
{
    private readonly Vec3?[] points;

    private FilledLine(Vec3?[] points) => this.points = points;

    public bool Has(int station) => points[station] is not null;

    public Vec3 At(int station) => points[station]!.Value;

    public static FilledLine From(OffsetTable table, OffsetLine line)
    {
        int n = table.Stations.Length;
        double?[] x =
        [
            .. Enumerable
                .Range(0, n)
                .Select(i => line.PositionsMm.IsDefaultOrEmpty ? null : line.PositionsMm[i]),
        ];
        double?[] xs =
        [
            .. Enumerable.Range(0, n).Select(i => x[i] ?? table.Stations[i].PositionMm),
        ];
        double?[] y = Filled(xs, line.HalfBreadthsMm.AsSpan()),
            z = Filled(xs, line.HeightsMm.AsSpan());
        var points = new Vec3?[n];
        for (int i = 0; i < n; i++)
        {
            points[i] = y[i] is { } yi && z[i] is { } zi ? new Vec3(xs[i]!.Value, yi, zi) : null;
        }

        return new(points);
    }

    private static double?[] Filled(double?[] x, ReadOnlySpan<double?> y)
    {
        double?[] filled = y.ToArray();
        int[] known = [.. Enumerable.Range(0, filled.Length).Where(i => filled[i] is not null)];
        if (known.Length < 2 || known[^1] - known[0] + 1 == known.Length)
        {
            return filled;
        }

        var spline = CubicSpline.Through(
            [.. known.Select(i => x[i]!.Value)],
            [.. known.Select(i => filled[i]!.Value)]
        );
        for (int i = known[0]; i < known[^1]; i++)
        {
            filled[i] ??= spline.At(x[i]!.Value);
        }

        return filled;
    }
}
