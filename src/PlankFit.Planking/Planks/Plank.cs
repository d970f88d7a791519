using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;

namespace PlankFit.Planking.Planks;

/// <summary>One plank, worked out.</summary>
public sealed record Plank(PlankId Id, PlankForm Form)
{
    public Side Side => Id.Side;

    public int Layer => Id.Layer;

    public int Number => Id.Number;

    public PlankKind Kind => Form.Kind;

    public ImmutableArray<Vec3> Outline => Form.Shape.Outline;

    public ImmutableArray<Vec2> FlatNet => Form.Shape.FlatNet;

    public ImmutableArray<Vec2> FlatCut => Form.Shape.FlatCut;

    public PlankEdge ForwardEdge => Form.Shape.Forward;

    public PlankEdge AfterEdge => Form.Shape.After;

    public ImmutableArray<PlankEnd> Ends => Form.Ends;

    public double NetLengthMm => Form.Sizes.NetLengthMm;

    public double CutLengthMm => Form.Sizes.CutLengthMm;

    public double WidestMm => Form.Sizes.WidestMm;

    public double NarrowestMm => Form.Sizes.NarrowestMm;

    public double WidestGapMm => Form.Sizes.Straight.WidestGapMm;

    public double WidestOverlapMm => Form.Sizes.Straight.WidestOverlapMm;

    public bool StraightEdges => Form.Sizes.Straight.Serve;

    public double? KeelAngleDegrees => Form.Sizes.KeelAngleDegrees;

    public double AreaMm2 => Form.Sizes.AreaMm2;

    public double StrainMm => Form.Sizes.StrainMm;

    public Bend Bend => Form.Bend;

    /// <summary>A plank of this thickness is not bent to its place at all, and is therefore not sawn.</summary>
    public bool IsRefused => !IsFixed && Bend.Way is (BendWay.LaminateThinner or BendWay.Refuse);

    public bool FitBothEnds => Form.Fit.BothEnds;

    public bool? DropsIn => Form.Fit.DropsIn;

    public ImmutableArray<PlankMark> Marks => Form.Marks;

    /// <summary>It is sawn: its shapes are those of the record, whatever the lay-out does.</summary>
    public bool IsSawn { get; init; }

    /// <summary>The revision of the job that it was sawn from; null while it is not sawn.</summary>
    public string? SawnFrom { get; init; }

    /// <summary>It is on the hull already: its edges are where they were measured, and it is not to be sawn again.</summary>
    public bool IsFitted { get; init; }

    /// <summary>Not to be sawn any more.</summary>
    public bool IsFixed => IsFitted || IsSawn;

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
/// <param name="OverhangMm">By which it is left long; null where it is fit.</param>
/// <param name="AllowanceMm">To scribe and trim where it is fit.</param>
public sealed record PlankEnd(
    PanelEdge At,
    EndCut Cut,
    EndAngles Angles,
    double? OverhangMm,
    double AllowanceMm,
    EndLines Lines
)
{
    /// <summary>To scribe where a plank fits at both ends and the job names no allowance, mm: a proposal, no source.</summary>
    public const double UsualAllowanceMm = 15;

    /// <summary>The edge by the word that is used for it.</summary>
    public string Word { get; init; } = Panel.BottomWordOf(At);

    public double CutDegrees => Angles.CutDegrees;

    public double BevelDegrees => Angles.BevelDegrees;

    public double BevelAtLeastN => Angles.BevelAtLeastN;

    public double BevelAtGreatestN => Angles.BevelAtGreatestN;

    public ImmutableArray<Vec2> NetLine => Lines.Net;

    public ImmutableArray<Vec3> Outline => Lines.Outline;

    public ImmutableArray<Vec2> OuterLine => Lines.Outer;

    public ImmutableArray<Vec2> InnerLine => Lines.Inner;

    /// <summary>Degrees from square, as the saw wants it.</summary>
    public double DegreesFromSquare => Math.Abs(90 - CutDegrees);
}

/// <param name="CutDegrees">0 to 180, counter-clockwise from +s to the end's chord, which points towards +n; 90 is square.</param>
/// <param name="BevelDegrees">asin(f · n_out) at mid-cut, positive where the outer face is the longer.</param>
/// <param name="BevelAtLeastN">The same at the corner of lesser n.</param>
/// <param name="BevelAtGreatestN">The same at the corner of greater n.</param>
public sealed record EndAngles(
    double CutDegrees,
    double BevelDegrees,
    double BevelAtLeastN,
    double BevelAtGreatestN
);

/// <summary>An end's lines, each lesser n first.</summary>
/// <param name="Net">On the mid-thickness surface, laid flat.</param>
/// <param name="Outline">The same points in space.</param>
/// <param name="Outer">On the outer face, pulled to the mid-surface along normals and laid flat.</param>
/// <param name="Inner">The same for the inner face.</param>
public sealed record EndLines(
    ImmutableArray<Vec2> Net,
    ImmutableArray<Vec3> Outline,
    ImmutableArray<Vec2> Outer,
    ImmutableArray<Vec2> Inner
);

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

    /// <summary>What the verdict asks of the builder.</summary>
    public BendWay Way { get; init; } = BendWay.Cold;
}

/// <summary>A mark on a pattern: a witness tick on a seam, shared with the neighbour, or any other.</summary>
/// <param name="At">Flat position of the mark.</param>
/// <param name="Inward">Unit direction into the plank, for drawing the tick.</param>
public sealed record PlankMark(string Kind, string Label, Vec2 At, Vec2 Inward);
