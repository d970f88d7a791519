using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Planks;

/// <summary>A last look at a plank's shape to saw, with a polygon library that had no part in making it.</summary>
public static class SawnShape
{
    /// <summary>How far a point may lie outside and still be on the line, mm: what the numbers of planking.json round to, and a little.</summary>
    private const double OnTheLineMm = 1e-3;

    /// <summary>Whether both flat outlines are simple and the net one, with every face line between the plank's own edges, lies within the one to saw.</summary>
    /// <param name="stockWidthMm">Beyond half of it from the plank's own line there is no wood, so nothing is asked there.</param>
    public static bool Holds(Plank plank, double stockWidthMm)
    {
        IEnumerable<Vec2> faces = plank
            .Ends.SelectMany(e => e.OuterLine.Concat(e.InnerLine))
            .Where(p => Math.Abs(p.Y) < stockWidthMm / 2)
            .Where(p => !Beyond(plank.ForwardEdge, p) && !Beyond(plank.AfterEdge, p));
        return PlanarShapes.IsSimple(plank.FlatNet)
            && PlanarShapes.IsSimple(plank.FlatCut)
            && PlanarShapes.FurthestOutside(plank.FlatCut, plank.FlatNet.Concat(faces)).Mm
                < OnTheLineMm;
    }

    /// <summary>Past a seam, carried straight on, lies the neighbour's wood: where a face of the keel's side runs on past it, this plank has none to give.</summary>
    private static bool Beyond(PlankEdge edge, Vec2 p)
    {
        if (!edge.Exists)
        {
            return false;
        }

        ImmutableArray<Vec2> line = edge.Flat;
        int i = 0;
        while (i < line.Length - 2 && line[i + 1].X < p.X)
        {
            i++;
        }

        Vec2 run = line[i + 1] - line[i];
        double at = line[i].Y + (run.Y / run.X * (p.X - line[i].X));
        return at > 0 ? p.Y > at : p.Y < at;
    }

    /// <summary>How far a tip of either face reaches past the stock's edge, mm; nought or less where none does.</summary>
    public static double TipPastStockMm(Plank plank, double stockWidthMm) =>
        plank
            .Ends.SelectMany(e => e.OuterLine.Concat(e.InnerLine))
            .Select(p => Math.Abs(p.Y))
            .DefaultIfEmpty(0)
            .Max() - (stockWidthMm / 2);
}
