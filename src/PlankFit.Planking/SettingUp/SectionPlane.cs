using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.SettingUp;

/// <summary>The plane of a frame: level athwart, plumb or raked. Places in it are (half-breadth, height), heights up the rake from the base line.</summary>
/// <param name="Aft">Its unit normal, aft.</param>
/// <param name="Up">The unit vector up in it.</param>
internal readonly record struct SectionPlane(Vec3 Origin, Vec3 Aft, Vec3 Up)
{
    /// <summary>A plane nearer level than this is no frame's: the sine of 6 degrees.</summary>
    private const double LeastUp = 0.1;

    public static SectionPlane Plumb(double x) => new(new(x, 0, 0), Vec3.UnitX, Vec3.UnitZ);

    /// <summary>Through two points of the middle plane's profile; null where it would be nearly level.</summary>
    public static SectionPlane? Through(Vec3 a, Vec3 b)
    {
        var rise = new Vec3(b.X - a.X, 0, b.Z - a.Z);
        if (!(rise.Norm > 1e-6))
        {
            return null;
        }

        Vec3 up = rise.Unit();
        up = up.Z < 0 ? -up : up;
        if (up.Z < LeastUp)
        {
            return null;
        }

        Vec3 foot = a - (a.Z / up.Z * up);
        return new(new(foot.X, 0, 0), new(up.Z, 0, -up.X), up);
    }

    public double RakeDegrees => Math.Atan2(Up.X, Up.Z) * 180 / Math.PI;

    /// <summary>How far aft of it a place lies, square to it, mm.</summary>
    public double OffMm(Vec3 p) => (p - Origin).Dot(Aft);

    public Vec2 Flat(Vec3 p) => new(p.Y, (p - Origin).Dot(Up));

    /// <summary>The part of a direction that lies in it.</summary>
    public Vec2 FlatDirection(Vec3 d) => new(d.Y, d.Dot(Up));

    public Vec3 Point(Vec2 flat) => Origin + Direction(flat);

    public Vec3 Direction(Vec2 flat) => new Vec3(0, flat.X, 0) + (flat.Y * Up);

    public SectionPlane Moved(double aftMm) => this with { Origin = Origin + (aftMm * Aft) };

    /// <summary>A place carried along a direction into the plane.</summary>
    public Vec2 Along(Vec3 p, Vec3 direction) =>
        Flat(p - (OffMm(p) / direction.Dot(Aft) * direction));
}
