using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Framing;

/// <summary>
/// A line of the table brought square to the table's surface: faired along the hull through its own points as the loft's lines are, then the nearest place of
/// the surface, so that it is the same line whether the table gives it on the outer or on the inner face.
/// </summary>
internal sealed class LineOnFace
{
    private readonly CubicSpline y,
        z;
    private readonly HullSurface hull;
    private Uv guess;

    private LineOnFace(CubicSpline y, CubicSpline z, HullSurface hull)
    {
        (this.y, this.z, this.hull) = (y, z, hull);
        guess = Nearest(PointAt(FromX));
    }

    public double FromX => y.From;
    public double ToX => y.To;

    public static LineOnFace Of(FramingSpec spec, string name, OffsetTable table, HullSurface hull)
    {
        OffsetLine line = table.Named(name);
        ImmutableArray<int> known = line.Known;
        double X(int i) =>
            (line.PositionsMm.IsDefaultOrEmpty ? null : line.PositionsMm[i])
            ?? table.Stations[i].PositionMm;
        double[] x = [.. known.Select(X)];
        return new(
            CubicSpline.Through(x, [.. known.Select(i => line.HalfBreadthsMm[i]!.Value)]),
            CubicSpline.Through(x, [.. known.Select(i => line.HeightsMm[i]!.Value)]),
            hull
        );
    }

    /// <summary>The place under the line at x; NaN where the surface has none.</summary>
    public Uv At(double x) => Foot(x) is { } foot ? guess = foot.Uv : new(double.NaN, double.NaN);

    /// <summary>How far the line lies off the table's surface at x, mm, positive outside; null where the surface has no place under it.</summary>
    public double? OffMm(double x) => Foot(x)?.HeightMm;

    private ClosestPoint.Result? Foot(double x) =>
        ClosestPoint.TryFind(hull.Surface, PointAt(x), guess, 1e-7, out ClosestPoint.Result foot)
            ? foot
            : null;

    private Vec3 PointAt(double x) => new(x, y.At(x), z.At(x));

    private Uv Nearest(Vec3 point)
    {
        LoftedSurface s = hull.Surface;
        return (
            from i in Enumerable.Range(0, 41)
            from j in Enumerable.Range(0, 9)
            let u = s.UFrom + ((s.UTo - s.UFrom) * (i + 0.02) / 40.1)
            let uv = new Uv(u, s.UpperV(u) * j / 8)
            orderby s.At(uv.U, uv.V).P.ChordTo(point)
            select uv
        ).First();
    }
}
