using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

public enum Side
{
    Starboard,
    Port,
}

/// <summary>
/// One plank, worked out. Points in space are on the layer's mid-thickness surface, mm; flat points are (s, n) with the outer face up, mm.
/// </summary>
/// <param name="Outline">Whole net boundary, counter-clockwise seen from outside, from the inboard vertex with the least n, first point not repeated.</param>
/// <param name="FlatNet">The same boundary laid flat, vertex for vertex with Outline.</param>
/// <param name="FlatCut">The shape to saw: encloses both faces, with what is left long and the allowances; counter-clockwise.</param>
/// <param name="NetLengthMm">Along the plank's own line between its two net ends.</param>
/// <param name="CutLengthMm">Overall, corner to corner along that line: what it asks of a board.</param>
/// <param name="KeelAngleDegrees">Angle in the surface between the plank's own line and the keel; null where it does not meet the keel.</param>
/// <param name="StrainMm">Edge length that the wood must take up as strain, |K| w² length / 12, the stated strain of the flat shape, mm.</param>
public sealed record Plank(
    PlankId Id,
    PlankKind Kind,
    ImmutableArray<Vec3> Outline,
    ImmutableArray<Vec2> FlatNet,
    ImmutableArray<Vec2> FlatCut,
    PlankEdge ForwardEdge,
    PlankEdge AfterEdge,
    ImmutableArray<PlankEnd> Ends,
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
    ImmutableArray<PlankMark> Marks
)
{
    public Side Side => Id.Side;

    public int Layer => Id.Layer;

    public int Number => Id.Number;

    /// <summary>It is sawn: its shapes are those of the record, whatever the lay-out does.</summary>
    public bool IsCut { get; init; }

    /// <summary>The revision of the job that it was sawn from; null while it is not sawn.</summary>
    public string? CutFrom { get; init; }

    /// <summary>It is on the hull already: its edges are where they were measured, and it is not to be sawn again.</summary>
    public bool IsFitted { get; init; }

    /// <summary>Not to be sawn any more.</summary>
    public bool IsFixed => IsFitted || IsCut;

    /// <summary>The plank that this lay-out would have sawn for its place; null but for one that is sawn, whose shapes are those of the record.</summary>
    public Plank? Place { get; init; }

    /// <summary>What lies on the hull as the job now has it: the plank, or the place of one that is sawn, whose points in space are those of the hull it was sawn for.</summary>
    public Plank OnHull => Place ?? this;

    /// <summary>From the flat plank to the hull and back.</summary>
    public required PlankMap Map { get; init; }
}

public enum PlankKind
{
    Full,
    Master,
    Tapered,
    Corner,
}

/// <summary>One long edge of a plank: a seam shared with a neighbour. Empty where the plank has none.</summary>
/// <param name="Seam">Points on the seam, inboard to outboard, inside the region.</param>
/// <param name="Flat">The same points laid flat.</param>
/// <param name="SeamLengthMm">Length of the seam on the surface.</param>
/// <param name="RoundMm">How far the net edge stands out beyond its chord, mm; HollowMm how far it falls inside.</param>
/// <param name="ShapeWord">One word for the bench: straight, round or hollow.</param>
public sealed record PlankEdge(
    ImmutableArray<Vec3> Seam,
    ImmutableArray<Vec2> Flat,
    double SeamLengthMm,
    double RoundMm,
    double HollowMm,
    string ShapeWord,
    PlankId? Neighbour
)
{
    public static readonly PlankEdge None = new([], [], 0, 0, 0, "none", null);

    public bool Exists => !Seam.IsEmpty;
}

/// <summary>One stretch of the region's boundary met by a plank, inboard to outboard.</summary>
/// <param name="CutDegrees">0 to 180, counter-clockwise from +s to the end's chord, which points towards +n; 90 is square.</param>
/// <param name="BevelDegrees">asin(f · n_out) at mid-cut, positive where the outer face is the longer.</param>
/// <param name="BevelAtCorners">The same at the end's two corners, lesser n first.</param>
/// <param name="NetLine">The end on the mid-thickness surface laid flat, lesser n first.</param>
/// <param name="Outline">The same points in space.</param>
/// <param name="OuterLine">The end on the outer face, pulled to the mid-surface along normals and laid flat.</param>
/// <param name="InnerLine">The same for the inner face.</param>
public sealed record PlankEnd(
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
)
{
    /// <summary>Degrees from square, as the saw wants it: positive leans towards +n going outboard... see <see cref="LeansTowards"/>.</summary>
    public double DegreesFromSquare => Math.Abs(90 - CutDegrees);
}

/// <summary>How hard a plank is bent, the worst place of each.</summary>
/// <param name="LeastRadiusMm">Null where the radius is above one kilometre.</param>
/// <param name="EdgeStrainPercent">K·w²/12: the strain along the grain that laying the plank flat across leaves at its edges.</param>
/// <param name="WorstAtMm">Distance along the plank's own line from its inboard net end at which the fibre strain is greatest.</param>
public sealed record Bend(
    double? LeastRadiusMm,
    double StrainPercent,
    double TwistDegreesPerMetre,
    double EdgeStrainPercent,
    double WorstAtMm,
    string Verdict
)
{
    /// <summary>The most that the grain is strained anywhere: fibre strain of the bend and strain of laying the plank flat across, at the same place.</summary>
    public double GrainStrainPercent { get; init; }

    /// <summary>The greatest Gauss curvature by size under the plank, 1/mm²: what limits its width.</summary>
    public double MostGaussPerMm2 { get; init; }
}

/// <summary>A mark on a pattern: a witness tick on a seam, shared with the neighbour, or any other.</summary>
/// <param name="At">Flat position of the mark.</param>
/// <param name="Inward">Unit direction into the plank, for drawing the tick.</param>
public sealed record PlankMark(string Kind, string Label, Vec2 At, Vec2 Inward);
