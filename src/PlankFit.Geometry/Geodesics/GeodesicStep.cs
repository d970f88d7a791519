using System.Runtime.CompilerServices;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Geodesics;

/// <summary>A place on a geodesic, where a step begins or ends.</summary>
/// <param name="S">Arc length, mm.</param>
/// <param name="Rates">Of the state there.</param>
internal readonly record struct GeodesicPlace(double S, GeodesicState State, GeodesicState Rates);

/// <summary>
/// One step of Dormand and Prince's 5(4) pair along a geodesic, with its fourth-order dense output.
/// The equations: tangent T, (u', v') its rates, T' = II(T, T) n, a'' = −K a. Only first derivatives and the second form are needed,
/// so a parallel surface is as exact as its parent. Source: Hairer, Nørsett, Wanner, Solving ODEs I, II.5-6 (from memory).
/// </summary>
internal readonly struct GeodesicStep
{
    private readonly GeodesicState r1,
        r2,
        r3,
        r4,
        r5;

    private GeodesicStep(
        double from,
        double length,
        GeodesicState r1,
        GeodesicState r2,
        GeodesicState r3,
        GeodesicState r4,
        GeodesicState r5
    )
    {
        From = from;
        Length = length;
        this.r1 = r1;
        this.r2 = r2;
        this.r3 = r3;
        this.r4 = r4;
        this.r5 = r5;
    }

    /// <summary>Arc length at the step's start, mm, and its signed length.</summary>
    public double From { get; }
    public double Length { get; }
    public double To => From + Length;

    // States are vectors, and what has these in its signature is not compiled ahead of time: well at the first call, then.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public GeodesicState At(double s)
    {
        double x = (s - From) / Length,
            y = 1 - x;
        return r1 + (x * (r2 + (y * (r3 + (x * (r4 + (y * r5)))))));
    }

    /// <summary>The parameters alone.</summary>
    public Uv UvAt(double s)
    {
        double x = (s - From) / Length,
            y = 1 - x;
        return GeodesicState.Uv(r1, r2, r3, r4, r5, x, y);
    }

    /// <summary>What the state's rates are; <paramref name="sizes"/> are the lengths of du and dv in mm, for the error's scale.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static GeodesicState Rates(ISurface surface, in GeodesicState y, out Uv sizes)
    {
        SurfacePoint p = surface.At(y.U, y.V);
        double e = p.E,
            f = p.F,
            g = p.G,
            one = 1 / ((e * g) - (f * f));
        Vec3 t = y.Tangent;
        double tu = p.Du.Dot(t),
            tv = p.Dv.Dot(t);
        double du = ((g * tu) - (f * tv)) * one,
            dv = ((e * tv) - (f * tu)) * one;
        double bend = (p.L * du * du) + (2 * p.M * du * dv) + (p.N * dv * dv);
        double gauss = ((p.L * p.N) - (p.M * p.M)) * one;
        sizes = new(e, g);
        return new(new(du, dv), bend * p.Normal, (y.A1, -gauss * y.A), (y.B1, -gauss * y.B));
    }

    /// <summary>Tries a step of signed length h; the error estimate is in mm at a reach of one metre.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static GeodesicStep Try(
        ISurface surface,
        in GeodesicPlace from,
        double h,
        out GeodesicPlace end,
        out double errorMm
    )
    {
        GeodesicState y = from.State,
            k1 = from.Rates;
        GeodesicState k2 = Rates(surface, y + ((h / 5) * k1), out _);
        GeodesicState k3 = Rates(surface, y + ((h * 3 / 40) * k1) + ((h * 9 / 40) * k2), out _);
        GeodesicState k4 = Rates(
            surface,
            y + ((h * 44 / 45) * k1) + ((-h * 56 / 15) * k2) + ((h * 32 / 9) * k3),
            out _
        );
        GeodesicState k5 = Rates(
            surface,
            y
                + ((h * 19372 / 6561) * k1)
                + ((-h * 25360 / 2187) * k2)
                + ((h * 64448 / 6561) * k3)
                + ((-h * 212 / 729) * k4),
            out _
        );
        GeodesicState k6 = Rates(
            surface,
            y
                + ((h * 9017 / 3168) * k1)
                + ((-h * 355 / 33) * k2)
                + ((h * 46732 / 5247) * k3)
                + ((h * 49 / 176) * k4)
                + ((-h * 5103 / 18656) * k5),
            out _
        );
        GeodesicState last =
            y
            + ((h * 35 / 384) * k1)
            + ((h * 500 / 1113) * k3)
            + ((h * 125 / 192) * k4)
            + ((-h * 2187 / 6784) * k5)
            + ((h * 11 / 84) * k6);
        GeodesicState k7 = Rates(surface, last, out Uv sizes);
        end = new(from.S + h, last, k7);
        GeodesicState e =
            h
            * (
                ((71.0 / 57600) * k1)
                + ((-71.0 / 16695) * k3)
                + ((71.0 / 1920) * k4)
                + ((-17253.0 / 339200) * k5)
                + ((22.0 / 525) * k6)
                + ((-1.0 / 40) * k7)
            );

        // A wrong tangent shows a metre on; a wrong Jacobi field shows half a plank's width away.
        errorMm =
            Math.Sqrt((e.U * e.U * sizes.U) + (e.V * e.V * sizes.V))
            + (1000 * e.Tangent.Norm)
            + (100 * Math.Abs(e.A))
            + (0.1 * Math.Abs(e.B));
        GeodesicState rise = last - y,
            bsp = (h * k1) - rise;
        GeodesicState r4 = rise - (h * k7) - bsp;
        GeodesicState r5 =
            h
            * (
                ((-12715105075.0 / 11282082432) * k1)
                + ((87487479700.0 / 32700410799) * k3)
                + ((-10690763975.0 / 1880347072) * k4)
                + ((701980252875.0 / 199316789632) * k5)
                + ((-1453857185.0 / 822651844) * k6)
                + ((69997945.0 / 29380423) * k7)
            );
        return new(from.S, h, y, rise, bsp, r4, r5);
    }
}
