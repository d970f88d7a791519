using PlankFit.Planking.Glue;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Glue;

/// <summary>[priming], [weave], [[fillet]] and [fairing]: what else resin and glue go into.</summary>
public static class GlueKeys
{
    private static readonly Limits OnM2 = Limits.FromTo(0, 5000);

    private const string Written =
        "accepted: three amounts on an area, the least first, each a number of grams a square metre or a text with its unit: [150, 250, 350], [\"4 oz/yd2\", \"6 oz/yd2\", \"9 oz/yd2\"], or how far a volume goes, the farthest first: [\"350 ft2/US gal\", \"250 ft2/US gal\", \"150 ft2/US gal\"], [\"8 m2/l\", \"6 m2/l\", \"4 m2/l\"]";

    public static readonly RatesKey Rate = new(
        "rate",
        "[150, 250, 350]",
        "On a square metre, the least, the usual and the most: wood and weave differ; weigh a trial."
    )
    {
        Required = true,
        Most = 3,
        Limits = OnM2,
        Accepted =
            $"{Written}; a first coat on wood 100 to 200 g/m2 and a weave 100 to 300, both from memory",
    };

    /// <summary>Of glue, in [resin] or [glue].</summary>
    public static readonly RatesKey JointRate = new(
        "rate",
        "[\"40 lb/1000 ft2\", \"65 lb/1000 ft2\", \"110 lb/1000 ft2\"]",
        "Of the glue between two layers, on both faces together, in place of film-thickness: by mass of resin and hardener, or how far a volume goes once it is thickened."
    )
    {
        Most = 3,
        Limits = OnM2,
        Accepted = $"{Written}, [\"40 lb/1000 ft2\", \"65 lb/1000 ft2\", \"110 lb/1000 ft2\"]",
        Otherwise = "by film-thickness",
    };

    public static readonly JobTable Priming = new(Rate);

    public static readonly NumberKey Coats = new(
        "coats",
        "2",
        "whole number",
        "In so many coats, each on the one before while that still bonds."
    )
    {
        Limits = Limits.FromTo(1, 9),
        Whole = true,
        AcceptedWords = "accepted: a whole number from {least} to {most}",
        DefaultValue = GlueSpec.UsualWeaveCoats,
        Source = KeySources.Proposal,
    };

    public static readonly JobTable Weave = new(Rate, Coats);

    public static readonly TextKey Along = new(
        "along",
        "\"chine log, inside\"",
        "What it runs along, by the name by which the list calls it."
    )
    {
        AskedFor = "what it runs along, in your own words",
    };

    public static readonly LengthKey Radius = new("radius", "12", "Of its hollow.")
    {
        Required = true,
        Limits = Limits.Positive,
    };

    public static readonly NumberKey Angle = new(
        "angle",
        "110",
        "degrees",
        "Open between the two faces."
    )
    {
        Limits = Limits.FromTo(20, 170),
        AcceptedWords = "accepted: degrees from {least} to {most}",
        DefaultValue = 90,
        Source = KeySources.Proposal,
    };

    public static readonly LengthKey Length = new(
        "length",
        "15000",
        "How much of it there is, both sides together."
    )
    {
        Required = true,
        Limits = Limits.Positive,
    };

    public static readonly JobTable Fillet = new(Along, Radius, Angle, Length);

    public static readonly TextKey FillerName = new(
        "name",
        "\"colloidal silica\"",
        "How lists and cards call it."
    )
    {
        AskedFor = "how you call it",
    };

    public static readonly ChoiceKey<FillerInto> Into = new(
        "into",
        [
            ("glue", FillerInto.Glue),
            ("fillets", FillerInto.Fillets),
            ("fairing", FillerInto.Fairing),
            ("all", FillerInto.All),
        ],
        "What it goes into; where rates differ, a table each."
    )
    {
        DefaultChoice = FillerInto.Glue,
    };

    public static readonly NumbersKey GramsPerKg = new(
        "grams-per-kg",
        "[40, 60, 90]",
        "grams to a kg of resin and hardener",
        "As much as makes it stand: the least, the usual and the most; weigh a trial."
    )
    {
        Required = true,
        Most = 3,
        Limits = Limits.FromTo(0, 3000),
        Units = MixUnits.IntoMix,
        Accepted =
            "accepted: three numbers of grams to a kg of resin and hardener, the least first: [40, 60, 90], or texts with their unit: [\"0.6 oz/lb\", \"1 oz/lb\", \"1.4 oz/lb\"]; fumed silica in glue 30 to 80 and in fillets 60 to 120, hollow glass in fairing 150 to 350, all from memory",
    };

    public static readonly NumberKey FillerDensity = new(
        "density",
        "0.2",
        "kg a litre",
        "Of its grains, not of the bag: so much of its volume is not resin."
    )
    {
        Limits = Limits.FromTo(0.05, 5),
        Units = AreaUnits.Density,
        AcceptedWords =
            "accepted: kg a litre from {least} to {most}, or a text with its unit: \"12 lb/ft3\", \"200 kg/m3\"",
        Otherwise = "its own volume is not taken off",
        Source = KeySources.Plausible,
    };

    public static readonly NumberKey FillerPrice = MixKeys.Price with
    {
        What = "Of the filler, in whatever the stock's prices are in.",
    };

    public static readonly JobTable Filler = new(
        FillerName,
        Into,
        GramsPerKg,
        FillerDensity,
        FillerPrice
    );

    public static readonly LengthKey Depth = new(
        "depth",
        "0.8",
        "How deep the filler lies where there is any."
    )
    {
        Required = true,
        Limits = Limits.Positive,
    };

    public static readonly NumberKey Part = new(
        "part",
        "0.3",
        "part of the area",
        "How much of the outside has any."
    )
    {
        Required = true,
        Limits = Limits.MoreThan(0).UpTo(1),
        AcceptedWords = "accepted: a part of the area, more than {least} and no more than {most}",
    };

    public static readonly JobTable Fairing = new(Depth, Part);
}
