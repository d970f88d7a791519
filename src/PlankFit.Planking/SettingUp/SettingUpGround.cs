using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Keel;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.SettingUp;

/// <summary>What all of setting up starts from: the hull as drawn, its faces, the keel's sides and the topside.</summary>
internal sealed class SettingUpGround
{
    private SettingUpGround(SettingUpSpec spec, BuiltKeel keel)
    {
        (PlankingJob job, HullSurface hull) = (keel.Job, keel.Hull);
        (Job, Spec, Hull) = (job, spec, hull);
        Stack = Stack.Of(job);
        Keel = keel.Layers;
        ImmutableArray<SkinFaces>.Builder ends = ImmutableArray.CreateBuilder<SkinFaces>();
        foreach (StackedLayer layer in Stack.Layers)
        {
            if (layer.Spec is PlankLayerSpec planks)
            {
                ends.Add(new(layer.InnerMm, layer.OuterMm, keel.SideOf(planks)));
            }
        }

        Layers = ends.ToImmutable();
        Topside = spec.Topside is { } t ? Topside.Of(t.Slope, job.Offsets, job.Hull, hull) : null;
        Backbone = BackboneOf(job, spec.Backbone);
    }

    /// <summary>As far as faces go: see <see cref="FacesJob"/>.</summary>
    public PlankingJob Job { get; }
    public SettingUpSpec Spec { get; }

    /// <summary>What lies behind the planks.</summary>
    public ImmutableArray<FramingSpec> Behind { get; private init; } = [];
    public HullSurface Hull { get; }

    public Stack Stack { get; }

    /// <summary>The layers of planks, from the inside out: their two faces and the side of the keel that they meet.</summary>
    public ImmutableArray<SkinFaces> Layers { get; }

    public ImmutableArray<KeelLayerStanding> Keel { get; }

    public Topside? Topside { get; }

    /// <summary>The backbone's side; null where none is named.</summary>
    public KeelSideFace? Backbone { get; }

    /// <summary>How far out the topside's two faces lie from the table's.</summary>
    public (double InnerMm, double OuterMm) TopsideFaces =>
        Stack.Faces(Spec.Topside?.ThicknessMm ?? 0, Job.Hull.OffsetsAreTo);

    /// <summary>Setting up comes before anything is measured, so it is of the table as drawn.</summary>
    public static SettingUpGround Of(
        SettingUpSpec spec,
        ImmutableArray<FramingSpec> behind,
        BuiltKeel drawn
    ) => new(spec, drawn) { Behind = behind };

    public ChineCorner Corner(TopsideAt at, double xMm) =>
        ChineCorner.Of(
            at.CornerDegrees,
            Stack.ThicknessMm,
            Spec.Topside!.ThicknessMm,
            Job.Hull.OffsetsAreTo,
            Spec.Topside.LapAt(xMm),
            Spec.ClothRadiusMm,
            Spec.ChinePiece
        );

    private static KeelSideFace? BackboneOf(PlankingJob job, BackboneWidth? width)
    {
        switch (width)
        {
            case null:
                return null;
            case BackboneWidth.Even(var mm):
                return KeelSideFace.Standing((place, _) => (place.Y - mm, Vec3.UnitY));
            default:
                string name = ((BackboneWidth.Line)width).Name;
                OffsetLine line = job.Offsets.Named(name);
                var points = job
                    .Offsets.Stations.Select(
                        (s, i) =>
                            (
                                X: (line.PositionsMm.IsDefaultOrEmpty ? null : line.PositionsMm[i])
                                    ?? s.PositionMm,
                                Y: line.HalfBreadthsMm[i]
                            )
                    )
                    .Where(p => p.Y is not null)
                    .ToList();
                var curve = KeelEdgeCurve.Through(
                    [.. points.Select(p => p.X)],
                    [.. points.Select(p => p.Y!.Value)]
                );
                return KeelSideFace.Standing(
                    (place, _) =>
                        (place.Y - curve.At(place.X), new Vec3(-curve.SlopeAt(place.X), 1, 0))
                );
        }
    }
}

/// <summary>A layer's two faces, from the table's surface, mm, and the side of the keel that its planks meet.</summary>
internal readonly record struct SkinFaces(double InnerMm, double OuterMm, KeelSideFace Side);
