using System.Collections.Immutable;
using MathNet.Numerics.Integration;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Regions;

/// <summary>Area and outline of a layer's region, found from the surface alone and not from its planks.</summary>
internal static class RegionArea
{
    /// <summary>Area on the surface, mm², by Gauss-Legendre quadrature bay by bay; error below 1e-8 of the area on hull-like surfaces.</summary>
    public static double Of(LayerRegion region)
    {
        double sum = 0;
        IReadOnlyList<double> stations = region.Hull.StationU;
        for (int bay = 0; bay + 1 < stations.Count; bay++)
        {
            double from = Math.Max(stations[bay], region.UFrom),
                to = stations[bay + 1];
            if (to > from)
            {
                sum += GaussLegendreRule.Integrate(u => Girth(region, u), from, to, 8);
            }
        }

        return sum;
    }

    /// <summary>The boundary, starboard, counter-clockwise seen from outside: from the keel's forward end along the stem, chine, transom and keel.</summary>
    public static ImmutableArray<Vec3> Outline(LayerRegion region, int pointsAnEdge)
    {
        ImmutableArray<Vec3>.Builder points = ImmutableArray.CreateBuilder<Vec3>();
        for (int edge = 3; edge >= 0; edge--)
        {
            if (edge == 3 && !region.HasStem)
            {
                continue;
            }

            for (int i = 0; i < pointsAnEdge; i++)
            {
                points.Add(
                    region.PointAt(
                        region.OnLap(
                            edge + 1 - ((double)i / pointsAnEdge),
                            LayerRegion.EdgeOfLap(edge + 0.5)
                        )
                    )
                );
            }
        }

        return points.ToImmutable();
    }

    private static double Girth(LayerRegion region, double u)
    {
        double low = region.LowerV(u),
            high = region.UpperV(u);
        return GaussLegendreRule.Integrate(
            v =>
            {
                SurfacePoint p = region.Surface.At(u, v);
                return Math.Sqrt((p.E * p.G) - (p.F * p.F));
            },
            low,
            high,
            6
        );
    }
}
