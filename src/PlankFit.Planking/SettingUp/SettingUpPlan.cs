using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.SettingUp;

/// <summary>What the surface gives for setting up: deductions, bevels, the rabbet and the corner at the chine. From the table as drawn, starboard; port is its twin.</summary>
public sealed record SettingUpPlan(
    SettingUpSpec Spec,
    ImmutableArray<FrameSection> Sections,
    ImmutableArray<RabbetPlace> Rabbet,
    ImmutableArray<StringerPlace> Stringers,
    ImmutableArray<ChinePlace> Chine,
    ImmutableArray<Finding> Findings
);

/// <summary>Where a frame, mould or transom stands.</summary>
/// <param name="Name">A station's name, or the position of a frame as the job writes it.</param>
/// <param name="PositionMm">x of the table's keel line there.</param>
/// <param name="RakeDegrees">Of its plane off plumb, positive where its top lies further aft.</param>
public sealed record FrameStand(
    string Name,
    double PositionMm,
    bool IsStation,
    bool IsTransom,
    double RakeDegrees
)
{
    /// <summary>The one side of the boat that has it; null for both.</summary>
    public Side? Only { get; init; }

    /// <summary>It begins off the keel or ends short of the chine: its places are at its own ends and between them.</summary>
    public bool IsStretch { get; init; }
}

/// <summary>
/// One frame, mould or transom. Places in its plane are (half-breadth, height), mm; where it is raked, heights run up the rake from the base line.
/// </summary>
/// <param name="Face">The face that stands on the line and carries the mould line: forward or after.</param>
/// <param name="ThicknessMm">Square to its faces.</param>
/// <param name="Places">At the table's keel line, a quarter, half and three quarters of the way, and at the chine; of a stretch at its own ends instead.</param>
/// <param name="KeelEnd">Where the mould line meets the keel's side, carried on.</param>
/// <param name="ChineEnd">Where it meets the topside's, or under the table's chine, square to the surface, where no topside is named.</param>
public sealed record FrameSection(
    FrameStand Stand,
    FrameFace Face,
    double ThicknessMm,
    ImmutableArray<FramePlace> Places,
    Vec2 KeelEnd,
    Vec2 ChineEnd,
    SectionLines Lines
)
{
    public string Name => Stand.Name;

    public Side? Only => Stand.Only;

    public bool IsStretch => Stand.IsStretch;

    public double PositionMm => Stand.PositionMm;

    public bool IsStation => Stand.IsStation;

    public bool IsTransom => Stand.IsTransom;

    public double RakeDegrees => Stand.RakeDegrees;

    /// <summary>As lists name it: the station's own name, or "frame" and the position or the name that it has.</summary>
    public string Label => IsStation ? Name : FramePlane.Called(Name);
}

/// <summary>One place of a frame's edge.</summary>
/// <param name="Part">Of the way from keel line to chine along the table's section, 0 to 1.</param>
/// <param name="DeductionMm">From the table's section in to the mould line, square to the section, in its plane.</param>
/// <param name="BevelDegrees">Off square at the marked face: positive for an under bevel (wood comes off towards the other face), negative for a standing one.</param>
/// <param name="FallMm">From the mould line to where the edge is at the other face, in the plane of the faces, square to the line; signed alike.</param>
/// <param name="Mould">The place on the mould line.</param>
public sealed record FramePlace(
    double Part,
    double DeductionMm,
    double BevelDegrees,
    double FallMm,
    Vec2 Mould
);

/// <summary>The lines of a section in its plane, inboard to outboard; each chord within 0.01 mm of its curve.</summary>
public sealed record SectionLines(
    ImmutableArray<Vec2> Table,
    ImmutableArray<Vec2> Outer,
    ImmutableArray<Vec2> Inner,
    ImmutableArray<Vec2> Mould,
    ImmutableArray<Vec2> OtherFace,
    ImmutableArray<ImmutableArray<Vec2>> PlankEnds,
    ImmutableArray<ImmutableArray<Vec2>> Keel
)
{
    /// <summary>The corner at the chine; null where no topside is named.</summary>
    public CornerLines? Corner { get; init; }
}

/// <summary>The corner at the chine as it appears in a section's plane.</summary>
/// <param name="Joint">Between the two skins: the end of the bottom's planks, outer face first.</param>
/// <param name="TopsideOuter">From the corner up; so are the other two.</param>
/// <param name="Piece">The hard chine piece, counter-clockwise or clockwise as it falls; empty where there is none.</param>
/// <param name="Round">The rounded edge.</param>
public sealed record CornerLines(
    ImmutableArray<Vec2> Joint,
    ImmutableArray<Vec2> TopsideOuter,
    ImmutableArray<Vec2> TopsideInner,
    ImmutableArray<Vec2> TopsideMould,
    ImmutableArray<Vec2> Piece,
    ImmutableArray<Vec2> Round
);

/// <summary>The keel's rabbet at one section; places are (half-breadth, height) in its plane, mm.</summary>
/// <param name="RabbetLine">Where the planking's outer face meets the keel's side.</param>
/// <param name="Middle">Where its inner face meets it: the bottom of the rabbet.</param>
/// <param name="Bearding">Where its inner face leaves the backbone inside the keel or, where planks are let in square to themselves, the keel's own plumb side; null where there is neither.</param>
/// <param name="DepthMm">From rabbet line to middle.</param>
/// <param name="LandingMm">From middle to bearding line along the inner face.</param>
/// <param name="LandingDegrees">The landing's slope off level athwart, rising outboard.</param>
public sealed record RabbetPlace(
    string Section,
    double PositionMm,
    Vec2 RabbetLine,
    Vec2 Middle,
    Vec2? Bearding,
    double DepthMm,
    double? LandingMm,
    double LandingDegrees
);

/// <summary>A stringer where it crosses a frame.</summary>
/// <param name="Centre">Of its outer face, on the planking's inner face: (half-breadth, height) in the frame's plane, mm.</param>
/// <param name="BevelDegrees">Of its outer face off square to plumb sides, measured square to it; positive where the outboard edge is the higher. It is also its lean where its sides are square to the plank.</param>
/// <param name="FallMm">The bevel over the stringer's width.</param>
/// <param name="CrossDegrees">Off square to the frame along the planking, positive where it runs outboard going aft.</param>
public sealed record StringerPlace(
    string Stringer,
    string Section,
    double PositionMm,
    Vec2 Centre,
    double BevelDegrees,
    double FallMm,
    double CrossDegrees
);

/// <summary>The corner at the chine at one section.</summary>
/// <param name="DeadriseDegrees">Of the bottom at the chine, in the section.</param>
/// <param name="FlareDegrees">Of the topside off plumb, in the section, positive where it spreads going up.</param>
public sealed record ChinePlace(
    string Section,
    double PositionMm,
    double DeadriseDegrees,
    double FlareDegrees,
    ChineCorner Corner
)
{
    /// <summary>How the skins meet there, where there is no chine piece.</summary>
    public ChineLap Lap { get; init; }
}
