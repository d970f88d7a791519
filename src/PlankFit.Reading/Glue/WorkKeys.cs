using PlankFit.Planking.Glue;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Glue;

/// <summary>[crew] and [clock]: who glues, how fast, when, and how warm it is.</summary>
public static class WorkKeys
{
    private static readonly CrewSpec Usual = new(CrewSpec.FastenHands);

    public static readonly NumberKey Hands = new(
        "hands",
        "4",
        "whole number",
        "How many people work; a plank takes two of them to fit and fasten."
    )
    {
        Required = true,
        Whole = true,
        Limits = Limits.FromTo(1, 50),
        AcceptedWords = "accepted: a whole number from {least} to {most}",
    };

    public static readonly NumberKey MixMinutes = WorkMinutes.Key(
        "mix",
        "4",
        "minutes a batch",
        "To weigh, mix and carry a batch, one hand.",
        Usual.MixMinutes
    );

    public static readonly NumberKey Spread = WorkMinutes.Key(
        "spread",
        "3",
        "minutes a plank",
        "To spread the glue for a plank, one hand.",
        Usual.SpreadMinutes
    );

    public static readonly NumberKey Fasten = WorkMinutes.Key(
        "fit-and-fasten",
        "12",
        "minutes a plank",
        "To fit a plank and fasten it, two hands.",
        Usual.FastenMinutes
    );

    public static readonly NumberKey Wait = WorkMinutes.Key(
        "wait",
        "10",
        "minutes",
        "How long a plank's glue may lie open before the plank goes down.",
        Usual.WaitMinutes
    );

    public static readonly NumberKey Wet = WorkMinutes.Key(
        "wet",
        "6",
        WorkMinutes.OnArea,
        "To wet out cloth, two hands.",
        Usual.WetMinutesPerM2
    );

    public static readonly NumberKey Coat = WorkMinutes.Key(
        "coat",
        "3",
        WorkMinutes.OnArea,
        "To roll a coat over cloth, two hands.",
        Usual.CoatMinutesPerM2
    );

    public static readonly NumberKey Fair = WorkMinutes.Key(
        "fair",
        "12",
        WorkMinutes.OnArea,
        "To lay filler on what of the outside has any, two hands.",
        Usual.FairMinutesPerM2
    );

    public static readonly NumberKey LayFillet = WorkMinutes.Key(
        "lay-fillet",
        "3",
        WorkMinutes.OnLength,
        "To lay a fillet and draw it smooth, two hands.",
        Usual.FilletMinutesPerM
    );

    public static readonly NumberKey Trim = WorkMinutes.Key(
        "trim",
        "2",
        WorkMinutes.OnLength,
        "To trim cloth while it is tacky, one hand.",
        Usual.TrimMinutesPerM
    );

    public static readonly NumberKey WashAndKey = WorkMinutes.Key(
        "wash-and-key",
        "10",
        WorkMinutes.OnArea,
        "To wash and key what has cured, one hand.",
        Usual.KeyMinutesPerM2
    );

    public static readonly NumberKey Board = WorkMinutes.Key(
        "board",
        "15",
        WorkMinutes.OnArea,
        "To board a skin fair, one hand.",
        Usual.BoardMinutesPerM2
    );

    public static readonly NumberKey MostGrams = new(
        "most-grams",
        "500",
        "grams",
        "The most that one batch may be."
    )
    {
        Limits = Limits.FromTo(10, 100_000),
        Units = MixUnits.OfPot,
        AcceptedWords = "accepted: grams from {least} to {most}, or a text with its unit: \"1 lb\"",
        Otherwise = "what the clocks allow, and never more than the largest mass that pot gives",
    };

    public static readonly NumberKey LeastGrams = new(
        "least-grams",
        "30",
        "grams",
        "The least that is mixed, since less cannot be measured; what is left over of it is ordered with the rest."
    )
    {
        Limits = Limits.FromTo(0, 1000),
        Units = MixUnits.OfPot,
        AcceptedWords = "accepted: grams from {least} to {most}, or a text with its unit: \"1 oz\"",
        DefaultValue = Usual.LeastGrams,
        Source = KeySources.Proposal,
    };

    public static readonly TextKey HeldBy = new(
        "held-by",
        "\"spring clamps\"",
        "What holds planks until the glue has cured, by the name by which sessions count it: spring clamps, battens, staples. How closely they stand is [timber] clamp-spacing."
    )
    {
        Otherwise = $"fastenings, where the job has any, or else {CrewSpec.UsuallyHeldBy}",
        Source = KeySources.Practice,
    };

    public static readonly NumberKey HoldsPlanks = new(
        "holds-planks",
        "4",
        "whole number",
        "How many planks one of them lies over: a clamp one, a batten several."
    )
    {
        Whole = true,
        Limits = Limits.FromTo(1, 50),
        AcceptedWords = "accepted: a whole number from {least} to {most}",
        DefaultValue = Usual.HoldsPlanks,
        Source = KeySources.Practice,
    };

    public static readonly NumberKey ClampsOnHand = new(
        "clamps-on-hand",
        "120",
        "whole number",
        "How many of them there are; told where sessions want more at once, and kept to with wait-for-clamps."
    )
    {
        Whole = true,
        Limits = Limits.FromTo(0, 100_000),
        AcceptedWords = "accepted: a whole number from {least} to {most}",
        Otherwise = "they are counted and not compared",
    };

    public static readonly YesNoKey WaitForClamps = new(
        "wait-for-clamps",
        false,
        "Whether sessions keep to clamps-on-hand: a batch is smaller, or waits until glue has cured by its clock and enough of them are off."
    );

    public static readonly ChoiceKey<bool> Sessions = new(
        "sessions",
        [("list", false), ("searched", true)],
        "Whether sessions are those of the list, or each is searched for a sooner end, which takes some seconds."
    )
    {
        DefaultChoice = false,
    };

    public static readonly LengthKey AcrossBottom = Inside(
        "across-bottom",
        "70",
        "Across its bottom, inside."
    );

    public static readonly LengthKey AcrossTop = Inside(
        "across-top",
        "90",
        "Across its rim, inside."
    );

    public static readonly LengthKey Height = Inside(
        "height",
        "110",
        "From its bottom to its rim."
    );

    public static readonly TableKey Cup = new(
        "cup",
        "{ across-bottom = 70, across-top = 90, height = 110 }",
        "The mixing cup, for the marks on its side.",
        new(AcrossBottom, AcrossTop, Height)
    )
    {
        Otherwise = "cards say grams and millilitres and no marks",
    };

    public static readonly JobTable Crew = new(
        Hands,
        MixMinutes,
        Spread,
        Fasten,
        Wait,
        Wet,
        Coat,
        Fair,
        LayFillet,
        Trim,
        WashAndKey,
        Board,
        MostGrams,
        LeastGrams,
        HeldBy,
        HoldsPlanks,
        ClampsOnHand,
        WaitForClamps,
        Sessions,
        Cup
    );

    public static readonly TextsKey Shifts = new(
        "shifts",
        "[\"08:00-12:00\", \"13:00-17:00\"]",
        "When they work, every day alike."
    )
    {
        Required = true,
        Most = 10,
    };

    public static readonly TextKey Time = new("at", "\"14:00\"", "The hour.")
    {
        AskedFor = "the hour: \"14:00\"",
    };

    public static readonly TextKey Degrees = new(
        "is",
        "\"24 C\"",
        "The temperature in the shop, with its scale."
    )
    {
        AskedFor = Temperatures.Accepted,
    };

    public static readonly TablesKey Temperature = new(
        "clock.temperature",
        "How warm the shop is through the day, straight between the hours given and from the last on to the next day's first; each in braces in a list.",
        new(Time, Degrees)
    )
    {
        Required = true,
        Most = 48,
    };

    public static readonly JobTable Clock = new(Shifts, Temperature);

    private static LengthKey Inside(string name, string example, string what) =>
        new(name, example, what) { Required = true, Limits = Limits.Positive };
}
