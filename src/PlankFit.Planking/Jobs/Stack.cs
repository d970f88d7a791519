using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;

namespace PlankFit.Planking.Jobs;

/// <summary>
/// The layers one on the other, planks and cloth, from the inside out, and where their faces lie: distances from the table's surface along its outward normal, mm.
/// Every layer's faces are parallel to that surface.
/// </summary>
/// <param name="InnerMm">Of the face that lies on the frames.</param>
/// <param name="OuterMm">Of the face that the water meets.</param>
public sealed record Stack(ImmutableArray<StackedLayer> Layers, double InnerMm, double OuterMm)
{
    /// <summary>Thickness of all layers.</summary>
    public double ThicknessMm => OuterMm - InnerMm;

    public static Stack Of(PlankingJob job) => Of(job.Layers, job.Hull.OffsetsAreTo);

    /// <param name="layers">From the inside out.</param>
    /// <param name="to">Which of the stack's two outermost faces the table gives.</param>
    public static Stack Of(ImmutableArray<LayerSpec> layers, OffsetsAreTo to)
    {
        (double inner, double outer) = Faces(layers.Sum(l => l.ThicknessMm), to);
        ImmutableArray<StackedLayer>.Builder stacked = ImmutableArray.CreateBuilder<StackedLayer>(
            layers.Length
        );
        double at = inner;
        foreach (LayerSpec layer in layers)
        {
            stacked.Add(new(layer, at, at + (layer.ThicknessMm / 2), at + layer.ThicknessMm));
            at += layer.ThicknessMm;
        }

        return new(stacked.MoveToImmutable(), inner, outer);
    }

    /// <summary>The two faces of anything so thick of which the table gives one, mm from it, outward.</summary>
    public static (double InnerMm, double OuterMm) Faces(double thicknessMm, OffsetsAreTo to) =>
        to == OffsetsAreTo.Outside ? (-thicknessMm, 0) : (0, thicknessMm);
}

/// <summary>A layer in its stack; its faces as in <see cref="Stack"/>.</summary>
/// <param name="MiddleMm">Of the surface halfway through it, where a bent plank keeps its length.</param>
public sealed record StackedLayer(LayerSpec Spec, double InnerMm, double MiddleMm, double OuterMm);
