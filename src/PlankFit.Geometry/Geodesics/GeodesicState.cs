using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Geodesics;

/// <summary>
/// The state carried along a geodesic: parameters, unit tangent in space, and two Jacobi fields with their rates,
/// (a, a') = (1, 0) and (b, b') = (0, 1) at the start. A neighbour at signed distance w leaves it as alpha a + beta b.
/// In two vectors and a number, so that a step's sums stay in registers: it is what laying planks takes its time for.
/// </summary>
internal readonly struct GeodesicState
{
    private readonly Vector256<double> place; // u, v, and of the tangent x and y
    private readonly Vector256<double> rest; // of the tangent z; a, a', b
    private readonly double b1;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private GeodesicState(Vector256<double> place, Vector256<double> rest, double b1)
    {
        this.place = place;
        this.rest = rest;
        this.b1 = b1;
    }

    /// <param name="tangent">Or its rate, as all others.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public GeodesicState(
        Uv at,
        Vec3 tangent,
        (double Value, double Rate) a,
        (double Value, double Rate) b
    )
        : this(
            Vector256.Create(at.U, at.V, tangent.X, tangent.Y),
            Vector256.Create(tangent.Z, a.Value, a.Rate, b.Value),
            b.Rate
        ) { }

    public double U => place.GetElement(0);

    public double V => place.GetElement(1);

    public Vec3 Tangent => new(place.GetElement(2), place.GetElement(3), rest.GetElement(0));

    public double A => rest.GetElement(1);

    public double A1 => rest.GetElement(2);

    public double B => rest.GetElement(3);

    public double B1 => b1;

    /// <summary>The parameters of r1 + x (r2 + y (r3 + x (r4 + y r5))): of dense output all that places along a line ask for.</summary>
    public static Uv Uv(
        in GeodesicState r1,
        in GeodesicState r2,
        in GeodesicState r3,
        in GeodesicState r4,
        in GeodesicState r5,
        double x,
        double y
    )
    {
        Vector128<double> sum =
            r1.place.GetLower()
            + (
                x
                * (
                    r2.place.GetLower()
                    + (
                        y
                        * (
                            r3.place.GetLower()
                            + (x * (r4.place.GetLower() + (y * r5.place.GetLower())))
                        )
                    )
                )
            );
        return new(sum.GetElement(0), sum.GetElement(1));
    }

    public static GeodesicState Start(Uv at, Vec3 tangent) => new(at, tangent, (1, 0), (0, 1));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static GeodesicState operator +(GeodesicState x, GeodesicState y) =>
        new(x.place + y.place, x.rest + y.rest, x.b1 + y.b1);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static GeodesicState operator *(double k, GeodesicState x) =>
        new(k * x.place, k * x.rest, k * x.b1);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static GeodesicState operator -(GeodesicState x, GeodesicState y) =>
        new(x.place - y.place, x.rest - y.rest, x.b1 - y.b1);
}
