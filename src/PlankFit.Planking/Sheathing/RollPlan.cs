using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Sheathing;

/// <summary>What is cut from the rolls of one cloth.</summary>
/// <param name="RollWidthMm">Of the rolls used.</param>
/// <param name="AreaBoundMm">No plan takes less of their length in all: what the pieces' area takes of the width.</param>
/// <param name="Missing">Pieces that no roll is left for, or that are longer than any.</param>
public sealed record RollPlan(
    ClothSpec Cloth,
    double RollWidthMm,
    ImmutableArray<CutRoll> Rolls,
    double AreaBoundMm,
    ImmutableArray<ClothPiece> Missing
)
{
    /// <summary>How the roll lies as it is cut: with its mat or its stitching up where that lies outward, down where it lies on the wood. Null where no face is asked for.</summary>
    public Facing? Unrolled { get; init; }

    /// <summary>Off all rolls, mm.</summary>
    public double LengthMm => Rolls.Sum(r => r.UsedMm);

    /// <summary>The same as it is ordered, each roll's length up to what one orders.</summary>
    public double ToOrderMm(LengthUnit unit) =>
        Rolls.Sum(r => LengthText.ToOrderMm(r.UsedMm, unit));
}

/// <summary>A roll, or the part of one that is used.</summary>
/// <param name="Number">From 1.</param>
/// <param name="OnHand">It is on hand; else it is to be bought.</param>
public sealed record CutRoll(
    int Number,
    ClothRoll Roll,
    bool OnHand,
    ImmutableArray<PieceOnRoll> Pieces,
    double UsedMm,
    ImmutableArray<ClothOffcut> Offcuts
)
{
    /// <summary>What is left on it.</summary>
    public double LeftMm => Roll.LengthMm - UsedMm;
}

/// <summary>A piece where it lies on its roll, the roll's beginning at the left: x along it and y across.</summary>
/// <param name="Turned">Turned end for end against how it is drawn by itself.</param>
/// <param name="Over">The face that will be its inner one up: its mirror image.</param>
/// <param name="At">The lower left corner of its outline.</param>
public sealed record PieceOnRoll(
    ClothPiece Piece,
    bool Turned,
    bool Over,
    Vec2 At,
    ImmutableArray<Vec2> Outline
)
{
    /// <summary>Where on the roll a place of the piece as it is drawn by itself lies.</summary>
    public Vec2 OnRoll(Vec2 place) =>
        At
        + new Vec2(
            Turned ? Piece.LengthMm - place.X : place.X,
            Turned != Over ? Piece.WidthMm - place.Y : place.Y
        );

    public double FromMm => At.X;

    public double ToMm => At.X + Piece.LengthMm;
}

/// <summary>A rectangle left beside pieces, its fibres those of the roll: x along it.</summary>
public sealed record ClothOffcut(string Id, Vec2 At, double LengthMm, double WidthMm);
