using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>
/// The side of the keel that the ends of one layer's planks meet, in the starboard frame. Either a surface y = f(x, z), which each face of the planks
/// meets at a place of its own, or the normals of the bottom along one line, which all faces meet at the same (u, v): square to plank.
/// </summary>
internal sealed class KeelSideFace
{
    /// <summary>The side at a place: how far outboard of it the place lies, mm, and the gradient of that distance, (−f_x, 1, −f_z).</summary>
    internal delegate (double BeyondMm, Vec3 Gradient) Wall(Vec3 place, double u);

    private readonly Wall? wall;
    private readonly ISurface? on;

    private KeelSideFace(Wall? wall, ISurface? on, bool square)
    {
        (this.wall, this.on) = (wall, on);
        SquareToPlank = square;
    }

    /// <summary>Nodes of its trace in each bay between stations: enough to keep it within 0.001 mm of the side. A side of its own may have the ramps of a lap in it.</summary>
    public int NodesABay { get; private init; } = 10;

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
    public static KeelSideFace Standing(Wall wall) => new(wall, null, false) { NodesABay = 30 };

    /// <summary>The normals of the bottom along the line in which a side given as a surface cuts one of its parallel surfaces.</summary>
    public static KeelSideFace SquareThrough(Wall wall, ISurface on) =>
        new(wall, on, true) { NodesABay = 30 };

    /// <summary>The v at which the side meets a parallel surface at u, by Newton from a guess; within 1e-10 mm.</summary>
    public double Meet(ISurface surface, double u, double guess)
    {
        if (wall is null)
        {
            return 0;
        }

        ISurface met = on ?? surface;
        double v = guess;
        for (int i = 0; i < 20; i++)
        {
            SurfacePoint p = met.At(u, v);
            (double beyond, Vec3 gradient) = wall(p.P, u);
            v -= beyond / gradient.Dot(p.Dv);
            if (Math.Abs(beyond) < 1e-10)
            {
                break;
            }
        }

        return v;
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
