using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Geodesics;

/// <summary>
/// The state carried along a geodesic: parameters, unit tangent in space, and two Jacobi fields with their rates,
/// (a, a') = (1, 0) and (b, b') = (0, 1) at the start. A neighbour at signed distance w leaves it as alpha a + beta b.
/// </summary>
internal struct GeodesicState
{
    public double U,
        V,
        Tx,
        Ty,
        Tz,
        A,
        A1,
        B,
        B1;

    public readonly Vec3 Tangent => new(Tx, Ty, Tz);

    public static GeodesicState Start(Uv at, Vec3 tangent) =>
        new()
        {
            U = at.U,
            V = at.V,
            Tx = tangent.X,
            Ty = tangent.Y,
            Tz = tangent.Z,
            A = 1,
            B1 = 1,
        };

    public static GeodesicState operator +(GeodesicState x, GeodesicState y) =>
        new()
        {
            U = x.U + y.U,
            V = x.V + y.V,
            Tx = x.Tx + y.Tx,
            Ty = x.Ty + y.Ty,
            Tz = x.Tz + y.Tz,
            A = x.A + y.A,
            A1 = x.A1 + y.A1,
            B = x.B + y.B,
            B1 = x.B1 + y.B1,
        };

    public static GeodesicState operator *(double k, GeodesicState x) =>
        new()
        {
            U = k * x.U,
            V = k * x.V,
            Tx = k * x.Tx,
            Ty = k * x.Ty,
            Tz = k * x.Tz,
            A = k * x.A,
            A1 = k * x.A1,
            B = k * x.B,
            B1 = k * x.B1,
        };

    public static GeodesicState operator -(GeodesicState x, GeodesicState y) => x + (-1 * y);
}
