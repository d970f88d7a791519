using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Joints;

/// <summary>A plank as the search for places sees it: its shape to saw, and the stretch over which a line right across it meets both long edges.</summary>
internal sealed record JointedShape(Plank Plank)
{
    /// <summary>Where the shape to saw begins and ends along the plank's own line, mm.</summary>
    public double From { get; } = Plank.FlatCut.Min(p => p.X);

    public double To { get; } = Plank.FlatCut.Max(p => p.X);

    private IEnumerable<PlankEdge> Edges =>
        new[] { Plank.ForwardEdge, Plank.AfterEdge }.Where(e => e.Exists);

    /// <summary>
    /// The straight line across the plank through (at, 0), lesser n first; null where it does not run from long edge to long edge. A corner piece has one
    /// seam; its other long edge is where the bottom ends.
    /// </summary>
    public ImmutableArray<Vec2>? Across(double at, double cutDegrees)
    {
        (double sin, double cos) = Math.SinCos(cutDegrees * Math.PI / 180);
        Vec2 foot = new(at, 0),
            along = new(cos, sin);
        ImmutableArray<Vec2> cut = Plank.FlatCut;
        List<Vec2> met = [];
        for (int i = 0; i < cut.Length; i++)
        {
            Vec2 a = cut[i],
                b = cut[(i + 1) % cut.Length];
            double fa = along.Cross(a - foot),
                fb = along.Cross(b - foot);
            if (fa <= 0 != fb <= 0)
            {
                met.Add(a + (fa / (fa - fb) * (b - a)));
            }
        }

        if (met.Count != 2)
        {
            return null;
        }

        ImmutableArray<Vec2> line = met[0].Y <= met[1].Y ? [met[0], met[1]] : [met[1], met[0]];
        double low = Edges.Select(e => e.Flat[0].X).DefaultIfEmpty(From).Max(),
            high = Edges.Select(e => e.Flat[^1].X).DefaultIfEmpty(To).Min();
        return line.All(p => p.X > low && p.X < high) ? line : null;
    }
}
