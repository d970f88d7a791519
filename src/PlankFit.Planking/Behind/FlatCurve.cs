using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>A curve of the surface laid flat with a plank: found exactly at a few nodes, splined between.</summary>
internal sealed class FlatCurve
{
    private readonly CubicSpline s,
        n;
    private readonly double[] nodes;

    private FlatCurve(double[] nodes, CubicSpline s, CubicSpline n)
    {
        (this.nodes, this.s, this.n) = (nodes, s, n);
    }

    /// <param name="near">A flat place near the curve's place at a node, which saves the search.</param>
    public static FlatCurve Of(PlankMap map, double[] nodes, UvSpline curve, Func<int, Vec2> near)
    {
        double[] s = new double[nodes.Length],
            n = new double[nodes.Length];
        for (int i = 0; i < nodes.Length; i++)
        {
            Vec2 flat = map.Flat(curve.At(nodes[i]), near(i));
            (s[i], n[i]) = (flat.X, flat.Y);
        }

        return new(nodes, CubicSpline.Through(nodes, s), CubicSpline.Through(nodes, n));
    }

    public Vec2 At(double t) => new(s.At(t), n.At(t));

    public Vec2 Slope(double t) => new(s.Slope(t), n.Slope(t));

    /// <summary>Points along all of it, no chord leaving it by more than the tolerance.</summary>
    public ImmutableArray<Vec2> Points(double chordMm)
    {
        var points = ImmutableArray.CreateBuilder<Vec2>();
        for (int i = 0; i + 1 < nodes.Length; i++)
        {
            double from = nodes[i],
                h = nodes[i + 1] - from;
            Vec2 sag = At(from + (h / 2)) - (0.5 * (At(from) + At(from + h)));
            int parts = Math.Max(1, (int)Math.Ceiling(Math.Sqrt(sag.Norm / (0.75 * chordMm))));
            for (int k = 0; k < parts; k++)
            {
                points.Add(At(from + (h * k / parts)));
            }
        }

        points.Add(At(nodes[^1]));
        return points.ToImmutable();
    }
}
