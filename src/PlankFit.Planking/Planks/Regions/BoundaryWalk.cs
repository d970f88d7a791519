namespace PlankFit.Planking;

/// <summary>A stretch of one edge of the region, walked counter-clockwise seen from outside: lap numbers fall from From to To.</summary>
internal readonly record struct BoundaryPiece(HullEdge Edge, double From, double To)
{
    public double Middle => (From + To) / 2;
}

/// <summary>The stretches of boundary that a plank meets, in the order of its outline.</summary>
internal static class BoundaryWalk
{
    private const double Least = 1e-9;

    /// <summary>From the forward seam's outboard end to the after seam's: the outer end.</summary>
    public static IReadOnlyList<BoundaryPiece> Outer(Seam forward, Seam after) =>
        Falling(forward.Out.Lap, after.Out.Lap);

    /// <summary>From the after seam's inboard end to the forward seam's: the inner end.</summary>
    public static IReadOnlyList<BoundaryPiece> Inner(Seam forward, Seam after) =>
        Falling(after.In.Lap, forward.In.Lap);

    /// <summary>All the boundary forward of the first seam, from its inboard to its outboard end.</summary>
    public static IReadOnlyList<BoundaryPiece> Ahead(Seam first) =>
        Falling(first.In.Lap, first.Out.Lap);

    /// <summary>All the boundary abaft the last seam, from its outboard to its inboard end.</summary>
    public static IReadOnlyList<BoundaryPiece> Behind(Seam last) =>
        Falling(last.Out.Lap, last.In.Lap);

    /// <summary>Walks from one lap number down to another, past 0 to 4 where need be, split at the corners.</summary>
    public static IReadOnlyList<BoundaryPiece> Falling(double from, double to)
    {
        var pieces = new List<BoundaryPiece>();
        double end = to > from + Least ? to - 4 : to,
            at = from;
        while (at - end > Least)
        {
            double corner = Math.Ceiling(at - Least) - 1;
            double next = Math.Max(corner, end);
            double middle = (at + next) / 2;
            pieces.Add(new(LayerRegion.EdgeOfLap(middle < 0 ? middle + 4 : middle), at, next));
            at = next;
        }

        return pieces;
    }
}
