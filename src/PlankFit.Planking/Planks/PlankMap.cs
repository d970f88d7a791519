using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Planks;

/// <summary>
/// The map between a plank laid flat and its layer's mid-thickness surface, both ways. To port the surface is the starboard one (that is what
/// <see cref="Uv"/> means on either side) and the flat plank is its mirror image.
/// </summary>
public sealed class PlankMap
{
    private readonly StripMap strip;
    private readonly ISurface surface;
    private readonly bool port;
    private readonly FlatShift shift;

    internal PlankMap(StripMap strip, ISurface surface)
        : this(strip, surface, false, FlatShift.None) { }

    private PlankMap(StripMap strip, ISurface surface, bool port, FlatShift shift)
    {
        (this.strip, this.surface, this.port, this.shift) = (strip, surface, port, shift);
    }

    /// <summary>The flat place, mm, of a place on the (starboard) surface; to 1e-6 mm of the strip's coordinates.</summary>
    /// <exception cref="GeodesicException">Where the place is too far from the plank to have a square foot on its line.</exception>
    public Vec2 Flat(Uv uv) => OfPlank(strip.Flat(strip.Find(uv, null)));

    /// <summary>The same with a guess: a flat place near the answer, which saves the search.</summary>
    public Vec2 Flat(Uv uv, Vec2 near) =>
        OfPlank(strip.Flat(strip.Find(uv, strip.Fermi(OfStrip(near)))));

    /// <summary>The parameters on the (starboard) surface of a flat place.</summary>
    public Uv On(Vec2 flat) => strip.On(strip.Fermi(OfStrip(flat)));

    /// <summary>The (starboard) mid-thickness surface under a flat place.</summary>
    public SurfacePoint Under(Vec2 flat)
    {
        Uv uv = On(flat);
        return surface.At(uv.U, uv.V);
    }

    /// <summary>The point in space of a flat place, on the plank's own side of the hull.</summary>
    public Vec3 Point(Vec2 flat)
    {
        Vec3 p = Under(flat).P;
        return port ? p.MirroredInY() : p;
    }

    /// <summary>
    /// The point in space of a flat place, and how much area of the surface lies under an area of the flat plank there. On the surface lines square to the own
    /// line draw together or apart by 1 − t² (2 K₀ + K)/6, K₀ the Gauss curvature on the line and K at the place (the Jacobi equation, K taken as
    /// straight between; it errs by some K² t⁴/24, 1e-8 on hulls).
    /// </summary>
    public (Vec3 Point, double AreaRate) Measured(Vec2 flat)
    {
        Fermi f = strip.Fermi(OfStrip(flat));
        Uv uv = strip.On(f);
        SurfacePoint p = surface.At(uv.U, uv.V);
        double onLine = strip.Line.Under(f.S).GaussCurvature,
            across = 1 - (f.T * f.T * ((2 * onLine) + p.GaussCurvature) / 6);
        return (port ? p.P.MirroredInY() : p.P, across / strip.Rate(f.S));
    }

    /// <summary>Unit tangent in space of the plank's own line abreast of a flat place, going outboard, in the starboard frame.</summary>
    public Vec3 Grain(Vec2 flat) => strip.Line.At(strip.Fermi(OfStrip(flat)).S).Tangent;

    internal PlankMap OfPort() => new(strip, surface, true, shift);

    /// <summary>The map of a sawn plank, which lies so in the coordinates of this one.</summary>
    internal PlankMap Of(FlatShift sawn) => new(strip, surface, port, sawn);

    /// <summary>What is drawn or marked beyond a plank's own outline lies within this, mm.</summary>
    private const double MarginMm = 20;

    /// <summary>Whether the plank's own line was followed as far as all these flat places, and a little further.</summary>
    internal bool Reaches(IEnumerable<Vec2> flat) =>
        flat.Select(p => OfStrip(p).X)
            .All(x => x > strip.FlatFrom + MarginMm && x < strip.FlatTo - MarginMm);

    private Vec2 OfStrip(Vec2 p)
    {
        Vec2 q = shift == FlatShift.None ? p : shift.To(p);
        return port ? new(q.X, -q.Y) : q;
    }

    private Vec2 OfPlank(Vec2 p)
    {
        Vec2 q = port ? new(p.X, -p.Y) : p;
        return shift == FlatShift.None ? q : shift.Back(q);
    }
}
