using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Development;

/// <summary>
/// What a flat sheet must take up at one point to lie on the surface: length on the surface over length in the flat, less one.
/// Positive is stretched, negative crowded.
/// </summary>
/// <param name="U">Where, on the surface; V likewise; Flat where it lies in the flat, mm.</param>
/// <param name="Greatest">The greatest principal strain with its sign, by algebra; Least the least.</param>
/// <param name="Direction">Unit direction in the flat of the principal strain that is the larger by size.</param>
public readonly record struct StrainSample(
    double U,
    double V,
    Vec2 Flat,
    double Greatest,
    double Least,
    Vec2 Direction
)
{
    /// <summary>The principal strain that is the larger by size, with its sign.</summary>
    public double Leading => Math.Abs(Greatest) >= Math.Abs(Least) ? Greatest : Least;
}

/// <summary>Strain on a grid over the panel: Columns + 1 samples along by Rows + 1 across, row by row across first.</summary>
public sealed record StrainField(int Columns, int Rows, ImmutableArray<StrainSample> Samples)
{
    public StrainSample this[int column, int row] => Samples[(column * (Rows + 1)) + row];

    public StrainSample Worst => Samples.MaxBy(s => Math.Abs(s.Leading));

    internal static StrainField Of(
        SurfacePatch patch,
        IFlatMap map,
        int columns,
        int rows,
        double pointMm
    )
    {
        ImmutableArray<StrainSample>.Builder samples = ImmutableArray.CreateBuilder<StrainSample>(
            (columns + 1) * (rows + 1)
        );
        // Where the edges meet in a point there is no section to sample: a little inside.
        double first = patch.ClosesAt(patch.UFrom, pointMm) ? 0.02 / columns : 0,
            last = patch.ClosesAt(patch.UTo, pointMm) ? 0.02 / columns : 0;
        for (int i = 0; i <= columns; i++)
        {
            double s = Math.Clamp(i / (double)columns, first, 1 - last),
                u = patch.UFrom + (s * patch.URange);
            for (int j = 0; j <= rows; j++)
            {
                samples.Add(At(patch, map, u, patch.V(u, j / (double)rows)));
            }
        }

        return new(columns, rows, samples.MoveToImmutable());
    }

    /// <summary>The strain at one point, from the surface's metric and the flat's rates.</summary>
    public static StrainSample At(SurfacePatch patch, IFlatMap map, double u, double v)
    {
        SurfacePoint x = patch.Surface.At(u, v);
        (Vec2 du, Vec2 dv) = map.RatesAt(u, v);
        double e = x.E,
            skew = x.F / e,
            rest = x.G - (x.F * skew);
        Vec2 first = du / Math.Sqrt(e),
            second = (dv - (skew * du)) / Math.Sqrt(rest);
        // First and second are the images of two square unit tangents; the flat's stretch is the root of J Jt.
        double a = (first.X * first.X) + (second.X * second.X),
            b = (first.X * first.Y) + (second.X * second.Y),
            c = (first.Y * first.Y) + (second.Y * second.Y),
            mean = 0.5 * (a + c),
            half = 0.5 * (a - c),
            radius = Math.Sqrt((half * half) + (b * b)),
            angle = 0.5 * Math.Atan2(b, half);
        double greatest = (1 / Math.Sqrt(mean - radius)) - 1,
            least = (1 / Math.Sqrt(mean + radius)) - 1;
        // The sheet is stretched most where the flat is shortest: square to the greater eigenvector.
        Vec2 shortest = new(-Math.Sin(angle), Math.Cos(angle));
        Vec2 direction = Math.Abs(greatest) >= Math.Abs(least) ? shortest : shortest.Left();
        return new(u, v, map.At(u, v), greatest, least, direction);
    }
}
