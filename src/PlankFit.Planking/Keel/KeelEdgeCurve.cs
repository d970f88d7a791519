using MathNet.Numerics.Interpolation;
using CubicSpline = PlankFit.Geometry.CubicSpline;

namespace PlankFit.Planking;

/// <summary>A half-width along the hull, y(x), mm; past its ends it runs straight on.</summary>
internal sealed class KeelEdgeCurve
{
    private readonly CubicSpline design;
    private readonly IInterpolation? correction;
    private readonly double first,
        last;

    private KeelEdgeCurve(CubicSpline design, IInterpolation? correction, double first, double last)
    {
        (this.design, this.correction) = (design, correction);
        (this.first, this.last) = (first, last);
    }

    public static KeelEdgeCurve Through(IReadOnlyList<double> x, IReadOnlyList<double> y) =>
        new(CubicSpline.Through([.. x], [.. y]), null, 0, 0);

    /// <summary>
    /// The same curve made to pass through what was measured: the differences are joined by a monotone cubic (Fritsch and Carlson, by MathNet), which goes past
    /// none of them, and the outermost are held to the ends of the bottom. An edge between two stations is as fair as it was drawn.
    /// </summary>
    public KeelEdgeCurve Measured(IReadOnlyList<(double X, double Y)> measured)
    {
        if (measured.Count == 0)
        {
            return this;
        }

        double[] x = [.. measured.Select(m => m.X)],
            off = [.. measured.Select(m => m.Y - At(m.X))];
        IInterpolation joined = measured.Count switch
        {
            1 => LinearSpline.Interpolate([x[0], x[0] + 1], [off[0], off[0]]),
            2 => LinearSpline.Interpolate(x, off),
            _ => MathNet.Numerics.Interpolation.CubicSpline.InterpolatePchip(x, off),
        };
        return new(design, joined, x[0], x[^1]);
    }

    public double At(double x)
    {
        double held = Math.Clamp(x, design.From, design.To);
        return design.At(held)
            + (design.Slope(held) * (x - held))
            + (correction?.Interpolate(Math.Clamp(x, first, last)) ?? 0);
    }

    public double SlopeAt(double x) =>
        design.Slope(Math.Clamp(x, design.From, design.To))
        + (correction is null || x < first || x > last ? 0 : correction.Differentiate(x));
}
