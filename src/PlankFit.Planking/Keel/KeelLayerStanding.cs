using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>One keel layer as it stands on one side, in the starboard frame: where its outer face lies, how wide the planks want it and how wide it is.</summary>
internal sealed class KeelLayerStanding
{
    private readonly Func<double, double> heightAt;
    private readonly KeelEdgeCurve halfWidth;
    private readonly KeelEdgeCurve wanted;

    public KeelLayerStanding(
        KeelLayerSpec spec,
        PlankLayerSpec planks,
        ISurface planksOuterFace,
        Func<double, double> heightAt,
        KeelEdgeCurve wanted,
        KeelEdgeCurve halfWidth
    )
    {
        (Spec, Planks, PlanksOuterFace) = (spec, planks, planksOuterFace);
        (this.heightAt, this.wanted, this.halfWidth) = (heightAt, wanted, halfWidth);
    }

    public KeelLayerSpec Spec { get; }

    /// <summary>The plank layer whose ends meet it.</summary>
    public PlankLayerSpec Planks { get; }

    public ISurface PlanksOuterFace { get; }

    /// <summary>Height of its outer face at x, level athwart, mm.</summary>
    public double HeightAt(double x) => heightAt(x);

    /// <summary>The half-width at which its outer face meets the planks' outer face, mm.</summary>
    public double WantedAt(double x) => wanted.At(x);

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

    private (double, Vec3) Plumb(Vec3 place, double u) =>
        (place.Y - HalfWidthAt(place.X), new Vec3(-HalfWidthSlopeAt(place.X), 1, 0));

    /// <summary>Through the outer edge, wider outward by the tangent of the lean: y = h(x) − tan (z − z_outer(x)).</summary>
    private KeelSideFace.Wall Leaning(double tangent) =>
        (place, u) =>
        {
            const double step = 1;
            double z = HeightAt(place.X),
                slope = (HeightAt(place.X + step) - HeightAt(place.X - step)) / (2 * step);
            return (
                place.Y - HalfWidthAt(place.X) + (tangent * (place.Z - z)),
                new Vec3(-HalfWidthSlopeAt(place.X) - (tangent * slope), 1, tangent)
            );
        };
}
