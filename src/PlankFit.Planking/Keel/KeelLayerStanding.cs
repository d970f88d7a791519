using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Keel;

/// <summary>One keel layer as it stands on one side, in the starboard frame: where its outer face lies, how wide the planks want it and how wide it is.</summary>
internal sealed class KeelLayerStanding
{
    /// <summary>A place on the layer's outer face is found by Newton to this, mm, within so many steps.</summary>
    private const double PiercedMm = 1e-11;
    private const int MostSteps = 20;

    private readonly LoftedSurface hull;
    private readonly KeelFaceLine face;
    private readonly KeelEdgeCurve halfWidth;
    private readonly KeelEdgeCurve wanted;

    public KeelLayerStanding(
        KeelLayerSpec spec,
        ISurface planksOuterFace,
        LoftedSurface hull,
        KeelFaceLine face,
        KeelEdgeCurve wanted,
        KeelEdgeCurve halfWidth
    )
    {
        (Spec, PlanksOuterFace) = (spec, planksOuterFace);
        (this.hull, this.face) = (hull, face);
        (this.wanted, this.halfWidth) = (wanted, halfWidth);
    }

    public KeelLayerSpec Spec { get; }

    public ISurface PlanksOuterFace { get; }

    /// <summary>Height of its outer face at x, level athwart, mm.</summary>
    public double HeightAt(double x) => face.HeightAt(x);

    /// <summary>Its slope dz/dx there.</summary>
    public double FaceSlopeAt(double x) => face.SlopeAt(x);

    /// <summary>Distance along it between two places, mm.</summary>
    public double AlongFaceMm(double from, double to) => face.AlongMm(from, to);

    /// <summary>The planks' outer face at x and half-breadth y; null where it has no such place.</summary>
    public SectionPlace? PlanksOver(double x, double y) =>
        SectionPlace.Find(PlanksOuterFace, hull, x, y);

    /// <summary>The unit normal of its side, pointing outboard into the planks.</summary>
    public Vec3 SideNormal(SurfacePoint at) => SideGradient(at, HalfWidthSlopeAt(at.P.X)).Unit();

    /// <summary>The same, 1 athwart, of a side whose outer edge widens aft by so much, mm a mm.</summary>
    public Vec3 SideGradient(SurfacePoint at, double widens)
    {
        double slope = FaceSlopeAt(at.P.X);
        switch (Spec.Side)
        {
            case KeelLayerSide.Leaning(var degrees):
                double tangent = Math.Tan(degrees * Math.PI / 180);
                return new(-widens - (tangent * slope), 1, tangent);
            case KeelLayerSide.SquareToPlank:
                // It holds the outer edge and the normals of the bottom along it.
                Vec3 across = at.Normal.Cross(new(1, widens, slope));
                return across / across.Y;
            default:
                return new(-widens, 1, 0);
        }
    }

    /// <summary>The half-width at which its outer face meets the planks' outer face, mm.</summary>
    public double WantedAt(double x) => wanted.At(x);

    /// <summary>How fast that changes along the hull, mm a mm.</summary>
    public double WantedSlopeAt(double x) => wanted.SlopeAt(x);

    /// <summary>The half-width that is there, at its outer face, mm.</summary>
    public double HalfWidthAt(double x) => halfWidth.At(x);

    /// <summary>How fast that changes along the hull, mm a mm.</summary>
    public double HalfWidthSlopeAt(double x) => halfWidth.SlopeAt(x);

    /// <summary>The side that planks meet, carried on inward and outward past the layer's own faces.</summary>
    public KeelSideFace Side =>
        Spec.Side switch
        {
            KeelLayerSide.SquareToPlank => KeelSideFace.SquareThrough(Plumb, Pierced),
            KeelLayerSide.Leaning(var degrees) => KeelSideFace.Standing(
                Leaning(Math.Tan(degrees * Math.PI / 180))
            ),
            _ => KeelSideFace.Standing(Plumb),
        };

    /// <summary>Where the bottom's normal at (u, v) comes through the layer's outer face: z = z_outer(x), so that there a side square to the planks has the half-width.</summary>
    private (Vec3 Place, Vec3 Du, Vec3 Dv) Pierced(double u, double v)
    {
        SurfacePoint table = hull.At(u, v);
        double outMm = 0,
            slope;
        for (int i = 0; ; i++)
        {
            Vec3 place = table.P + (outMm * table.Normal);
            slope = FaceSlopeAt(place.X);
            double step =
                (place.Z - HeightAt(place.X)) / (table.Normal.Z - (slope * table.Normal.X));
            outMm -= step;
            if (Math.Abs(step) < PiercedMm || i == MostSteps)
            {
                break;
            }
        }

        // The place moves with the parallel surface, and along the normal so as to stay on the face.
        SurfacePoint there = new ParallelSurface(hull, outMm).At(u, v);
        Vec3 normal = there.Normal,
            level = new(-slope, 0, 1);
        Vec3 Held(Vec3 rate) => rate - (level.Dot(rate) / level.Dot(normal) * normal);
        return (there.P, Held(there.Du), Held(there.Dv));
    }

    private (double BeyondMm, Vec3 Gradient) Plumb(Vec3 place, double u) =>
        (place.Y - HalfWidthAt(place.X), new Vec3(-HalfWidthSlopeAt(place.X), 1, 0));

    /// <summary>Through the outer edge, wider outward by the tangent of the lean: y = h(x) − tan (z − z_outer(x)).</summary>
    private KeelSideFace.Wall Leaning(double tangent) =>
        (place, u) =>
        {
            double z = HeightAt(place.X),
                slope = FaceSlopeAt(place.X);
            return (
                place.Y - HalfWidthAt(place.X) + (tangent * (place.Z - z)),
                new Vec3(-HalfWidthSlopeAt(place.X) - (tangent * slope), 1, tangent)
            );
        };
}
