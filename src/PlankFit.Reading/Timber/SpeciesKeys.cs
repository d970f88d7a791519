using System.Collections.Immutable;
using PlankFit.Planking.Wood;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Timber;

/// <summary>[[timber.species]]: a wood's figures.</summary>
public static class SpeciesKeys
{
    private const double MPaOfPsi = 0.006894757293168361;
    private const double KgM3OfLbFt3 = 16.01846337396014;

    private static readonly Limits Figures = Limits.MoreThan(0).UpTo(1e6);

    private static readonly ImmutableArray<(string, double)> Stress =
    [
        ("MPa", 1),
        ("GPa", 1000),
        ("psi", MPaOfPsi),
        ("Mpsi", 1e6 * MPaOfPsi),
    ];

    private static readonly ImmutableArray<(string, double)> Weight =
    [
        ("kg/m3", 1),
        ("kg/m³", 1),
        ("lb/ft3", KgM3OfLbFt3),
        ("lb/ft³", KgM3OfLbFt3),
    ];

    public static readonly TextKey Name = new(
        "name",
        "\"our larch\"",
        "The name by which layers call the species."
    )
    {
        AskedFor = "the name by which layers call it",
    };

    public static readonly TextKey Like = new(
        "like",
        "\"douglas-fir\"",
        "The species of the table from which what is left out here is taken."
    );

    public static readonly ChoiceKey<WoodKind> Kind = new(
        "kind",
        [("solid", WoodKind.Solid), ("plywood", WoodKind.Plywood)],
        "Solid wood or plywood."
    )
    {
        Otherwise = "as the species that it is like; else \"solid\"",
    };

    public static readonly QuantityKey Density = Figure(
        "density",
        "\"37 lb/ft3\"",
        Weight,
        "Its weight as you weighed it.",
        "accepted: kg a cubic metre, or a text with its unit: \"545 kg/m3\", \"34 lb/ft3\"",
        (20, 1500)
    );

    public static readonly QuantityKey Modulus = StressOf(
        "modulus",
        "\"1.87 Mpsi\"",
        "Its modulus of elasticity in bending.",
        (500, 40000)
    );

    public static readonly QuantityKey Rupture = StressOf(
        "rupture",
        "\"13000 psi\"",
        "Its modulus of rupture.",
        (3, 400)
    );

    public static readonly NumberKey MovementFlat = Movement(
        "movement-flat",
        "0.0026",
        "How much it moves across a flat-sawn face."
    );

    public static readonly NumberKey MovementQuarter = Movement(
        "movement-quarter",
        "0.0013",
        "How much it moves across a quarter-sawn face."
    );

    public static readonly NumberKey ShrinkFlat = Shrinkage(
        "shrink-flat",
        "8.1",
        "Its shrinkage across a flat-sawn face, from green to oven-dry."
    );

    public static readonly NumberKey ShrinkQuarter = Shrinkage(
        "shrink-quarter",
        "4.2",
        "Its shrinkage across a quarter-sawn face, from green to oven-dry."
    );

    public static readonly NumberKey Ratio = new(
        "least-radius-over-thickness",
        "130",
        "times the thickness",
        "Of plywood: the tightest radius that its maker bends it to, dry."
    )
    {
        Limits = Limits.MoreThan(0).UpTo(10000),
        AcceptedWords = "accepted: greater than {least}; plywood's usually 75 to 320",
        Source = KeySources.Plausible,
    };

    public static readonly TextKey From = new(
        "source",
        "\"weighed in our shop\"",
        "Where these figures come from."
    )
    {
        Otherwise = "\"this job\"",
    };

    public static readonly JobTable Table = new(
        Name,
        Like,
        Kind,
        Density,
        Modulus,
        Rupture,
        MovementFlat,
        MovementQuarter,
        ShrinkFlat,
        ShrinkQuarter,
        Ratio,
        From
    );

    private static NumberKey Movement(string name, string example, string what) =>
        new(name, example, "part of the width for 1 % of moisture", what)
        {
            Limits = Limits.MoreThan(0).UpTo(0.01),
            AcceptedWords =
                "accepted: part of the width for each percent of moisture, {least} to {most}; usually 0.001 to 0.004",
            Source = KeySources.Plausible,
        };

    private static NumberKey Shrinkage(string name, string example, string what) =>
        new(name, example, "percent", what)
        {
            Limits = Limits.MoreThan(0).UpTo(25),
            AcceptedWords =
                "accepted: percent from green to oven-dry, {least} to {most}; usually 2 to 11",
            Source = KeySources.Plausible,
        };

    private static QuantityKey StressOf(
        string name,
        string example,
        string what,
        (double, double) likely
    ) =>
        Figure(
            name,
            example,
            Stress,
            what,
            "accepted: megapascals, or a text with its unit: \"13.4 GPa\", \"85 MPa\", \"1.95 Mpsi\", \"12400 psi\"",
            likely
        );

    private static QuantityKey Figure(
        string name,
        string example,
        ImmutableArray<(string, double)> units,
        string what,
        string accepted,
        (double Least, double Most) likely
    ) =>
        new(name, example, units, what)
        {
            Limits = Figures,
            Accepted = accepted,
            Likely = Likely.OfUnit(likely.Least, likely.Most, "is an unlikely figure for wood"),
            Source = KeySources.Plausible,
        };
}
