using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>One keel layer as it stands on one side, in the starboard frame: where its outer face lies, how wide the planks want it and how wide it is.</summary>
internal sealed class KeelLayerStanding
{
    private readonly LoftedSurface hull;
    private readonly KeelFaceLine face;
    private readonly KeelEdgeCurve halfWidth;
    private readonly KeelEdgeCurve wanted;

    public KeelLayerStanding(
        KeelLayerSpec spec,
        PlankLayerSpec planks,
        ISurface planksOuterFace,
        LoftedSurface hull,
        KeelFaceLine face,
        KeelEdgeCurve wanted,
        KeelEdgeCurve halfWidth
    )
    {
        (Spec, Planks, PlanksOuterFace) = (spec, planks, planksOuterFace);
        (this.hull, this.face) = (hull, face);
        (this.wanted, this.halfWidth) = (wanted, halfWidth);
    }

    public KeelLayerSpec Spec { get; }

    /// <summary>The plank layer whose ends meet it.</summary>
    public PlankLayerSpec Planks { get; }

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

    /// <summary>The unit normal of a plumb or leaning side, pointing outboard into the planks.</summary>
    public Vec3 SideNormal(SurfacePoint at) => SideGradient(at).Unit();

    /// <summary>The same, 1 athwart.</summary>
    public Vec3 SideGradient(SurfacePoint at) =>
        Spec.Side is KeelLayerSide.Leaning(var degrees)
            ? Leaning(Math.Tan(degrees * Math.PI / 180))(at.P, 0).Gradient
            : Plumb(at.P, 0).Gradient;

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
            KeelLayerSide.SquareToPlank => KeelSideFace.SquareThrough(Plumb, PlanksOuterFace),
            KeelLayerSide.Leaning(var degrees) => KeelSideFace.Standing(
                Leaning(Math.Tan(degrees * Math.PI / 180))
            ),
            _ => KeelSideFace.Standing(Plumb),
        };

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
