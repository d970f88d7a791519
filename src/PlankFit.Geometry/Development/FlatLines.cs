using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Development;

/// <summary>Curves on a panel, carried into its flat.</summary>
public static class FlatLines
{
    /// <summary>
    /// A curve as a polyline whose chords lie within the tolerance of it, judged at the middle of every chord; both ends included.
    /// </summary>
    public static ImmutableArray<Vec2> Polyline(
        Func<double, Vec2> curve,
        double from,
        double to,
        double chordMm
    )
    {
        for (int n = 8; ; n *= 2)
        {
            Vec2[] points =
            [
                .. Enumerable
                    .Range(0, (2 * n) + 1)
                    .Select(k => curve(from + ((to - from) * k / (2 * n)))),
            ];
            double worst = 0;
            for (int k = 1; k < points.Length; k += 2)
            {
                Vec2 chord = points[k + 1] - points[k - 1];
                double off =
                    chord.Norm > 0
                        ? Math.Abs(chord.Cross(points[k] - points[k - 1])) / chord.Norm
                        : 0;
                worst = Math.Max(worst, off);
            }

            if (worst <= chordMm || n >= 512)
            {
                return [.. points.Where((_, k) => k % 2 == 0)];
            }
        }
    }

    /// <summary>The section u = constant, from the lower edge to the upper.</summary>
    public static ImmutableArray<Vec2> Section(
        SurfacePatch patch,
        IFlatMap map,
        double u,
        double chordMm
    ) => Polyline(t => map.At(u, patch.V(u, t)), 0, 1, chordMm);

    /// <summary>A polyline given on the surface, vertex for vertex.</summary>
    public static ImmutableArray<Vec2> Along(IFlatMap map, ImmutableArray<Uv> line) =>
        [.. line.Select(x => map.At(x.U, x.V))];

    /// <summary>The panel's boundary in the flat, counter-clockwise, first point not repeated.</summary>
    public static ImmutableArray<Vec2> Outline(
        SurfacePatch patch,
        IFlatMap map,
        double chordMm,
        double pointMm
    )
    {
        List<Vec2> all =
        [
            .. Polyline(u => map.At(u, patch.Lower(u)), patch.UFrom, patch.UTo, chordMm),
        ];
        if (!patch.ClosesAt(patch.UTo, pointMm))
        {
            all.AddRange(Section(patch, map, patch.UTo, chordMm)[1..]);
        }

        // The upper edge without its two ends, which the lower edge has where the panel ends in a point.
        ImmutableArray<Vec2> upper = Polyline(
            u => map.At(u, patch.Upper(u)),
            patch.UTo,
            patch.UFrom,
            chordMm
        );
        all.AddRange(upper[1..^1]);
        if (!patch.ClosesAt(patch.UFrom, pointMm))
        {
            all.AddRange(Section(patch, map, patch.UFrom, chordMm).Reverse().SkipLast(1));
        }

        if (FlatPolygon.Area(all) < 0)
        {
            all.Reverse();
        }

        return [.. all];
    }

    /// <summary>Length of an edge on the surface and in the flat, each by Gauss's three points on equal steps.</summary>
    public static EdgeLength Edge(
        SurfacePatch patch,
        IFlatMap map,
        Func<double, double> edge,
        int steps = 80
    )
    {
        double[] at = [0.5 - Math.Sqrt(0.15), 0.5, 0.5 + Math.Sqrt(0.15)];
        double[] share = [5.0 / 18, 8.0 / 18, 5.0 / 18];
        double surface = 0,
            flat = 0,
            h = patch.URange / steps;
        for (int k = 0; k < steps; k++)
        {
            for (int g = 0; g < 3; g++)
            {
                double u = patch.UFrom + ((k + at[g]) * h),
                    v = edge(u),
                    slope = patch.Slope(edge, u);
                SurfacePoint s = patch.Surface.At(u, v);
                (Vec2 du, Vec2 dv) = map.RatesAt(u, v);
                surface += share[g] * h * (s.Du + (slope * s.Dv)).Norm;
                flat += share[g] * h * (du + (slope * dv)).Norm;
            }
        }

        return new(surface, flat);
    }
}
