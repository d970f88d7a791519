using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Planks;

/// <summary>All that a plank is when it is sawn, and stays from then on, whatever the lay-out does.</summary>
/// <param name="Ends">Stretches of the region's boundary that it meets, by the place of their middles along its own line, inboard first.</param>
public sealed record PlankForm(
    PlankKind Kind,
    PlankShape Shape,
    PlankSizes Sizes,
    ImmutableArray<PlankEnd> Ends,
    EndFit Fit,
    Bend Bend,
    ImmutableArray<PlankMark> Marks
);

/// <summary>Points in space are on the layer's mid-thickness surface, mm; flat points are (s, n) with the outer face up, mm.</summary>
/// <param name="Outline">Whole net boundary, counter-clockwise seen from outside, from the inboard vertex with the least n, first point not repeated.</param>
/// <param name="FlatNet">The same boundary laid flat, vertex for vertex with Outline.</param>
/// <param name="FlatCut">The shape to saw: encloses both faces, with what is left long and the allowances; counter-clockwise.</param>
public sealed record PlankShape(
    ImmutableArray<Vec3> Outline,
    ImmutableArray<Vec2> FlatNet,
    ImmutableArray<Vec2> FlatCut,
    PlankEdge Forward,
    PlankEdge After
);

/// <param name="NetLengthMm">Along the plank's own line between its two net ends.</param>
/// <param name="CutLengthMm">Overall, corner to corner along that line: what it asks of a board.</param>
/// <param name="AreaMm2">Of the net shape laid flat.</param>
/// <param name="StrainMm">Edge length that the wood must take up as strain, |K| w² length / 12, the stated strain of the flat shape, mm.</param>
/// <param name="KeelAngleDegrees">Angle in the surface between the plank's own line and the keel; null where it does not meet the keel.</param>
/// <param name="Straight">What straight edges would cost.</param>
public sealed record PlankSizes(
    double NetLengthMm,
    double CutLengthMm,
    double WidestMm,
    double NarrowestMm,
    double AreaMm2,
    double StrainMm,
    double? KeelAngleDegrees,
    StraightEdges Straight
);

/// <summary>What it would come to if a plank and its neighbours were sawn with straight edges.</summary>
/// <param name="WidestGapMm">By which a seam would open; <paramref name="WidestOverlapMm"/> by which the two would overlap.</param>
/// <param name="Serve">Both are no more than the glue is trusted with.</param>
public sealed record StraightEdges(double WidestGapMm, double WidestOverlapMm, bool Serve)
{
    /// <summary>Of a plank that is not held against its neighbours yet.</summary>
    public static readonly StraightEdges NotJudged = new(0, 0, true);
}

/// <param name="BothEnds">It is to be fitted at both ends.</param>
/// <param name="DropsIn">Whether a plank fitted at both ends drops into its place from outside; null for any other.</param>
public sealed record EndFit(bool BothEnds, bool? DropsIn);
