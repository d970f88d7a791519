using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.SettingUp;

/// <summary>How the topside stands along the chine: its outward normal on the table's surface, where it is known.</summary>
internal sealed class Topside
{
    private readonly LoftedSurface hull;
    private readonly CubicSpline[]? line;
    private readonly (double U, double Degrees)[] flare;
    private readonly double fromU,
        toU;

    private Topside(LoftedSurface hull, CubicSpline[]? line, (double, double)[] flare)
    {
        (this.hull, this.line, this.flare) = (hull, line, flare);
        (fromU, toU) = line is null
            ? (double.MinValue, double.MaxValue)
            : (line[0].From, line[0].To);
    }

    /// <summary>What <see cref="SettingUpChecks"/> has let pass.</summary>
    public static Topside Of(TopsideSlope slope, OffsetTable table, HullSpec spec, HullSurface hull)
    {
        LoftedSurface surface = hull.Surface;
        if (slope is TopsideSlope.Flare flare)
        {
            return new(
                surface,
                null,
                [
                    .. flare
                        .Stations.Select(f =>
                            (f.Station is null ? surface.UFrom : U(hull, f), f.Degrees)
                        )
                        .OrderBy(f => f.Item1),
                ]
            );
        }

        string name = ((TopsideSlope.ToLine)slope).Name;
        OffsetLine line = table.Named(name);
        var filled = FilledLine.From(table, line);
        (int Station, double U)[] at =
        [
            .. HullLoft
                .Stations(table, spec.Panel)
                .Select((i, k) => (i, surface.StationU[k]))
                .Where(p => filled.Has(p.i)),
        ];
        double[] u = [.. at.Select(a => a.U)];
        CubicSpline Of(Func<Vec3, double> part) =>
            CubicSpline.Through(u, [.. at.Select(a => part(filled.At(a.Station)))]);
        return new(surface, [Of(p => p.X), Of(p => p.Y), Of(p => p.Z)], []);
    }

    /// <summary>The topside at a place of the chine; null past the ends of its line, or where it does not stand clear of the bottom.</summary>
    public TopsideAt? At(double u)
    {
        if (u < fromU - 1e-6 || u > toU + 1e-6)
        {
            return null;
        }

        SurfacePoint chine = hull.At(u, hull.UpperV(u));
        Vec3 along = (hull.HasApex ? chine.Du + chine.Dv : chine.Du).Unit(),
            up = line is null
                ? Flared(u)
                : new Vec3(line[0].At(u), line[1].At(u), line[2].At(u)) - chine.P;
        Vec3 normal = along.Cross(up);
        if (!(normal.Norm > 1e-9 * up.Norm))
        {
            return null;
        }

        normal = normal.Unit();
        normal = normal.Y < 0 ? -normal : normal;

        // The wood's angle: 180 less what the normals turn.
        double corner =
            180 - (Math.Acos(Math.Clamp(normal.Dot(chine.Normal), -1, 1)) * 180 / Math.PI);
        Vec3 outward = along.Cross(chine.Normal);
        outward = outward.Dot(chine.Dv) < 0 ? -outward : outward;
        return corner is > 20 and < 175 ? new(chine, along, outward, normal, corner) : null;
    }

    private Vec3 Flared(double u)
    {
        int after = Array.FindIndex(flare, f => f.U >= u);
        double degrees =
            after < 0 ? flare[^1].Degrees
            : after == 0 ? flare[0].Degrees
            : flare[after - 1].Degrees
                + (
                    (flare[after].Degrees - flare[after - 1].Degrees)
                    * (u - flare[after - 1].U)
                    / (flare[after].U - flare[after - 1].U)
                );
        (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
        return new(0, sin, cos);
    }

    private static double U(HullSurface hull, FlareAt flare) =>
        hull.Stations.Single(s => s.Name == flare.Station).U;
}

/// <summary>Bottom and topside where they meet.</summary>
/// <param name="Chine">The bottom there, on the table's surface.</param>
/// <param name="Along">The unit tangent of the chine, aft.</param>
/// <param name="Outward">In the bottom, square to the chine, away from the keel.</param>
/// <param name="Normal">Of the topside, out of the hull.</param>
/// <param name="CornerDegrees">Between the outer faces, in the wood, square to the chine.</param>
internal readonly record struct TopsideAt(
    SurfacePoint Chine,
    Vec3 Along,
    Vec3 Outward,
    Vec3 Normal,
    double CornerDegrees
)
{
    /// <summary>A place of the corner's own plane, (s, z), in space.</summary>
    public Vec3 Place(Vec2 corner) => Chine.P + (corner.X * Outward) + (corner.Y * Chine.Normal);
}
