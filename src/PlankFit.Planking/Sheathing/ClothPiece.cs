using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Sheathing;

/// <summary>
/// A piece of cloth to cut. Flat places are seen as it lies on the boat, from outside: x along the roll, y across it, both from the piece's own lower left corner.
/// </summary>
/// <param name="Id">S-C1 or, in courses, S-C1a: side, cloth layer counted from the inside out, course counted from aft or from the keel.</param>
/// <param name="Layer">Number of the cloth layer.</param>
/// <param name="Outline">To cut to, excess and laps on it; counter-clockwise.</param>
/// <param name="Trim">Where it is trimmed once it lies, carried over what laps another course; counter-clockwise.</param>
/// <param name="Bow">The way to the bow, a unit direction.</param>
public sealed record ClothPiece(
    string Id,
    Side Side,
    int Layer,
    string Cloth,
    ImmutableArray<Vec2> Outline,
    ImmutableArray<Vec2> Trim,
    Vec2 Bow
)
{
    /// <summary>Where the cross on the first line lies on it, p and q nought: it may be off the piece where there are several.</summary>
    public required Vec2 Cross { get; init; }

    /// <summary>The first line runs along the roll, through the cross; across it otherwise.</summary>
    public required bool FirstAlongRoll { get; init; }

    /// <summary>Which way the face lies by which it is told from the other; null where none is asked for.</summary>
    public Facing? Face { get; init; }

    /// <summary>Cut into it where it will not lie otherwise, in its own places.</summary>
    public ImmutableArray<ClothDart> Darts { get; init; } = [];

    /// <summary>That it takes of the roll's length, mm.</summary>
    public double LengthMm => Outline.Max(p => p.X);

    /// <summary>That it takes of the roll's width, mm.</summary>
    public double WidthMm => Outline.Max(p => p.Y);

    public double AreaMm2 => FlatPolygon.Area(Outline);
}

/// <summary>How a side of a layer is divided into courses.</summary>
/// <param name="Along">The roll runs along the first line; across it otherwise.</param>
/// <param name="JoinsMm">The middle of each lap, by p where courses run across and by q where they run along.</param>
/// <param name="MetresMm">Off the roll where each is cut by itself.</param>
public sealed record ClothCourses(
    bool Along,
    ImmutableArray<double> JoinsMm,
    ImmutableArray<CoursePart> Parts,
    double MetresMm
);

/// <summary>A course, or one of the parts that an outline leaves of it.</summary>
/// <param name="Number">Of the course, from 0.</param>
/// <param name="Outline">Counter-clockwise, by p and q.</param>
public sealed record CoursePart(int Number, ImmutableArray<Vec2> Outline);
