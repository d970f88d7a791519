using System.Collections.Immutable;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Geometry.Development;

/// <summary>A ruling from the lower edge at u = P to the upper edge at u = Q.</summary>
/// <param name="Found">True where it satisfies the condition of a developable (or belongs to a fan at a corner).</param>
/// <param name="WarpDegrees">Angle between the ruled surface's normals at the ruling's two ends; nought on a developable.</param>
public readonly record struct Ruling(
    double P,
    double Q,
    bool Found,
    double WarpDegrees,
    double LengthMm
);

/// <summary>
/// The rulings between the two edges of a panel, from UFrom to UTo.
/// </summary>
/// <param name="Segments">The strip between neighbouring rulings, for laying flat.</param>
/// <param name="Rulings">All rulings, in order.</param>
/// <param name="Worst">The ruling with the greatest warp.</param>
/// <param name="FoundShare">The part of the rulings that satisfy the condition, 0 to 1.</param>
/// <param name="DepartureMm">How far the developable through these rulings lies from the surface at its worst; infinite where not every ruling was found.</param>
public sealed record RulingSet(
    ImmutableArray<RulingSegment> Segments,
    ImmutableArray<Ruling> Rulings,
    Ruling Worst,
    double FoundShare,
    double DepartureMm,
    Uv DepartureAt
)
{
    public bool AllFound => FoundShare >= 1;
}

/// <summary>
/// A stretch between two rulings, given at its start, middle and end; within it a ruling is told by a parameter from 0 to 1,
/// and the rates are with respect to that.
/// </summary>
public readonly record struct RulingSegment(RulingNode Start, RulingNode Middle, RulingNode End);

public readonly record struct RulingNode(double P, double Q, double PRate, double QRate);
