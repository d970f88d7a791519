using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>A plank as it was when it was sawn: its shapes stay what they were, whatever the lay-out does afterwards.</summary>
/// <param name="Revision">Of the inputs by which it was sawn.</param>
public sealed record CutPlank(
    PlankId Id,
    string Revision,
    ImmutableArray<Vec3> Outline,
    ImmutableArray<Vec2> FlatNet,
    ImmutableArray<Vec2> FlatCut,
    ImmutableArray<Vec3> ForwardSeam,
    ImmutableArray<Vec2> ForwardFlat,
    ImmutableArray<Vec3> AfterSeam,
    ImmutableArray<Vec2> AfterFlat,
    ImmutableArray<CutEnd> Ends,
    CutSizes Sizes
)
{
    public Side Side => Id.Side;

    public int Layer => Id.Layer;

    public int Number => Id.Number;

    /// <summary>The layer that it was sawn for; null in a record of before this was written down.</summary>
    public CutLayer? SawnFor { get; init; }

    public static CutPlank Of(Plank plank, PlankLayerSpec layer, string revision) =>
        new(
            plank.Id,
            revision,
            plank.Outline,
            plank.FlatNet,
            plank.FlatCut,
            plank.ForwardEdge.Seam,
            plank.ForwardEdge.Flat,
            plank.AfterEdge.Seam,
            plank.AfterEdge.Flat,
            [
                .. plank.Ends.Select(e => new CutEnd(
                    e.At,
                    e.Cut,
                    e.CutDegrees,
                    e.BevelDegrees,
                    e.BevelAtLeastN,
                    e.BevelAtGreatestN,
                    e.OverhangMm,
                    e.AllowanceMm,
                    e.NetLine,
                    e.Outline,
                    e.OuterLine,
                    e.InnerLine
                )),
            ],
            CutSizes.Of(plank)
        )
        {
            SawnFor = new(layer.Name, layer.ThicknessMm, layer.Heads),
        };

    /// <summary>The two ends of its forward or after seam, inboard first, in the starboard frame; null where it has no such edge.</summary>
    public (Vec3 Inboard, Vec3 Outboard)? SeamEnds(bool after)
    {
        ImmutableArray<Vec3> seam = after ? AfterSeam : ForwardSeam;
        return seam.IsEmpty ? null
            : Side == Side.Port ? (seam[0].MirroredInY(), seam[^1].MirroredInY())
            : (seam[0], seam[^1]);
    }

    /// <summary>The plank of today's lay-out with the shapes that were sawn.</summary>
    public Plank In(Plank today) =>
        Sizes.In(today) with
        {
            IsCut = true,
            CutFrom = Revision,
            Outline = Outline,
            FlatNet = FlatNet,
            FlatCut = FlatCut,
            ForwardEdge = CutSizes.Edge(Sizes.Forward, ForwardSeam, ForwardFlat),
            AfterEdge = CutSizes.Edge(Sizes.After, AfterSeam, AfterFlat),
            Ends =
            [
                .. Ends.Select(e => new PlankEnd(
                    e.At,
                    e.Cut,
                    e.CutDegrees,
                    e.BevelDegrees,
                    e.BevelAtLeastN,
                    e.BevelAtGreatestN,
                    e.OverhangMm,
                    e.AllowanceMm,
                    e.NetLine,
                    e.Outline,
                    e.OuterLine,
                    e.InnerLine
                )),
            ],
        };
}

/// <summary>What a plank was sawn for: the name of its layer, its thickness, mm, and which way its planks headed.</summary>
public sealed record CutLayer(string Name, double ThicknessMm, Heads Heads);

/// <summary>One end of a plank as it was sawn; fields as in <see cref="PlankEnd"/>.</summary>
public sealed record CutEnd(
    HullEdge At,
    EndCut Cut,
    double CutDegrees,
    double BevelDegrees,
    double BevelAtLeastN,
    double BevelAtGreatestN,
    double? OverhangMm,
    double AllowanceMm,
    ImmutableArray<Vec2> NetLine,
    ImmutableArray<Vec3> Outline,
    ImmutableArray<Vec2> OuterLine,
    ImmutableArray<Vec2> InnerLine
);
