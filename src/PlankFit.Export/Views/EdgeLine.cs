using PlankFit.Geometry.Surfaces;

namespace PlankFit.Export.Views;

/// <summary>An edge of a layer as v over u, straight between the points given; level beyond them.</summary>
internal sealed class EdgeLine
{
    private const double SameU = 1e-6;

    private readonly double[] v;

    public EdgeLine(IEnumerable<Uv> points)
    {
        List<Uv> kept = [];
        foreach (Uv p in points.OrderBy(p => p.U))
        {
            if (kept.Count == 0 || p.U - kept[^1].U > SameU)
            {
                kept.Add(p);
            }
        }

        Us = [.. kept.Select(p => p.U)];
        v = [.. kept.Select(p => p.V)];
    }

    public double[] Us { get; }

    public bool Holds(double u) =>
        Us.Length > 0 && u >= Us[0] - (1000 * SameU) && u <= Us[^1] + (1000 * SameU);

    public double V(double u)
    {
        int after = Array.BinarySearch(Us, u);
        if (after >= 0)
        {
            return v[after];
        }

        after = ~after;
        if (after == 0 || after == Us.Length)
        {
            return v[after == 0 ? 0 : ^1];
        }

        double part = (u - Us[after - 1]) / (Us[after] - Us[after - 1]);
        return v[after - 1] + (part * (v[after] - v[after - 1]));
    }
}
