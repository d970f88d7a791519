using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>The trace of the keel's side on a parallel surface of the bottom: v as a function of u, as a spline.</summary>
internal static class KeelFace
{
    /// <param name="pastMm">How far the trace goes past both ends of the bottom.</param>
    public static CubicSpline Trace(
        LoftedSurface hull,
        ISurface surface,
        KeelSideFace side,
        double pastMm
    )
    {
        double[] nodes = Nodes(hull, side.NodesABay, pastMm);
        double[] v = new double[nodes.Length];
        double guess = 0;
        for (int i = 0; i < nodes.Length; i++)
        {
            guess = side.Meet(surface, nodes[i], guess);
            v[i] = guess;
        }

        return CubicSpline.Through(nodes, v);
    }

    private static double[] Nodes(LoftedSurface hull, int nodesABay, double pastMm)
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
            for (int i = 0; i < nodesABay; i++)
            {
                u.Add(from + (length * i / nodesABay));
            }
        }

        for (int i = 0; i <= 4; i++)
        {
            u.Add(hull.UTo + (pastMm * i / 4));
        }

        return [.. u];
    }
}
