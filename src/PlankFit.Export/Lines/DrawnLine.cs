using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Hulls;

namespace PlankFit.Export.Lines;

/// <summary>A line of the table as a smooth curve in space: the spline by chord length through its known points.</summary>
internal sealed record DrawnLine(
    string Name,
    ImmutableArray<Vec3> Given,
    ImmutableArray<Vec3> Curve
)
{
    private const int PointsABay = 16;

    /// <summary>The line, or null where fewer than two of its points are known.</summary>
    public static DrawnLine? Of(OffsetTable table, OffsetLine line)
    {
        Vec3[] given =
        [
            .. line.Known.Select(i => new Vec3(
                OffsetRow.PositionMm(table, line, i),
                line.HalfBreadthsMm[i]!.Value,
                line.HeightsMm[i]!.Value
            )),
        ];
        if (given.Length < 2)
        {
            return null;
        }

        double[] t = new double[given.Length];
        for (int i = 1; i < t.Length; i++)
        {
            t[i] = t[i - 1] + Math.Max(given[i].ChordTo(given[i - 1]), 1e-6);
        }

        CubicSpline Of(Func<Vec3, double> part) =>
            CubicSpline.Through(t, Array.ConvertAll(given, p => part(p)));
        CubicSpline x = Of(p => p.X),
            y = Of(p => p.Y),
            z = Of(p => p.Z);
        ImmutableArray<Vec3>.Builder curve = ImmutableArray.CreateBuilder<Vec3>();
        for (int bay = 0; bay + 1 < t.Length; bay++)
        {
            for (int k = 0; k < PointsABay; k++)
            {
                double at = t[bay] + ((t[bay + 1] - t[bay]) * k / PointsABay);
                curve.Add(new(x.At(at), y.At(at), z.At(at)));
            }
        }

        curve.Add(given[^1]);
        return new(line.Name, [.. given], curve.ToImmutable());
    }
}
