using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Regions;

/// <summary>A stretch of one edge of the region, walked counter-clockwise seen from outside: lap numbers fall from From to To.</summary>
internal readonly record struct BoundaryPiece(PanelEdge Edge, double From, double To)
{
    public double Middle => (From + To) / 2;
}

/// <summary>The stretches of boundary that a plank meets, in the order of its outline.</summary>
internal static class BoundaryWalk
{
    private const double Least = 1e-9;

    /// <summary>A stretch shorter than this is a seam that runs into a corner, mm.</summary>
    private const double ShortestMm = 1e-4;

    /// <summary>From the forward seam's outboard end to the after seam's: the outer end.</summary>
    public static IReadOnlyList<BoundaryPiece> Outer(
        LayerRegion region,
        Seam forward,
        Seam after
    ) => Falling(region, forward.Out.Lap, after.Out.Lap);

    /// <summary>From the after seam's inboard end to the forward seam's: the inner end.</summary>
    public static IReadOnlyList<BoundaryPiece> Inner(
        LayerRegion region,
        Seam forward,
        Seam after
    ) => Falling(region, after.In.Lap, forward.In.Lap);

    /// <summary>All the boundary forward of the first seam, from its inboard to its outboard end.</summary>
    public static IReadOnlyList<BoundaryPiece> Ahead(LayerRegion region, Seam first) =>
        Falling(region, first.In.Lap, first.Out.Lap);

    /// <summary>All the boundary abaft the last seam, from its outboard to its inboard end.</summary>
    public static IReadOnlyList<BoundaryPiece> Behind(LayerRegion region, Seam last) =>
        Falling(region, last.Out.Lap, last.In.Lap);

    /// <summary>Walks from one lap number down to another, past 0 to 4 where need be, split at the corners.</summary>
    public static IReadOnlyList<BoundaryPiece> Falling(LayerRegion region, double from, double to)
    {
        var pieces = new List<BoundaryPiece>();
        double end = to > from + Least ? to - 4 : to,
            at = from;
        while (at - end > Least)
        {
            double corner = Math.Ceiling(at - Least) - 1;
            double next = Math.Max(corner, end);
            double middle = (at + next) / 2;
            PanelEdge edge = LayerRegion.EdgeOfLap(middle < 0 ? middle + 4 : middle);
            if (
                region
                    .PointAt(region.OnLap(at, edge))
                    .ChordTo(region.PointAt(region.OnLap(next, edge))) > ShortestMm
            )
            {
                pieces.Add(new(edge, at, next));
            }

            at = next;
        }

        return pieces;
    }
}
