using MathNet.Numerics.RootFinding;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Geodesics;

/// <summary>What is known at one place along a geodesic: parameters, unit tangent, and the two Jacobi fields with their rates.</summary>
public readonly record struct GeodesicPoint(
    double S,
    Uv Uv,
    Vec3 Tangent,
    double A,
    double ARate,
    double B,
    double BRate
);

/// <summary>
/// A geodesic of a surface: the line that a plank takes when it bends only about its flat. Arc length s in mm, 0 at the point it was started from,
/// negative behind it.
/// </summary>
public sealed class Geodesic
{
    private readonly GeodesicStep[] steps; // by rising s

    internal Geodesic(ISurface surface, GeodesicStep[] steps, double from, double to)
    {
        Surface = surface;
        this.steps = steps;
        From = from;
        To = to;
    }

    public ISurface Surface { get; }

    /// <summary>The traced range of s, mm.</summary>
    public double From { get; }
    public double To { get; }

    /// <summary>Steps that the trace took.</summary>
    public int Steps => steps.Length;

    /// <summary>The geodesic at s, which must lie in its traced range (a hair beyond is allowed).</summary>
    public GeodesicPoint At(double s)
    {
        GeodesicState y = State(s);
        return new(s, new(y.U, y.V), y.Tangent.Unit(), y.A, y.A1, y.B, y.B1);
    }

    /// <summary>The surface under the geodesic at s.</summary>
    public SurfacePoint Under(double s)
    {
        GeodesicState y = State(s);
        return Surface.At(y.U, y.V);
    }

    /// <summary>
    /// The s in [from, to] at which a function of the parameters is zero, given that it changes sign there. Lands to 1e-9 mm of s on the traced curve.
    /// </summary>
    public double Crossing(Func<Uv, double> level, double from, double to) =>
        Brent.FindRoot(s => level(UvAt(s)), from, to, 1e-9, 100);

    public Uv UvAt(double s) => Step(s).UvAt(s);

    private GeodesicState State(double s) => Step(s).At(s);

    private ref readonly GeodesicStep Step(double s)
    {
        // Past its ends a trace says nothing: its polynomials would go on, and go astray.
        if (!(s >= From - 1e-6 && s <= To + 1e-6))
        {
            throw new ArgumentOutOfRangeException(
                nameof(s),
                $"s = {s} lies outside the traced range {From} to {To}"
            );
        }

        int low = 0,
            high = steps.Length - 1;
        while (low < high)
        {
            int middle = (low + high) >> 1;
            if (s > Math.Max(steps[middle].From, steps[middle].To))
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return ref steps[low];
    }
}
