using MathNet.Numerics.RootFinding;
using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Regions;

/// <summary>Finding the stretch of a line inside a region.</summary>
internal static class Crossings
{
    /// <summary>The line is looked at every so many mm; shorter stretches are found by climbing to where the line comes nearest to the inside.</summary>
    private const double LookEveryMm = 20;

    /// <summary>
    /// Inside, room falls by no more than so much a mm of line: it is a distance, but by the scale of mid-bottom (2.4 at the most on hulls by chance). Outside it may do by
    /// 14, where keel and chine would meet.
    /// </summary>
    private const double Steepest = 4;

    /// <summary>The seam on a line, or null where the line passes the region by.</summary>
    /// <exception cref="GeodesicException">Where the line leaves the region and enters it again.</exception>
    public static Seam? Find(LayerRegion region, Geodesic line)
    {
        int n = Math.Max(2, (int)Math.Ceiling((line.To - line.From) / LookEveryMm));
        double h = (line.To - line.From) / n;
        double Room(double s) => region.Room(line.UvAt(s));
        double S(int i) => i == n ? line.To : line.From + (i * h);
        Span<double> room = n < 256 ? stackalloc double[n + 1] : new double[n + 1];
        int best = 0;
        for (int i = 0; i <= n; i++)
        {
            room[i] = Room(S(i));
            best = room[i] > room[best] ? i : best;

            // So far from the edges none is reached within the next looks.
            for (int far = (int)(room[i] / (Steepest * h)); far > 0 && i < n; far--)
            {
                room[i + 1] = room[i];
                i++;
            }
        }

        if (room[best] <= 0)
        {
            double peak = Climb(Room, S(Math.Max(0, best - 1)), S(Math.Min(n, best + 1)));
            return Room(peak) > 1e-6
                ? Between(
                    region,
                    line,
                    Room,
                    S(Math.Max(0, best - 1)),
                    peak,
                    S(Math.Min(n, best + 1))
                )
                : null;
        }

        int first = best,
            last = best;
        while (first > 0 && room[first - 1] > 0)
        {
            first--;
        }

        while (last < n && room[last + 1] > 0)
        {
            last++;
        }

        for (int i = 0; i <= n; i++)
        {
            if (room[i] > 0.5 && (i < first || i > last))
            {
                throw new GeodesicException(
                    $"a seam leaves the {region.Panel.Name} and comes back: the edge is too hollow for planks at this angle, or for the way they head",
                    line.UvAt(S(i))
                );
            }
        }

        if (first == 0 || last == n)
        {
            throw new GeodesicException(
                $"a seam stops short of the edge of the {region.Panel.Name}",
                line.UvAt(S(first == 0 ? 0 : n))
            );
        }

        double low = Edge(Room, S(first - 1), S(first)),
            high = Edge(Room, S(last), S(last + 1));
        return new(line, Crossing(region, line, low), Crossing(region, line, high));
    }

    private static Seam? Between(
        LayerRegion region,
        Geodesic line,
        Func<double, double> room,
        double from,
        double peak,
        double to
    )
    {
        if (room(from) > 0 || room(to) > 0)
        {
            return null;
        }

        double low = Edge(room, from, peak),
            high = Edge(room, peak, to);
        return high - low > 1e-3
            ? new(line, Crossing(region, line, low), Crossing(region, line, high))
            : null;
    }

    private static double Edge(Func<double, double> room, double from, double to) =>
        Brent.FindRoot(room, from, to, 1e-10, 200);

    private static EdgeCrossing Crossing(LayerRegion region, Geodesic line, double s)
    {
        Uv uv = line.UvAt(s);
        PanelEdge edge = region.NearestEdge(uv);
        return new(s, uv, edge, region.LapOf(edge, uv));
    }

    /// <summary>Golden section for the place where a line comes nearest to the inside.</summary>
    private static double Climb(Func<double, double> room, double from, double to)
    {
        double ratio = (Math.Sqrt(5) - 1) / 2,
            a = from,
            b = to;
        while (b - a > 1e-3)
        {
            double c = b - (ratio * (b - a)),
                d = a + (ratio * (b - a));
            if (room(c) > room(d))
            {
                b = d;
            }
            else
            {
                a = c;
            }
        }

        return (a + b) / 2;
    }
}
