using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Sheathing;

/// <summary>How the cloth of one layer of the stack lies on the bottom. Both sides are cut alike, one the mirror image of the other.</summary>
/// <param name="Layer">The cloth layer, by its name in the stack.</param>
/// <param name="Cloth">The cloth, by its name.</param>
public sealed record SheathingSpec(string Layer, string Cloth)
{
    public required ClothAtKeel Keel { get; init; }

    /// <summary>How far it is carried round the chine, mm; 0 where it stops there. Those at transom and stem likewise.</summary>
    public double RoundChineMm { get; init; }

    public double RoundTransomMm { get; init; }

    public double RoundStemMm { get; init; }

    /// <summary>Where the roll is laid first.</summary>
    public FirstLine FirstAlong { get; init; } = new FirstLine.Best();

    /// <summary>The side that is laid first; the other laps over it.</summary>
    public Side SideFirst { get; init; } = Side.Starboard;

    public CourseRule Courses { get; init; } = CourseRule.FewestJoins;

    /// <summary>By how much one course laps the next.</summary>
    public double JoinLapMm { get; init; } = UsualJoinLapMm;

    /// <summary>By how much joins lie off those of the cloth layer before.</summary>
    public double StaggerMm { get; init; } = UsualStaggerMm;

    /// <summary>Cut larger all round by so much, to pull on and to trim.</summary>
    public double ExcessMm { get; init; } = UsualExcessMm;

    /// <summary>Which way the mat faces; null where the cloth has none.</summary>
    public Facing? MatSide { get; init; }

    /// <summary>Which way the face with the stitching lies; null where it may lie either way, or where its mat says so.</summary>
    public Facing? StitchSide { get; init; }

    /// <summary>Which way the face lies by which it is told from the other; null where none is asked for.</summary>
    public Facing? Face => MatSide ?? StitchSide;

    public const double UsualJoinLapMm = 50;
    public const double UsualStaggerMm = 150;
    public const double UsualExcessMm = 25;

    /// <summary>How far the first layer that is lapped goes past the centre line, and by how much each after it goes further.</summary>
    public const double UsualPastCentreMm = 50;
    public const double UsualPastStepMm = 25;

    /// <summary>How far the last layers are carried round the chine.</summary>
    public const double UsualRoundMm = 75;
}

/// <summary>Where the cloth ends at the keel.</summary>
public abstract record ClothAtKeel
{
    private ClothAtKeel() { }

    /// <summary>So far past the centre line, where port and starboard lap over each other by twice as much.</summary>
    /// <param name="FromMm">The stretch of the hull, x in mm, over which it goes past; elsewhere both sides end on the centre line. Null for all of it. <paramref name="ToMm"/> likewise.</param>
    public sealed record PastCentreLine(double Mm, double? FromMm = null, double? ToMm = null)
        : ClothAtKeel;

    /// <summary>So far short of the keel's edge.</summary>
    public sealed record ShortOfEdge(double Mm) : ClothAtKeel;
}

/// <summary>The line along which the roll is laid first, and is not sheared; from there it is stroked out both ways.</summary>
public abstract record FirstLine
{
    private FirstLine() { }

    /// <summary>A straight course over the bottom, chosen so that the cloth lies flat and comes out of the least width of roll.</summary>
    public sealed record Best : FirstLine;

    /// <summary>The roll's edge is pressed along the keel.</summary>
    public sealed record AlongKeel : FirstLine;

    /// <summary>The roll's edge is pressed along the chine.</summary>
    public sealed record AlongChine : FirstLine;

    /// <summary>A straight course over the bottom, a taut string's.</summary>
    /// <param name="Part">Of the girth from keel to chine at which it crosses the middle of the bottom.</param>
    /// <param name="TurnedDegrees">From the line at that part of the girth: its after end away from the keel; less than nought, towards it.</param>
    public sealed record Straight(double Part, double TurnedDegrees) : FirstLine;

    /// <summary>The cloth is pinned at one point and two straight threads are laid from there.</summary>
    /// <param name="Part">Of the girth from keel to chine.</param>
    public sealed record Point(string Station, double Part) : FirstLine;
}

/// <summary>How a side is divided where the roll is narrower than it.</summary>
public enum CourseRule
{
    /// <summary>Along or across, whichever has the fewer joins.</summary>
    FewestJoins,
    Along,
    Across,

    /// <summary>Along or across, whichever takes less off the roll.</summary>
    FewestMetres,
}

/// <summary>Which way one face of a cloth lies on the boat: its mat, or its stitching.</summary>
public enum Facing
{
    ToTheWood,
    Outward,
}
