using PlankFit.Geometry.Splines;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Keel;

/// <summary>A half-width along the hull, y(x), mm; past its ends it runs straight on.</summary>
internal sealed class KeelEdgeCurve
{
    private readonly CubicSpline design;
    private readonly MonotoneJoin? correction;

    private KeelEdgeCurve(CubicSpline design, MonotoneJoin? correction)
    {
        (this.design, this.correction) = (design, correction);
    }

    public static KeelEdgeCurve Through(IReadOnlyList<double> x, IReadOnlyList<double> y) =>
        new(CubicSpline.Through([.. x], [.. y]), null);

    /// <summary>
    /// The same curve made to pass through what was measured: the differences are joined so that the curve goes past
    /// none of them and keeps its curvature without jumps (<see cref="MonotoneJoin"/>), and the outermost are held to the ends of the bottom. An edge between two stations is as fair as it was drawn.
    /// </summary>
    public KeelEdgeCurve Measured(IReadOnlyList<(double X, double Y)> measured)
    {
        if (measured.Count == 0)
        {
            return this;
        }

        return new(
            design,
            MonotoneJoin.Through(
                [.. measured.Select(m => m.X)],
                [.. measured.Select(m => m.Y - At(m.X))]
            )
        );
    }

    public double At(double x)
    {
        double held = Math.Clamp(x, design.From, design.To);
        return design.At(held) + (design.Slope(held) * (x - held)) + (correction?.At(x) ?? 0);
    }

    public double SlopeAt(double x) =>
        design.Slope(Math.Clamp(x, design.From, design.To)) + (correction?.SlopeAt(x) ?? 0);
}
