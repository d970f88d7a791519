using System.Collections.Immutable;
using PlankFit.Planking.Units;

namespace PlankFit.Reading.Keys;

/// <summary>Units of what is mixed and of the work on it, each with what it is worth in the first of its list.</summary>
internal static class MixUnits
{
    private const double MetresPerFoot = 0.3048,
        MetresPerYard = 0.9144,
        GramsPerPound = 1000 * AmountText.KgPerPound;

    /// <summary>What is in a pot, grams.</summary>
    public static readonly ImmutableArray<(string Unit, double Factor)> OfPot =
    [
        ("g", 1),
        ("kg", 1000),
        ("oz", GramsPerPound / 16),
        ("lb", GramsPerPound),
    ];

    /// <summary>What goes into a mix, grams to a kg of it.</summary>
    public static readonly ImmutableArray<(string Unit, double Factor)> IntoMix =
    [
        ("g/kg", 1),
        ("oz/lb", 1000.0 / 16),
        ("%", 10),
    ];

    /// <summary>What a mass costs, by the kg.</summary>
    public static readonly ImmutableArray<(string Unit, double Factor)> Price =
    [
        ("/kg", 1),
        ("/lb", 1 / AmountText.KgPerPound),
    ];

    /// <summary>Work on an area, minutes a square metre.</summary>
    public static readonly ImmutableArray<(string Unit, double Factor)> OnArea =
    [
        ("min/m2", 1),
        ("min/m²", 1),
        ("min/ft2", 1 / (MetresPerFoot * MetresPerFoot)),
        ("min/ft²", 1 / (MetresPerFoot * MetresPerFoot)),
        ("min/sq ft", 1 / (MetresPerFoot * MetresPerFoot)),
        ("min/yd2", 1 / (MetresPerYard * MetresPerYard)),
        ("min/yd²", 1 / (MetresPerYard * MetresPerYard)),
        ("min/sq yd", 1 / (MetresPerYard * MetresPerYard)),
    ];

    /// <summary>Work along a length, minutes a metre.</summary>
    public static readonly ImmutableArray<(string Unit, double Factor)> OnLength =
    [
        ("min/m", 1),
        ("min/ft", 1 / MetresPerFoot),
        ("min/yd", 1 / MetresPerYard),
    ];
}
