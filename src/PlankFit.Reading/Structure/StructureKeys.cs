using System.Collections.Immutable;
using PlankFit.Planking.Structure;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Structure;

/// <summary>[structure]: what is compared, and by which constants.</summary>
public static class StructureKeys
{
    private const double KPaOfPsi = 6.894757293168361,
        NewtonsPerKg = 9.80665,
        NewtonsPerLb = 4.4482216152605;

    /// <summary>The usual coupon where lengths are in feet and inches.</summary>
    internal static readonly CouponSpec InInches = new()
    {
        WidthMm = 2 * 25.4,
        SpanMm = 16 * 25.4,
        Newtons = 45 * NewtonsPerLb,
    };

    private const string Handbook = "Douglas-fir, tangential: Wood Handbook, second hand";
    private const string Memory = "from memory";

    private static readonly StructureSpec Usual = StructureSpec.Default;

    private static readonly ImmutableArray<(string, double)> Stress =
    [
        ("MPa", 1),
        ("GPa", 1000),
        ("Mpsi", 1e3 * KPaOfPsi),
    ];

    public static readonly QuantityKey Pressure = new(
        "pressure",
        "\"20 kPa\"",
        [("kPa", 1), ("psi", KPaOfPsi)],
        "An even pressure on a panel, by which stacks are compared; which one a boat must bear is for the standard and a qualified person."
    )
    {
        Limits = Limits.MoreThan(0).UpTo(5000),
        Accepted = "accepted: kilopascals, or a text with its unit: \"20 kPa\", \"3 psi\"",
        Likely = Likely.OfUnit(0.5, 500, "is an unlikely pressure on a bottom"),
        Source = KeySources.Plausible,
    };

    public static readonly LengthKey Span = new(
        "span",
        "250",
        "Between stringers, from centre to centre."
    )
    {
        Limits = Limits.Positive,
        Otherwise = "the widest at each station between keel, stringers of [[behind]] and chine",
    };

    public static readonly LengthKey Width = new("width", "50", "Of the strip.")
    {
        Limits = Limits.Positive,
        Otherwise = "50 mm, or 2 in where lengths are in feet and inches",
        Source = KeySources.Proposal,
    };

    public static readonly LengthKey Rests = new("span", "400", "Between its two rests.")
    {
        Limits = Limits.Positive,
        Otherwise = "400 mm, or 16 in where lengths are in feet and inches",
        Source = KeySources.Proposal,
    };

    public static readonly QuantityKey Load = new(
        "load",
        "\"20 kg\"",
        [("N", 1), ("kg", NewtonsPerKg), ("lb", NewtonsPerLb)],
        "Hung from its middle."
    )
    {
        Limits = Limits.MoreThan(0).UpTo(1e5),
        Accepted = "accepted: newtons, or a text with its unit: \"200 N\", \"20 kg\", \"45 lb\"",
        Likely = Likely.OfUnit(1, 20_000, "is an unlikely load on a strip"),
        Otherwise = "200 N, or 45 lb where lengths are in feet and inches",
        Source = KeySources.Proposal,
    };

    public static readonly TableKey Coupon = new(
        "coupon",
        "{ width = 50, span = 400, load = \"20 kg\" }",
        "A strip of the stack to build, lay on two rests and load.",
        new(Width, Rests, Load)
    );

    public static readonly NumberKey Across = Part(
        "wood-across",
        "0.05",
        "Wood's stiffness across its grain, as a part of that along it.",
        Usual.Wood.Across
    );

    public static readonly NumberKey Shear = Part(
        "wood-shear",
        "0.078",
        "The same in shear.",
        Usual.Wood.Shear
    );

    public static readonly NumberKey Poisson = Part(
        "wood-poisson",
        "0.449",
        "How much it draws in across where it is pulled along.",
        Usual.Wood.Poisson
    );

    public static readonly QuantityKey Glass = Modulus(
        "glass-modulus",
        "\"72 GPa\"",
        "Of the cloth's fibres.",
        "72 GPa",
        (20_000, 400_000)
    );

    public static readonly QuantityKey Resin = Modulus(
        "resin-modulus",
        "\"3 GPa\"",
        "Of the cured resin.",
        "3 GPa",
        (500, 8000)
    );

    public static readonly JobTable Table = new(
        Pressure,
        Span,
        Coupon,
        Across,
        Shear,
        Poisson,
        Glass,
        Resin
    );

    private static NumberKey Part(string name, string example, string what, double usual) =>
        new(name, example, "part", what)
        {
            Limits = Limits.MoreThan(0).UpTo(1),
            AcceptedWords = "accepted: more than {least} and no more than {most}",
            DefaultValue = usual,
            Source = Handbook,
        };

    private static QuantityKey Modulus(
        string name,
        string example,
        string what,
        string usual,
        (double Least, double Most) likely
    ) =>
        new(name, example, Stress, what)
        {
            Limits = Limits.MoreThan(0).UpTo(1e6),
            Accepted =
                "accepted: megapascals, or a text with its unit: \"72 GPa\", \"3000 MPa\", \"10 Mpsi\"",
            Likely = Likely.OfUnit(likely.Least, likely.Most, "is an unlikely modulus for it"),
            Otherwise = usual,
            Source = Memory,
        };
}
