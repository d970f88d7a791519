using System.Collections.Immutable;

namespace PlankFit.Planking.Sheathing;

/// <summary>How a cloth is made; mat has no threads that run on.</summary>
public enum ClothKind
{
    Stitched,
    Woven,
    Mat,
}

/// <summary>How the threads of a cloth lie to its roll, and with it how it may give.</summary>
public enum Weave
{
    /// <summary>Two sets at 45 degrees to the roll, one each way: its length runs along a diagonal of every mesh.</summary>
    Diagonal,

    /// <summary>One set along the roll and one across.</summary>
    Square,

    /// <summary>No two sets alone that are square to each other: it does not shear.</summary>
    Stiff,
}

/// <summary>A cloth as it comes off its roll.</summary>
/// <param name="MassGsm">Of all of it, g/m².</param>
/// <param name="DirectionsDegrees">Of its sets of threads, from the roll's length, upper face first as it comes off; none in a mat.</param>
/// <param name="Rolls">The rolls that it comes in or is on hand in; never none.</param>
public sealed record ClothSpec(
    string Name,
    ClothKind Kind,
    double MassGsm,
    ImmutableArray<double> DirectionsDegrees,
    ImmutableArray<ClothRoll> Rolls
)
{
    private const double SameDegrees = 0.5;

    /// <summary>How much of <see cref="MassGsm"/> is mat stitched to one of its faces, g/m²; all of it in a mat.</summary>
    public double MatGsm { get; init; }

    /// <summary>The part of its threads in the cured cloth, by mass: least, usual, most.</summary>
    public required PartRange GlassContent { get; init; }

    /// <summary>The same of its mat.</summary>
    public required PartRange MatGlassContent { get; init; }

    /// <summary>The shear at which it gives no further, degrees.</summary>
    public required double LocksAtDegrees { get; init; }

    /// <summary>It has a mat on one face, so that it is not the same whichever is up.</summary>
    public bool HasMatFace => Kind != ClothKind.Mat && MatGsm > 0;

    public Weave Weave =>
        Has(45) && Has(-45) ? Weave.Diagonal
        : Has(0) && Has(90) ? Weave.Square
        : Weave.Stiff;

    /// <summary>
    /// A piece may be cut with either face up: a cloth of two sets at 45 degrees without mat looks the same from both sides, and so does a woven one; a mat has no
    /// face. What has a mat on one face or its sets one on the other along and across the roll does not.
    /// </summary>
    public bool MayTurnOver =>
        !HasMatFace && (Kind != ClothKind.Stitched || Weave == Weave.Diagonal);

    /// <summary>The width of the widest roll.</summary>
    public double WidestMm => Rolls.Max(r => r.WidthMm);

    private bool Has(double degrees) =>
        DirectionsDegrees.Length == 2
        && DirectionsDegrees.Any(d => Math.Abs(Math.IEEERemainder(d - degrees, 180)) < SameDegrees);
}

/// <summary>A roll of cloth.</summary>
public sealed record ClothRoll(double WidthMm, double LengthMm)
{
    /// <summary>So many are on hand, and no more are to be had of these; null where as many as are wanted may be bought.</summary>
    public int? Count { get; init; }

    /// <summary>Of one such roll; null where no price is given.</summary>
    public double? Price { get; init; }
}

/// <summary>A part of 1 that is not known well: the least, the usual and the most that it is.</summary>
public sealed record PartRange(double Least, double Usual, double Most);
