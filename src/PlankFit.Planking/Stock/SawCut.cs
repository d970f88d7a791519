using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Stock;

public enum CutKind
{
    /// <summary>Along the grain over the whole length: it parts a lane from the next, or from what is left beside it.</summary>
    Rip,

    /// <summary>Square across several lanes, or all of them, before these are ripped: it takes off an end that they leave empty in one piece.</summary>
    EndOff,

    /// <summary>Across a lane, or what is left of it by then, from edge to edge.</summary>
    Crosscut,

    /// <summary>Across a lane between two pieces whose ends are in each other's way; both ends are made after it.</summary>
    Parting,

    /// <summary>Along a piece that is already crosscut: its edge leaves its lane's edge, tapers or is curved; or between pieces that lie abreast, to part them.</summary>
    Edge,

    /// <summary>Across part of a lane: carried on it would enter a piece, so it stops, and is made when the piece is free.</summary>
    Stopped,
}

/// <summary>One cut.</summary>
/// <param name="Number">Its place in the order of cutting, from 1.</param>
/// <param name="Lane">From 0; null for a rip and for what takes an empty end off.</param>
/// <param name="EndOf">The piece that ends at this cut, going along the board; null where none does. For an edge, the piece.</param>
/// <param name="BeginOf">The piece that begins at this cut: with both, one cut parts two pieces.</param>
/// <param name="Way">Where it runs.</param>
/// <param name="KerfMm">The kerf lies beside the line: positive on the far side from the beginning (of a rip or an edge: from the marked edge), negative on the near one.</param>
public sealed record SawCut(
    int Number,
    CutKind Kind,
    int? Lane,
    PieceId? EndOf,
    PieceId? BeginOf,
    SawLine Way,
    double KerfMm
)
{
    /// <summary>A straight cut that is not numbered yet and makes no end of a piece.</summary>
    public static SawCut Straight(CutKind kind, Vec2 from, Vec2 to, double kerfMm) =>
        new(
            Number: 0,
            kind,
            Lane: null,
            EndOf: null,
            BeginOf: null,
            SawLine.Straight(from, to),
            kerfMm
        );

    /// <inheritdoc cref="SawLine.From"/>
    public Vec2 From
    {
        get => Way.From;
        init => Way = Way with { From = value };
    }

    /// <inheritdoc cref="SawLine.To"/>
    public Vec2 To
    {
        get => Way.To;
        init => Way = Way with { To = value };
    }

    /// <inheritdoc cref="SawLine.Points"/>
    public ImmutableArray<Vec2> Line
    {
        get => Way.Points;
        init => Way = Way with { Points = value };
    }

    /// <inheritdoc cref="SawLine.OffMm"/>
    public double OffMm
    {
        get => Way.OffMm;
        init => Way = Way with { OffMm = value };
    }

    /// <inheritdoc cref="SawLine.IsFollowed"/>
    public bool ToTheLine
    {
        get => Way.IsFollowed;
        init => Way = Way with { IsFollowed = value };
    }

    /// <summary>There is less than a kerf to take off, and a plane takes it: so much at the most is then <see cref="KerfMm"/>.</summary>
    public bool IsPlaned { get; init; }

    /// <summary>Of a cut that takes an empty end off: the pieces that end at it, or begin at it, lane by lane.</summary>
    public ImmutableArray<PieceId> Ends { get; init; } = [];

    /// <summary>Of a cut that takes an empty end off: it is the board's near end, and pieces begin at it.</summary>
    public bool IsNearEnd { get; init; }

    /// <summary>One cut makes the ends of two pieces.</summary>
    public bool IsShared => Kind == CutKind.Crosscut && EndOf is not null && BeginOf is not null;

    /// <summary>Of a crosscut, from square: positive where it is further along the board at the edge away from the marked one. -90 to 90.</summary>
    public double DegreesFromSquare => Math.Atan2(To.X - From.X, To.Y - From.Y) * 180 / Math.PI;

    /// <summary>The same to the half degree that a saw can be set to.</summary>
    public double Setting => Math.Round(2 * DegreesFromSquare) / 2;

    /// <summary>Where it comes to lie along the board, halfway across.</summary>
    public double MiddleMm => (From.X + To.X) / 2;
}

/// <summary>Where a piece lies along its lane, mm from the beginning.</summary>
/// <param name="FromMm">Its nearest corner; <paramref name="ToMm"/> its furthest.</param>
/// <param name="LeftMm">What is left of the usable length beyond it.</param>
public sealed record PiecePlace(
    PieceId PieceId,
    int Lane,
    double FromMm,
    double ToMm,
    double LeftMm
);

/// <summary>What the saw is trusted with.</summary>
/// <param name="StraightMm">A line that leaves the straight by no more is sawn straight.</param>
/// <param name="EdgeMm">An edge that leaves its lane's edge by no more is left as it was ripped: the widest opening that glue is trusted with.</param>
/// <param name="SharedMm">Two ends whose distance differs by no more from a kerf, all along, are parted by one cut.</param>
/// <param name="RipDegrees">A side within this of the grain is an edge and not an end: more than any plank tapers.</param>
/// <param name="CornerDegrees">A turn by more between two stretches of an end makes them two cuts.</param>
/// <param name="LeastMm">Shorter stretches are nicks at a corner, not cuts.</param>
public sealed record SawTolerances(
    double StraightMm,
    double EdgeMm,
    double SharedMm,
    double RipDegrees,
    double CornerDegrees,
    double LeastMm
)
{
    /// <summary>Proposals, no source; 0.3 mm is what a pencil line is wide.</summary>
    public static readonly SawTolerances Usual = new(0.3, 0.5, 0.3, 10, 8, 2);
}
