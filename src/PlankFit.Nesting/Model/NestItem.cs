using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Nesting.Shapes;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Model;

/// <summary>What is laid in a row as one thing: a piece, or two tapered pieces head to tail. Equal ones are one item with several copies.</summary>
/// <param name="Copies">The pieces of one shape that it stands for; none where it is made of other items.</param>
/// <param name="Parts">The items that it is made of, side by side; itself alone for a single piece.</param>
/// <param name="Poses">In which it may lie; the half turn of a pose is the next one where turning is allowed.</param>
/// <param name="Sorts">The sorts of stock that serve it.</param>
internal sealed record NestItem(
    ImmutableArray<SawPiece> Copies,
    ImmutableArray<int> Parts,
    ImmutableArray<ItemPose> Poses,
    ImmutableArray<int> Sorts,
    double AreaMm2
)
{
    public int Count => Copies.Length;

    /// <summary>The wood that it must have at the least, whatever ends left long are turned to.</summary>
    public double LeastAreaMm2 { get; init; } = AreaMm2;

    public double HeightMm => Poses[0].Shape.HeightMm;
}

/// <summary>One way for an item to lie.</summary>
/// <param name="RightEnd">Which of the item's two ends looks along the row, 0 or 1; the other looks back.</param>
/// <param name="CentreMm">Of the item's own middle, from its least x.</param>
/// <param name="Laid">Where each piece lies when the item's least x and y are at nought.</param>
internal sealed record ItemPose(
    RowShape Shape,
    int RightEnd,
    double CentreMm,
    ImmutableArray<PiecePose> Laid
);

/// <summary>How a piece lies in its item; see <see cref="LaidPiece"/>.</summary>
internal sealed record PiecePose(bool Turned, bool FaceDown, double TiltDegrees, Vec2 Shift)
{
    public LaidPiece Of(SawPiece piece, Vec2 shift) =>
        new(piece, Turned, FaceDown, TiltDegrees, Shift + shift);
}
