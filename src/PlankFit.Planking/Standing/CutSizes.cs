using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>What is said of a sawn plank beside its shapes, as it was when it was sawn; fields as in <see cref="Plank"/>.</summary>
public sealed record CutSizes(
    PlankKind Kind,
    double NetLengthMm,
    double CutLengthMm,
    double WidestMm,
    double NarrowestMm,
    double WidestGapMm,
    double WidestOverlapMm,
    bool StraightEdges,
    double? KeelAngleDegrees,
    double AreaMm2,
    double StrainMm,
    Bend Bend,
    bool FitBothEnds,
    bool? DropsIn,
    ImmutableArray<PlankMark> Marks,
    CutEdge? Forward,
    CutEdge? After
)
{
    public static CutSizes Of(Plank plank) =>
        new(
            plank.Kind,
            plank.NetLengthMm,
            plank.CutLengthMm,
            plank.WidestMm,
            plank.NarrowestMm,
            plank.WidestGapMm,
            plank.WidestOverlapMm,
            plank.StraightEdges,
            plank.KeelAngleDegrees,
            plank.AreaMm2,
            plank.StrainMm,
            plank.Bend,
            plank.FitBothEnds,
            plank.DropsIn,
            plank.Marks,
            CutEdge.Of(plank.ForwardEdge),
            CutEdge.Of(plank.AfterEdge)
        );

    public Plank In(Plank today) =>
        today with
        {
            Kind = Kind,
            NetLengthMm = NetLengthMm,
            CutLengthMm = CutLengthMm,
            WidestMm = WidestMm,
            NarrowestMm = NarrowestMm,
            WidestGapMm = WidestGapMm,
            WidestOverlapMm = WidestOverlapMm,
            StraightEdges = StraightEdges,
            KeelAngleDegrees = KeelAngleDegrees,
            AreaMm2 = AreaMm2,
            StrainMm = StrainMm,
            Bend = Bend,
            FitBothEnds = FitBothEnds,
            DropsIn = DropsIn,
            Marks = Marks,
        };

    public static PlankEdge Edge(
        CutEdge? edge,
        ImmutableArray<Vec3> seam,
        ImmutableArray<Vec2> flat
    ) =>
        edge is null
            ? PlankEdge.None
            : new(
                seam,
                flat,
                edge.SeamLengthMm,
                edge.RoundMm,
                edge.HollowMm,
                edge.ShapeWord,
                edge.Neighbour
            );
}

/// <summary>One long edge of a sawn plank beside its points; fields as in <see cref="PlankEdge"/>.</summary>
public sealed record CutEdge(
    double SeamLengthMm,
    double RoundMm,
    double HollowMm,
    string ShapeWord,
    PlankId? Neighbour
)
{
    public static CutEdge? Of(PlankEdge edge) =>
        edge.Exists
            ? new(edge.SeamLengthMm, edge.RoundMm, edge.HollowMm, edge.ShapeWord, edge.Neighbour)
            : null;
}
