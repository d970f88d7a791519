using PlankFit.Planking.Glue;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Glue;

/// <summary>[priming], [weave], [[fillet]] and [fairing]: what else resin and glue go into.</summary>
public static class GlueKeys
{
    public static readonly NumbersKey GramsPerM2 = new(
        "grams",
        "[150, 250, 350]",
        "grams a square metre",
        "A square metre, the least, the usual and the most: wood and weave differ; weigh a trial."
    )
    {
        Required = true,
        Most = 3,
        Limits = Limits.FromTo(0, 5000),
        Accepted =
            "accepted: three numbers of grams a square metre, the least first: [150, 250, 350]; a first coat on wood 100 to 200 and a weave 100 to 300, both from memory",
    };

    public static readonly JobTable Rate = new(GramsPerM2);

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

    public static readonly JobTable Weave = new(GramsPerM2, Coats);

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
