using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Framing;

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

    public double From => nodes[0];
    public double To => nodes[^1];

    public Vec2 At(double t) => new(s.At(t), n.At(t));

    public Vec2 Slope(double t) => new(s.Slope(t), n.Slope(t));

    /// <summary>Points along a part of it, no chord leaving it by more than the tolerance.</summary>
    public ImmutableArray<Vec2> Points(double from, double to, double chordMm)
    {
        const int parts = 4;
        ImmutableArray<Vec2>.Builder points = ImmutableArray.CreateBuilder<Vec2>();
        double h = (to - from) / parts;
        for (int i = 0; i < parts; i++)
        {
            double start = from + (h * i);
            Vec2 sag = At(start + (h / 2)) - (0.5 * (At(start) + At(start + h)));
            int chords = Math.Max(2, (int)Math.Ceiling(Math.Sqrt(sag.Norm / (0.75 * chordMm))));
            for (int k = 0; k < chords; k++)
            {
                points.Add(At(start + (h * k / chords)));
            }
        }

        points.Add(At(to));
        return points.ToImmutable();
    }
}
