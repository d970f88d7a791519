using PlankFit.Planking.Sheathing;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Sheathing;

/// <summary>[[cloth]]: a cloth as it comes off its roll.</summary>
public static class ClothKeys
{
    private const string FromMemory = "from memory, wide, no source: weigh and press a coupon";

    private static readonly Limits Parts = Limits.Within(0, 1);

    public static readonly TextKey Name = new(
        "name",
        "\"stitched 600\"",
        "The name by which sheathing calls it."
    )
    {
        AskedFor = "the name by which [[sheathing]] calls it",
    };

    public static readonly ChoiceKey<ClothKind> Kind = new(
        "kind",
        [("stitched", ClothKind.Stitched), ("woven", ClothKind.Woven), ("mat", ClothKind.Mat)],
        "How it is made: sets of threads stitched on each other, woven, or a mat of short ones."
    )
    {
        Required = true,
    };

    public static readonly QuantityKey Mass = Weight(
        "mass",
        "600",
        "What a square metre of it weighs dry, any mat on it included.",
        Limits.MoreThan(0).UpTo(5000)
    );

    public static readonly QuantityKey Mat = Weight(
        "mat",
        "0",
        "How much of that is mat stitched to one of its faces.",
        Limits.NotNegative.UpTo(5000)
    ) with
    {
        Otherwise = "none",
    };

    public static readonly NumbersKey Directions = new(
        "directions",
        "[45, -45]",
        "degrees",
        "How its sets of threads run, from the roll's length, the set first that is on the upper face as it comes off the roll."
    )
    {
        Most = 8,
        Limits = Limits.FromTo(-90, 90),
        Accepted = "accepted: a list of degrees from -90 to 90, such as [45, -45] or [0, 90]",
        Otherwise = "[45, -45] where it is stitched, [0, 90] where it is woven",
        Source = KeySources.Practice,
    };

    public static readonly LengthKey RollWidth = Size(
        "width",
        "1270",
        "How wide the roll is.",
        (100, 4000)
    );

    public static readonly LengthKey RollLength = Size(
        "length",
        "50000",
        "How much is on it.",
        (500, 300_000)
    );

    public static readonly NumberKey RollCount = new(
        "count",
        "2",
        "whole number",
        "How many of these are on hand; one that is begun is a roll of its own."
    )
    {
        Whole = true,
        Limits = Limits.FromTo(1, 1000),
        AcceptedWords = "accepted: a whole number from {least} to {most}",
        Otherwise = "as many as are wanted may be bought",
    };

    public static readonly NumberKey RollPrice = new(
        "price",
        "290",
        "number",
        "Of one such roll, in whatever the stock's prices are in."
    )
    {
        Limits = Limits.NotNegative,
        AcceptedWords = "accepted: a number of {least} or more",
    };

    public static readonly TablesKey Roll = new(
        "cloth.roll",
        "A roll that it comes in or that is on hand; of several, each in braces in a list.",
        new(RollWidth, RollLength, RollCount, RollPrice)
    )
    {
        Required = true,
        Most = Bounds.Files,
    };

    public static readonly NumbersKey GlassContent = Range(
        "glass-content",
        "[0.40, 0.50, 0.55]",
        "The part of the cured cloth's mass that is glass and not resin: the least, the usual and the most it may be."
    ) with
    {
        Otherwise = "[0.4, 0.5, 0.55], and [0.25, 0.3, 0.35] of a mat",
    };

    public static readonly NumbersKey MatGlassContent = Range(
        "mat-glass-content",
        "[0.25, 0.30, 0.35]",
        "The same of the mat on one of its faces."
    ) with
    {
        Otherwise = "[0.25, 0.3, 0.35]",
    };

    public static readonly NumberKey LocksAt = new(
        "locks-at",
        "40",
        "degrees",
        "The shear at which it puckers: shear a square of 300 by hand, both ways, and measure its corner."
    )
    {
        Limits = Limits.FromTo(1, 60),
        AcceptedWords = "accepted: degrees from {least} to {most}",
        Otherwise =
            "40, and 5 for a mat or where its threads are not two sets square to each other",
        Source = FromMemory,
    };

    public static readonly JobTable Table = new(
        Name,
        Kind,
        Mass,
        Mat,
        Directions,
        Roll,
        GlassContent,
        MatGlassContent,
        LocksAt
    );

    private static QuantityKey Weight(string name, string example, string what, Limits limits) =>
        new(name, example, AreaUnits.OfCloth, what)
        {
            Limits = limits,
            Accepted =
                "accepted: grams a square metre, more than 0 and at most 5000, or a text with its unit: \"600 g/m2\", \"17 oz/yd2\", \"0.75 oz/ft2\" for what is sold as 3/4 oz mat",
            Likely = Likely.OfUnit(
                limits.Inclusive ? null : 20,
                2500,
                "few cloths weigh less than 20 or more than 2500 g/m2"
            ),
            Source = KeySources.Plausible,
        };

    private static LengthKey Size(
        string name,
        string example,
        string what,
        (double Least, double Most) likely
    ) =>
        new(name, example, what)
        {
            Required = true,
            Limits = Limits.Positive,
            Likely = Likely.OfUnit(likely.Least, likely.Most, "{value} is unlikely for a roll"),
            Source = KeySources.Plausible,
        };

    private static NumbersKey Range(string name, string example, string what) =>
        new(name, example, "three parts of 1", what)
        {
            Most = 3,
            Limits = Parts,
            Accepted =
                "accepted: three parts of 1, the least, the usual and the most: [0.40, 0.50, 0.55]",
            Source = FromMemory,
        };
}
