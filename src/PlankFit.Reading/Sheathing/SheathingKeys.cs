using PlankFit.Planking.Findings;
using PlankFit.Planking.Sheathing;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Sheathing;

/// <summary>[[sheathing]]: how the cloth of a layer lies on the bottom.</summary>
public static class SheathingKeys
{
    /// <summary>Beyond it a lap or a wrap is a panel of its own, mm.</summary>
    private const double MostMm = 1000;

    public static readonly TextKey Layer = new(
        "layer",
        "\"core cloth\"",
        "The layer of the bottom's stack that it is, of kind \"cloth\"."
    )
    {
        AskedFor = "the name of a [[layer]] of kind \"cloth\"",
    };

    public static readonly TextKey Cloth = new(
        "cloth",
        "\"stitched 600\"",
        "What it is cut from, by its name under [[cloth]]."
    )
    {
        AskedFor = "the name of a [[cloth]]",
    };

    public static readonly LengthKey PastCentreLine = Distance(
        "past-centre-line",
        "50",
        "So far past the centre line: port and starboard lap by twice as much, and the keel carries the cloth twice there."
    );

    public static readonly LengthKey Stop = Distance(
        "stop",
        "20",
        "So far short of the keel's edge."
    );

    public static readonly TableKey Keel = new(
        "keel",
        "{ past-centre-line = 50 }",
        "Where it ends at the keel, by one of its two keys.",
        new(PastCentreLine, Stop)
    )
    {
        Otherwise =
            "half of the layer's lap past the centre line, with that lap's from and to; without one 50 mm past it, and 25 mm more for each lapped cloth before it",
        Source = KeySources.Proposal,
    };

    public static readonly LengthKey Round = Distance(
        "round",
        "75",
        "It is carried round so far."
    ) with
    {
        Required = true,
    };

    public static readonly ChoiceKey<int> ChineStops = new(
        "chine",
        [("stop", 0)],
        "It stops there."
    );

    public static readonly TableKey ChineRound = RoundAt("chine");

    public static readonly EitherKey Chine = new(
        ChineStops,
        ChineRound,
        "Whether it stops at the chine, or how far it is carried round."
    )
    {
        Otherwise =
            "\"stop\"; round by 75 mm for the last two cloths where they lie outside all planks",
        Source = KeySources.Practice,
    };

    public static readonly ChoiceKey<int> TransomStops = ChineStops with { Name = "transom" };

    public static readonly TableKey TransomRound = RoundAt("transom");

    public static readonly EitherKey Transom = new(
        TransomStops,
        TransomRound,
        "The same at the transom."
    )
    {
        Otherwise = "\"stop\"",
    };

    public static readonly ChoiceKey<int> StemStops = ChineStops with { Name = "stem" };

    public static readonly TableKey StemRound = RoundAt("stem");

    public static readonly EitherKey Stem = new(StemStops, StemRound, "The same at the stem.")
    {
        Otherwise = "\"stop\"",
    };

    public static readonly NumberKey Part = new(
        "part",
        "0.5",
        "part of the girth",
        "Of the girth from keel to chine, halfway along or at the station."
    )
    {
        Limits = Limits.FromTo(0, 1),
        AcceptedWords =
            "accepted: a part of the girth, from {least} at the keel to {most} at the chine",
        DefaultValue = 0.5,
        Source = KeySources.Proposal,
    };

    public static readonly NumberKey Turned = new(
        "turned",
        "-2",
        "degrees",
        "Of a line: its after end turned so far away from the keel, or towards it where less than 0."
    )
    {
        Limits = Limits.FromTo(-30, 30),
        AcceptedWords = "accepted: degrees from {least} to {most}",
        DefaultValue = 0,
        Source = KeySources.Proposal,
    };

    public static readonly TextKey Station = new(
        "station",
        "\"4\"",
        "The station of a point, at which the cloth is pinned and two straight threads are laid from there."
    )
    {
        Otherwise = "the roll is laid along a line",
    };

    public static readonly ChoiceKey<FirstWord> FirstAlongWord = new(
        "first-along",
        [("keel", FirstWord.Keel), ("chine", FirstWord.Chine), ("best", FirstWord.Best)],
        "A line found by the program, or an edge of the bottom."
    )
    {
        DefaultChoice = FirstWord.Best,
    };

    public static readonly TableKey FirstAlongLine = new(
        "first-along",
        "{ part = 0.5, turned = -2 }",
        "A straight line over the bottom, or a point.",
        new(Part, Turned, Station)
    );

    public static readonly EitherKey FirstAlong = new(
        FirstAlongWord,
        FirstAlongLine,
        "Where the roll is laid first, without shear: along a line that comes out of the least width of roll and lies flat, with its edge along keel or chine, or a line of your own, or a point."
    );

    public static readonly ChoiceKey<Side> SideFirst = new(
        "side-first",
        [("starboard", Side.Starboard), ("port", Side.Port)],
        "The side that is laid first; the other laps over it."
    )
    {
        DefaultChoice = Side.Starboard,
    };

    public static readonly ChoiceKey<CourseRule> Courses = new(
        "courses",
        [
            ("fewest joins", CourseRule.FewestJoins),
            ("along", CourseRule.Along),
            ("across", CourseRule.Across),
            ("fewest metres", CourseRule.FewestMetres),
        ],
        "How a side is divided where the roll is narrower than it: along the hull, across it, or whichever has fewer joins or takes less off the roll."
    )
    {
        DefaultChoice = CourseRule.FewestJoins,
    };

    public static readonly LengthKey JoinLap = Distance(
        "join-lap",
        "50",
        "By how much one course laps the next."
    ) with
    {
        DefaultMm = SheathingSpec.UsualJoinLapMm,
        Source = KeySources.Proposal,
    };

    public static readonly LengthKey Stagger = Distance(
        "stagger",
        "150",
        "By how much joins lie off those of the cloth before."
    ) with
    {
        DefaultMm = SheathingSpec.UsualStaggerMm,
        Source = KeySources.Proposal,
    };

    public static readonly LengthKey Excess = Distance(
        "excess",
        "25",
        "How much larger it is cut all round, to pull on and to trim while tacky."
    ) with
    {
        DefaultMm = SheathingSpec.UsualExcessMm,
        Source = KeySources.Proposal,
    };

    public static readonly ChoiceKey<Facing> Mat = new(
        "mat-side",
        [("outward", Facing.Outward), ("to the wood", Facing.ToTheWood)],
        "Which way the mat on one face lies; a cloth with mat must have it."
    );

    public static readonly ChoiceKey<Facing> Stitch = new(
        "stitch-side",
        [("outward", Facing.Outward), ("to the wood", Facing.ToTheWood)],
        "Which way the face of a stitched cloth lies on which its stitching stands out; not for one with mat, of which mat-side says it."
    )
    {
        Otherwise = "either way",
    };

    public static readonly JobTable Table = new(
        Layer,
        Cloth,
        Keel,
        Chine,
        Transom,
        Stem,
        FirstAlong,
        SideFirst,
        Courses,
        JoinLap,
        Stagger,
        Excess,
        Mat,
        Stitch
    );

    private static TableKey RoundAt(string edge) =>
        new(edge, "{ round = 75 }", "How far it is carried round.", new(Round));

    private static LengthKey Distance(string name, string example, string what) =>
        new(name, example, what)
        {
            Limits = Limits.NotNegative.UpTo(MostMm),
            Beyond = "must be from 0 to {most}",
            Source = KeySources.Plausible,
        };
}

/// <summary>Where the roll is laid first, where a word says it.</summary>
public enum FirstWord
{
    Best,
    Keel,
    Chine,
}
