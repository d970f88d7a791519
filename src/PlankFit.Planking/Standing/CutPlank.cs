using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>A plank as it was when it was sawn: its shapes stay what they were, whatever the lay-out does afterwards.</summary>
/// <param name="Revision">Of the inputs by which it was sawn.</param>
public sealed record CutPlank(
    string Id,
    string Revision,
    ImmutableArray<Vec3> Outline,
    ImmutableArray<Vec2> FlatNet,
    ImmutableArray<Vec2> FlatCut,
    ImmutableArray<Vec3> ForwardSeam,
    ImmutableArray<Vec2> ForwardFlat,
    ImmutableArray<Vec3> AfterSeam,
    ImmutableArray<Vec2> AfterFlat,
    ImmutableArray<CutEnd> Ends
)
{
    public static CutPlank Of(Plank plank, string revision) =>
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
            ]
        );

    /// <summary>The plank of today's lay-out with the shapes that were sawn.</summary>
    public Plank In(Plank today) =>
        today with
        {
            IsCut = true,
            Outline = Outline,
            FlatNet = FlatNet,
            FlatCut = FlatCut,
            ForwardEdge = today.ForwardEdge with { Seam = ForwardSeam, Flat = ForwardFlat },
            AfterEdge = today.AfterEdge with { Seam = AfterSeam, Flat = AfterFlat },
            CutLengthMm = FlatCut.Max(p => p.X) - FlatCut.Min(p => p.X),
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
