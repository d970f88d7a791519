using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Splines;

namespace PlankFit.Geometry.Strips;

/// <summary>
/// The mean-length correction of a flat strip: x(s) = ∫ (1 − K m/2) ds, m the mean of t² across the strip (w²/12 where it is centred, which gives
/// the factor 1 − K w²/24). It shares the strain between the middle and the edges: + K w²/24 at the centre, − K w²/12 at the edges, the least there is.
/// </summary>
public sealed class StripScale
{
    private readonly CubicSpline x;

    private StripScale(CubicSpline x) => this.x = x;

    /// <param name="centre">The strip's centre line.</param>
    /// <param name="meanSquare">Mean of t² across the strip at s, mm².</param>
    /// <param name="from">Range of s, mm; the flat x is 0 at s = <paramref name="zero"/>.</param>
    /// <param name="nodeMm">Spacing of the nodes of the quadrature, mm.</param>
    public static StripScale Along(
        Geodesic centre,
        Func<double, double> meanSquare,
        double from,
        double to,
        double zero,
        double nodeMm
    )
    {
        int n = Math.Max(6, (int)Math.Ceiling((to - from) / nodeMm));
        double h = (to - from) / n;
        double[] s = new double[n + 1],
            flat = new double[n + 1];
        double Rate(double at) => 1 - (centre.Under(at).GaussCurvature * meanSquare(at) / 2);
        s[0] = from;
        double before = Rate(from);
        for (int i = 1; i <= n; i++)
        {
            s[i] = from + (i * h);
            double here = Rate(s[i]),
                middle = Rate(s[i] - (h / 2));
            flat[i] = flat[i - 1] + (h / 6 * (before + (4 * middle) + here));
            before = here;
        }

        var unshifted = CubicSpline.Through(s, flat);
        double shift = unshifted.At(zero);
        for (int i = 0; i <= n; i++)
        {
            flat[i] -= shift;
        }

        return new(CubicSpline.Through(s, flat));
    }

    /// <summary>The flat x of s, mm.</summary>
    public double Flat(double s) => x.At(s);

    /// <summary>dx/ds there.</summary>
    public double Rate(double s) => x.Slope(s);
}
