using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>What the surface gives for setting up: deductions, bevels, the rabbet and the corner at the chine, station by station.</summary>
public sealed record SettingUpPlan(
    ImmutableArray<FrameSection> Frames,
    ImmutableArray<RabbetRow> Rabbet,
    ImmutableArray<RunBevel> Runs,
    ImmutableArray<CornerRow> Corners,
    ImmutableArray<TransomRow> Transom,
    ImmutableArray<Finding> Findings
);

/// <summary>One frame: the table's section and the line to which it is sawn, half-breadth and height in its plane, keel to chine.</summary>
/// <param name="Name">The station's name, or the place where it stands by position.</param>
/// <param name="Places">At keel, a quarter, half, three quarters and chine.</param>
public sealed record FrameSection(
    string Name,
    double PositionMm,
    ImmutableArray<Vec2> Table,
    ImmutableArray<Vec2> InnerFace,
    ImmutableArray<Vec2> FrameLine,
    ImmutableArray<FramePlace> Places
);

/// <summary>One place on a frame's edge.</summary>
/// <param name="DeductionMm">From the table's section, square to it, to the frame's line in the frame's plane: more than the stack's thickness where the hull leans fore and aft.</param>
/// <param name="BevelDegrees">Of the frame's edge from square. Positive: a standing bevel, the other face is the larger; negative: an under bevel, the wood to take off is there.</param>
/// <param name="FallMm">The same over the frame's thickness.</param>
public sealed record FramePlace(
    string Where,
    double HalfBreadthMm,
    double HeightMm,
    double DeductionMm,
    double BevelDegrees,
    double FallMm
);

/// <summary>The keel's rabbet at a station.</summary>
/// <param name="RabbetLine">Where the planking's outer face meets the keel's side, half-breadth and height.</param>
/// <param name="Bottom">The bottom of the rabbet: the whole planking's thickness in from the rabbet line, square to it.</param>
/// <param name="Bearding">Where the planking's inner face meets the keel's side.</param>
public sealed record RabbetRow(
    string Station,
    double PositionMm,
    Vec2 RabbetLine,
    Vec2 Bottom,
    Vec2 Bearding
);

/// <summary>A stringer or the chine log where it passes a station.</summary>
/// <param name="AlongFrameMm">From the keel's side along the frame's line.</param>
/// <param name="BevelDegrees">For a stringer, between its outer face on the skin and a face square to plumb sides; for the chine log, by which the corner between bottom and topside leaves square.</param>
public sealed record RunBevel(
    string Name,
    string Station,
    double PositionMm,
    double AlongFrameMm,
    double BevelDegrees
);

/// <summary>The corner at the chine, in the plane square to the chine's run.</summary>
/// <param name="CornerDegrees">Between the two outer faces, inside the hull.</param>
/// <param name="Trims">One a layer of planks, from the inside out.</param>
/// <param name="TangentMm">How far from the corner the rounding begins on each face.</param>
/// <param name="OffCornerMm">How much the rounding takes off the corner, along its middle.</param>
/// <param name="SeatMm">How far from the corner, on each face, a seat as wide as the chine piece begins; null where there is none.</param>
public sealed record CornerRow(
    string Station,
    double PositionMm,
    double CornerDegrees,
    ImmutableArray<TrimRow> Trims,
    double TangentMm,
    double OffCornerMm,
    double? SeatMm
);

/// <summary>Where a layer of planks is trimmed at the chine: beyond (+) or short of (−) the table's chine carried along the normal, square to the chine, on each face.</summary>
public sealed record TrimRow(
    string Layer,
    double InnerFaceMm,
    double OuterFaceMm,
    double BevelDegrees
);

/// <summary>The transom's edge, keel to chine: its bevel from square to the transom's face, positive where the bottom closes in going aft.</summary>
public sealed record TransomRow(string Where, double BevelDegrees);
