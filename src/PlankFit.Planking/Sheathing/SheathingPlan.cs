using System.Collections.Immutable;
using PlankFit.Geometry.Cloth;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;

namespace PlankFit.Planking.Sheathing;

/// <summary>Every layer of cloth as it lies and as it is cut.</summary>
/// <param name="Layers">From the inside out.</param>
/// <param name="Rolls">What is cut from which roll, cloth by cloth.</param>
public sealed record SheathingPlan(
    ImmutableArray<SheathedLayer> Layers,
    ImmutableArray<RollPlan> Rolls,
    ImmutableArray<Finding> Findings
)
{
    public static readonly SheathingPlan None = new([], [], []);

    /// <summary>Layers that the job wants laid and that could not be, by name: nothing of theirs is cut or ordered.</summary>
    public ImmutableArray<string> Unlaid { get; init; } = [];

    public IEnumerable<ClothPiece> Pieces => Layers.SelectMany(l => l.Pieces);
}

/// <param name="Number">Counts layers that are sheathed, from 1, from the inside out.</param>
/// <param name="FaceMm">Of the face that it lies on, from the table's surface along the outward normal, mm.</param>
/// <param name="Sides">One that holds for both sides, or one each where they were measured apart.</param>
public sealed record SheathedLayer(
    int Number,
    SheathingSpec Spec,
    ClothSpec Cloth,
    double ThicknessMm,
    double FaceMm,
    ImmutableArray<SheathedSide> Sides
)
{
    public string Name => Spec.Layer;

    public ImmutableArray<ClothPiece> Pieces { get; init; } = [];

    /// <summary>What lies on one side.</summary>
    public SheathedSide Of(Side side) => Sides.First(s => s.Holds.Contains(side));

    /// <summary>Cloth that lies on both sides once it is trimmed, what laps counted as often as it lies there, mm².</summary>
    public double LaidMm2 => Of(Side.Starboard).LaidMm2 + Of(Side.Port).LaidMm2;
}

/// <summary>One side of a layer, in the starboard frame; flat places by p, aft along the roll, and q, outboard across it.</summary>
/// <param name="Holds">The sides of the boat that it is of.</param>
/// <param name="First">Where the roll is laid first, as asked for or as found.</param>
/// <param name="FaceAreaMm2">Of the bottom's face from the keel's side to the chine.</param>
/// <param name="Trim">The outline that it is trimmed to, counter-clockwise.</param>
/// <param name="Cut">The same with the excess.</param>
public sealed record SheathedSide(
    ImmutableArray<Side> Holds,
    ClothNet Net,
    FirstLine First,
    double FaceAreaMm2,
    ImmutableArray<Vec2> Trim,
    ImmutableArray<Vec2> Cut,
    ClothCourses Courses
)
{
    /// <summary>The outline of the face itself, where keel, transom, chine and stem run on the cloth.</summary>
    public required FlatEdges Edges { get; init; }

    /// <summary>Bay by bay from forward, how far it is sheared and where its threads lie over a hollow.</summary>
    public ImmutableArray<BayShear> Bays { get; init; } = [];

    /// <summary>Where it will not lie otherwise, and what is left of its shear with them.</summary>
    public ClothDarts Darts { get; init; } = new([], 0);

    /// <summary>What is drawn before wetting out, station by station.</summary>
    public ImmutableArray<StationMarks> Marks { get; init; } = [];

    /// <summary>The cross on the first line, where p and q are nought: by it a piece is brought to its place along the line.</summary>
    public required ClothCross Cross { get; init; }

    /// <summary>Where the joins of courses that run across meet keel and chine.</summary>
    public ImmutableArray<JoinAcross> JoinsAcross { get; init; } = [];

    /// <summary>Cloth that lies there once it is trimmed, the laps of joins counted twice, mm².</summary>
    public double LaidMm2 { get; init; }

    /// <summary>Of the cloth to cut, laps and excess on it, mm².</summary>
    public double CutMm2 => Courses.Parts.Sum(p => FlatPolygon.Area(p.Outline));

    /// <summary>The greatest shear either way, degrees.</summary>
    public double MostShear => Bays.Select(b => Math.Abs(b.Shear.Degrees)).DefaultIfEmpty().Max();
}

/// <summary>What a bay between two stations does to the cloth.</summary>
/// <param name="Shear">The greatest either way.</param>
/// <param name="AtPart">Of the girth at which it is, from the keel.</param>
/// <param name="Hollow">The greatest curvature of a thread over a hollow of the face, 1/mm; 0 where there is none. A thread pulled tight over it lifts.</param>
public sealed record BayShear(
    string FromStation,
    string ToStation,
    ClothShear Shear,
    double AtPart,
    double Hollow
)
{
    /// <summary>How far a thread pulled tight between two places so far apart stands off in the middle, mm: k L²/8.</summary>
    public double LiftMm(double overMm) => Hollow * overMm * overMm / 8;
}

/// <summary>What a cloth asks for, by its shear and by where it locks.</summary>
public enum DrapeVerdict
{
    LiesFlat,

    /// <summary>Stroked out along its diagonals it follows.</summary>
    StrokeOut,

    /// <summary>It follows if it is planned where it is pulled.</summary>
    PlanThePull,

    /// <summary>It puckers: another first line, and if none will do, a dart.</summary>
    TooMuch,
}

/// <summary>The lines of one station, on the face that the cloth lies on, taped along it from the keel's edge and from the chine, mm.</summary>
/// <param name="KeelHalfMm">From the keel's edge to the centre line, athwart.</param>
/// <param name="TrimAtKeelMm">From the keel's edge to where it is trimmed: across the keel where more than nought, out over the bottom where less.</param>
/// <param name="TrimAtChineMm">From the chine round it; nought where it stops there.</param>
public sealed record StationMarks(
    string Station,
    double XMm,
    double GirthMm,
    double KeelHalfMm,
    double TrimAtKeelMm,
    double TrimAtChineMm,
    ImmutableArray<ClothMark> Lines
);

/// <summary>One line where it crosses a station.</summary>
/// <param name="What">In words: first line, join 1, stringer A.</param>
public sealed record ClothMark(
    ClothMarkKind Kind,
    string What,
    double FromKeelMm,
    double FromChineMm
);

public enum ClothMarkKind
{
    FirstLine,

    /// <summary>The edge of the course that lies on top.</summary>
    Join,

    /// <summary>The centre line of something behind, which must show.</summary>
    Behind,
}

/// <summary>A place on the face, by tape in its own section, mm.</summary>
public sealed record ClothCross(FromStation At, double FromKeelMm, double FromChineMm);

/// <summary>A join that runs across, where the edge on top meets keel and chine; null where it does not.</summary>
public sealed record JoinAcross(int Number, FromStation? AtKeel, FromStation? AtChine);
