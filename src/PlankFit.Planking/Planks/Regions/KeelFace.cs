using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>
/// The side of the keel as it cuts a parallel surface of the bottom: v as a function of u. Plumb: the vertical surface through the keel line;
/// square to plank: the normal image of the line, v = 0.
/// </summary>
internal static class KeelFace
{
    /// <summary>Nodes of the trace in each bay between stations: enough to keep it within 0.001 mm of the vertical surface.</summary>
    private const int NodesABay = 10;

    /// <summary>The trace of the keel's side on a surface, as a spline over u that goes a little past both ends, mm.</summary>
    public static CubicSpline Trace(
        LoftedSurface hull,
        ISurface surface,
        KeelSide side,
        double pastMm
    )
    {
        var u = new List<double>();
        for (double before = pastMm; before > 1; before -= pastMm / 4)
        {
            u.Add(hull.UFrom - before);
        }

        for (int bay = 0; bay + 1 < hull.StationU.Count; bay++)
        {
            double from = hull.StationU[bay],
                length = hull.StationU[bay + 1] - from;
            for (int i = 0; i < NodesABay; i++)
            {
                u.Add(from + (length * i / NodesABay));
            }
        }

        for (int i = 0; i <= 4; i++)
        {
            u.Add(hull.UTo + (pastMm * i / 4));
        }

        double[] nodes = [.. u];
        double[] v = new double[nodes.Length];
        if (side == KeelSide.Plumb)
        {
            double guess = 0;
            for (int i = 0; i < nodes.Length; i++)
            {
                guess = PlumbV(hull, surface, nodes[i], guess);
                v[i] = guess;
            }
        }

        return CubicSpline.Through(nodes, v);
    }

    /// <summary>The horizontal unit normal of the plumb side abreast of a point, pointing outboard into the planks.</summary>
    public static Vec3 PlumbNormal(LoftedSurface hull, double u, double x)
    {
        SurfacePoint keel = AbreastOf(hull, u, x);
        return new Vec3(-keel.Du.Y, keel.Du.X, 0).Unit();
    }

    private static double PlumbV(LoftedSurface hull, ISurface surface, double u, double guess)
    {
        double v = guess;
        for (int i = 0; i < 20; i++)
        {
            SurfacePoint p = surface.At(u, v);
            SurfacePoint keel = AbreastOf(hull, u, p.P.X);
            double lean = keel.Du.Y / keel.Du.X;
            double miss = p.P.Y - keel.P.Y - (lean * (p.P.X - keel.P.X));
            double rate = p.Dv.Y - (lean * p.Dv.X);
            double step = miss / rate;
            v -= step;
            if (Math.Abs(miss) < 1e-10)
            {
                break;
            }
        }

        return v;
    }

    /// <summary>The keel line at the same x as a point that lies at most a stack's thickness away from it.</summary>
    private static SurfacePoint AbreastOf(LoftedSurface hull, double u, double x)
    {
        double at = u;
        SurfacePoint keel = hull.At(at, 0);
        for (int i = 0; i < 3 && Math.Abs(keel.P.X - x) > 1e-9; i++)
        {
            at -= (keel.P.X - x) / keel.Du.X;
            keel = hull.At(at, 0);
        }

        return keel;
    }
}
