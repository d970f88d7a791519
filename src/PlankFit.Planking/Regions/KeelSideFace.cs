using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Regions;

/// <summary>
/// The side of the keel that the ends of one layer's planks meet, in the starboard frame. Either a surface y = f(x, z), which each face of the planks
/// meets at a place of its own, or the normals of the bottom along one line, which all faces meet at the same (u, v): square to plank.
/// </summary>
internal sealed class KeelSideFace
{
    /// <summary>The side at a place: how far outboard of it the place lies, mm, and the gradient of that distance, (−f_x, 1, −f_z).</summary>
    internal delegate (double BeyondMm, Vec3 Gradient) Wall(Vec3 place, double u);

    /// <summary>Where the bottom's normal at (u, v) comes through a face of the keel, with how fast that place moves with u and with v.</summary>
    internal delegate (Vec3 Place, Vec3 Du, Vec3 Dv) Piercing(double u, double v);

    /// <summary>Nearer than this the side counts as met, mm.</summary>
    private const double MetMm = 1e-7;

    private readonly Wall? wall;
    private readonly Piercing? pierced;

    private KeelSideFace(Wall? wall, Piercing? pierced, bool square)
    {
        (this.wall, this.pierced) = (wall, pierced);
        SquareToPlank = square;
    }

    /// <summary>It is not the table's keel line, but a side with a shape of its own: cloth on it may have a lap that ends in a ramp.</summary>
    public bool IsOfItsOwn { get; private init; }

    /// <summary>Every face ends on the same line and the cut is square.</summary>
    public bool SquareToPlank { get; }

    /// <summary>The vertical surface through the keel line of the table.</summary>
    public static KeelSideFace Plumb(LoftedSurface hull) =>
        new(
            (place, u) =>
            {
                SurfacePoint keel = AbreastOf(hull, u, place.X);
                double lean = keel.Du.Y / keel.Du.X;
                return (place.Y - keel.P.Y - (lean * (place.X - keel.P.X)), new Vec3(-lean, 1, 0));
            },
            null,
            false
        );

    /// <summary>The normals of the bottom along the keel line of the table.</summary>
    public static KeelSideFace SquareAtKeelLine { get; } = new(null, null, true);

    /// <summary>Any side given as a surface.</summary>
    public static KeelSideFace Standing(Wall wall) => new(wall, null, false) { IsOfItsOwn = true };

    /// <summary>The normals of the bottom through an edge of the keel: the line in which a surface cuts the face that the normals come through.</summary>
    public static KeelSideFace SquareThrough(Wall wall, Piercing pierced) =>
        new(wall, pierced, true) { IsOfItsOwn = true };

    /// <summary>The v at which the side meets a parallel surface at u, by Newton from a guess; within 1e-10 mm where there is one.</summary>
    public double Meet(ISurface surface, double u, double guess) =>
        Newton(surface, u, guess, out _).V;

    /// <summary>The same with its slope; null where the side does not meet the surface near the guess.</summary>
    public KeelMeeting? TryMeet(ISurface surface, double u, double guess)
    {
        KeelMeeting met = Newton(surface, u, guess, out double missMm);
        return Math.Abs(missMm) < MetMm && double.IsFinite(met.Rate) ? met : null;
    }

    private KeelMeeting Newton(ISurface surface, double u, double guess, out double missMm)
    {
        missMm = 0;
        if (wall is null)
        {
            return new(u, 0, 0, surface.At(u, 0).Dv.Norm);
        }

        double v = guess;
        for (int i = 0; ; i++)
        {
            (Vec3 place, Vec3 du, Vec3 dv) = pierced is null ? On(surface, u, v) : pierced(u, v);
            (missMm, Vec3 gradient) = wall(place, u);
            double across = gradient.Dot(dv);
            if (Math.Abs(missMm) < 1e-10 || i == 20)
            {
                return new(u, v - (missMm / across), -gradient.Dot(du) / across, dv.Norm);
            }

            v -= missMm / across;
        }
    }

    private static (Vec3 Place, Vec3 Du, Vec3 Dv) On(ISurface surface, double u, double v)
    {
        SurfacePoint p = surface.At(u, v);
        return (p.P, p.Du, p.Dv);
    }

    /// <summary>The unit normal of the side at a place, pointing outboard into the planks; only where the side is not square to them.</summary>
    public Vec3 Normal(Vec3 place, double u) => wall!(place, u).Gradient.Unit();

    /// <summary>The keel line at the same x as a point that lies at most a stack's thickness away from it.</summary>
    private static SurfacePoint AbreastOf(LoftedSurface hull, double u, double x)
    {
        double at = u;
        SurfacePoint keel = hull.At(at, 0);
        for (int i = 0; i < 3 && Math.Abs(keel.P.X - x) > 1e-9; i++)
        {
            at -= (keel.P.X - x) / keel.Du.X;
            keel = hull.At(at, 0);
        }

        return keel;
    }
}

/// <summary>Where the keel's side meets a parallel surface at u.</summary>
/// <param name="Rate">dv/du along the side's trace.</param>
/// <param name="MmAUnit">mm of surface a unit of v.</param>
internal readonly record struct KeelMeeting(double U, double V, double Rate, double MmAUnit);
