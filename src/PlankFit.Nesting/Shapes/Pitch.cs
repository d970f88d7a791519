using PlankFit.Geometry.Primitives;

namespace PlankFit.Nesting.Shapes;

/// <summary>How close two things in a row may come.</summary>
internal static class Pitch
{
    /// <summary>
    /// From the least x of one thing to the least x of the next, so that a straight kerf parts them from edge to edge of their lane, and does so further on, mm.
    /// It does where their convex hulls are a kerf apart, and not else: square to the shortest way between the two. Exact: where two hulls are a kerf apart one
    /// of them is touched at a vertex, and a vertex is a kerf from an edge where it lies on the edge's round-ended band.
    /// </summary>
    public static double Of(RowShape one, RowShape next, double kerfMm)
    {
        double kerf = kerfMm + one.ThinnedMm + next.ThinnedMm,
            pitch = double.NegativeInfinity;
        foreach (RowEdge a in one.RightSide)
        {
            foreach (RowEdge b in next.LeftSide)
            {
                pitch = Math.Max(pitch, FurthestRight(a, b.A.Y, kerf) - b.A.X);
                pitch = Math.Max(pitch, FurthestRight(a, b.B.Y, kerf) - b.B.X);
                pitch = Math.Max(pitch, a.A.X + FurthestRight(Mirrored(b), a.A.Y, kerf));
                pitch = Math.Max(pitch, a.B.X + FurthestRight(Mirrored(b), a.B.Y, kerf));
            }
        }

        return pitch;
    }

    private static RowEdge Mirrored(RowEdge e) =>
        new(new Vec2(-e.A.X, e.A.Y), new Vec2(-e.B.X, e.B.Y));

    /// <summary>The greatest x, at a height, of the band of all that is within a kerf of the edge; negative infinity where it does not reach that height.</summary>
    private static double FurthestRight(RowEdge e, double y, double kerf)
    {
        double most = Math.Max(Round(e.A, y, kerf), Round(e.B, y, kerf));
        Vec2 along = e.B - e.A;
        double length = along.Norm;
        if (length > 0 && along.Y != 0)
        {
            // The side of the band that looks to the right.
            double sign = Math.Sign(along.Y),
                nx = sign * along.Y / length,
                ny = -sign * along.X / length;
            double low = e.A.Y + (kerf * ny),
                high = e.B.Y + (kerf * ny);
            if ((y - low) * (y - high) <= 0)
            {
                double t = (y - low) / along.Y;
                most = Math.Max(most, e.A.X + (kerf * nx) + (t * along.X));
            }
        }

        return most;
    }

    private static double Round(Vec2 centre, double y, double kerf)
    {
        double h = (kerf * kerf) - ((y - centre.Y) * (y - centre.Y));
        return h >= 0 ? centre.X + Math.Sqrt(h) : double.NegativeInfinity;
    }
}
