using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Stock;

/// <summary>A plank, or a piece of one, as it is to be sawn out of a board.</summary>
/// <param name="Id">The plank's, or S1-07a for a piece of it.</param>
/// <param name="Outline">The shape to saw in the plank's own flat coordinates (s, n), outer face up, counter-clockwise.</param>
/// <param name="ThicknessMm">Of the finished plank.</param>
/// <param name="Wanted">The board that it wants.</param>
/// <param name="MayTurn">How it may lie.</param>
/// <param name="Twin">The piece of the other side that is to come from the same board; null where that is not asked.</param>
public sealed record SawPiece(
    PieceId Id,
    ImmutableArray<Vec2> Outline,
    double ThicknessMm,
    WoodWanted Wanted,
    PieceTurns MayTurn,
    PieceId? Twin,
    bool IsMaster
)
{
    /// <inheritdoc cref="WoodWanted.Species"/>
    public string? Species
    {
        get => Wanted.Species;
        init => Wanted = Wanted with { Species = value };
    }

    /// <inheritdoc cref="WoodWanted.LeastGrade"/>
    public string? LeastGrade
    {
        get => Wanted.LeastGrade;
        init => Wanted = Wanted with { LeastGrade = value };
    }

    /// <inheritdoc cref="PieceTurns.EndForEnd"/>
    public bool MayTurnEnd
    {
        get => MayTurn.EndForEnd;
        init => MayTurn = MayTurn with { EndForEnd = value };
    }

    /// <inheritdoc cref="PieceTurns.FaceForFace"/>
    public bool MayTurnFace
    {
        get => MayTurn.FaceForFace;
        init => MayTurn = MayTurn with { FaceForFace = value };
    }

    public PlankId PlankId => Id.Plank;

    public Side Side => PlankId.Side;

    public int Layer => PlankId.Layer;

    /// <summary>Its ends that are left long.</summary>
    public ImmutableArray<LongEnd> LongEnds { get; init; } = [];

    public double AreaMm2 => Math.Abs(FlatPolygon.Area(Outline));

    /// <summary>Of what is left of it at the least where its ends left long are sawn at other angles.</summary>
    public double LeastAreaMm2 =>
        Math.Abs(
            FlatPolygon.Area(LongEnds.Aggregate(Outline, (outline, end) => end.Least(outline)))
        );
}

/// <summary>What a piece wants of its board's wood.</summary>
/// <param name="Species">Null where the job does not say.</param>
/// <param name="LeastGrade">Null where any board will do.</param>
public readonly record struct WoodWanted(string? Species, string? LeastGrade);

/// <summary>How a piece may be turned.</summary>
/// <param name="EndForEnd">It may lie turned end for end; <paramref name="FaceForFace"/> outer face down.</param>
public readonly record struct PieceTurns(bool EndForEnd, bool FaceForFace);

/// <summary>A piece as it lies in a board.</summary>
/// <param name="Turned">End for end: outboard points to the board's marked end.</param>
/// <param name="FaceDown">Its outer face is on the board's underside.</param>
/// <param name="TiltDegrees">A small turn counter-clockwise after that, which lays a tapered plank's edge along the board.</param>
/// <param name="Shift">Added last, mm.</param>
public sealed record LaidPiece(
    SawPiece Piece,
    bool Turned,
    bool FaceDown,
    double TiltDegrees,
    Vec2 Shift
)
{
    /// <summary>The shape that is sawn, in the plank's own flat coordinates, where an end left long is sawn at another angle than asked; null where none is.</summary>
    public ImmutableArray<Vec2>? Sawn { get; init; }

    /// <summary>How ends are sawn that are at another angle than asked.</summary>
    public ImmutableArray<SawnLong> Long { get; init; } = [];

    /// <summary>From the plank's own flat coordinates to the board's.</summary>
    public Vec2 ToBoard(Vec2 flat) => TurnedBy(flat) + Shift;

    /// <summary>The way back.</summary>
    public Vec2 FromBoard(Vec2 onBoard)
    {
        Vec2 at = onBoard - Shift;
        (double sin, double cos) = Math.SinCos(TiltDegrees * Math.PI / 180);
        double x = (at.X * cos) + (at.Y * sin),
            y = (at.Y * cos) - (at.X * sin);
        if (Turned)
        {
            (x, y) = (-x, -y);
        }

        return new(x, FaceDown ? -y : y);
    }

    /// <summary>A direction of the plank's, as it lies.</summary>
    public Vec2 TurnedBy(Vec2 flat)
    {
        // Face down is a turn about the board's length, end for end a half turn in its plane.
        double x = flat.X,
            y = FaceDown ? -flat.Y : flat.Y;
        if (Turned)
        {
            (x, y) = (-x, -y);
        }

        (double sin, double cos) = Math.SinCos(TiltDegrees * Math.PI / 180);
        return new((x * cos) - (y * sin), (x * sin) + (y * cos));
    }

    /// <summary>The sawn shape as it lies, counter-clockwise.</summary>
    public ImmutableArray<Vec2> Outline
    {
        get
        {
            IEnumerable<Vec2> points = (Sawn ?? Piece.Outline).Select(ToBoard);
            return FaceDown ? [.. points.Reverse()] : [.. points];
        }
    }
}
