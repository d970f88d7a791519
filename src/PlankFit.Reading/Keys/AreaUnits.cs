using System.Collections.Immutable;
using PlankFit.Planking.Units;

namespace PlankFit.Reading.Keys;

/// <summary>Units of what lies on an area, each with what it is worth in the first of its list.</summary>
internal static class AreaUnits
{
    private const double SquareMetresPerFt2 = 0.3048 * 0.3048,
        GsmPerOunceOnFoot = 9 * AmountText.GsmPerOunceOnYard,
        LitresPerFt3 = 1000 * 0.3048 * SquareMetresPerFt2;

    /// <summary>As cloth is sold; the square is written after its unit or before it.</summary>
    public static readonly ImmutableArray<(string Unit, double Factor)> OfCloth =
    [
        ("g/m2", 1),
        ("g/m²", 1),
        ("oz/yd2", AmountText.GsmPerOunceOnYard),
        ("oz/yd²", AmountText.GsmPerOunceOnYard),
        ("oz/sq yd", AmountText.GsmPerOunceOnYard),
        ("oz/ft2", GsmPerOunceOnFoot),
        ("oz/ft²", GsmPerOunceOnFoot),
        ("oz/sq ft", GsmPerOunceOnFoot),
    ];

    /// <summary>And as glue is spread: pounds on a thousand square feet.</summary>
    public static readonly ImmutableArray<(string Unit, double Factor)> OfMix =
    [
        .. OfCloth,
        ("lb/1000 ft2", 16 * GsmPerOunceOnFoot / 1000),
        ("lb/1000 ft²", 16 * GsmPerOunceOnFoot / 1000),
        ("lb/1000 sq ft", 16 * GsmPerOunceOnFoot / 1000),
    ];

    /// <summary>How far a volume goes, m² a litre. A gallon or a quart without its country is two things and not among them.</summary>
    public static readonly ImmutableArray<(string Unit, double Factor)> Spread =
    [
        ("m2/l", 1),
        ("m²/l", 1),
        ("m2/litre", 1),
        ("m²/litre", 1),
        .. new[] { "ft2", "ft²", "sq ft" }.SelectMany(f =>
            new (string, double)[]
            {
                ($"{f}/US gal", SquareMetresPerFt2 / AmountText.LitresPerUsGallon),
                ($"{f}/US qt", 4 * SquareMetresPerFt2 / AmountText.LitresPerUsGallon),
                ($"{f}/imp gal", SquareMetresPerFt2 / AmountText.LitresPerImperialGallon),
                ($"{f}/imp qt", 4 * SquareMetresPerFt2 / AmountText.LitresPerImperialGallon),
            }
        ),
    ];

    /// <summary>Density, kg a litre.</summary>
    public static readonly ImmutableArray<(string Unit, double Factor)> Density =
    [
        ("kg/l", 1),
        ("g/ml", 1),
        ("g/cm3", 1),
        ("lb/US gal", AmountText.KgPerPound / AmountText.LitresPerUsGallon),
        ("lb/imp gal", AmountText.KgPerPound / AmountText.LitresPerImperialGallon),
        ("kg/m3", 0.001),
        ("kg/m³", 0.001),
        ("lb/ft3", AmountText.KgPerPound / LitresPerFt3),
        ("lb/ft³", AmountText.KgPerPound / LitresPerFt3),
        ("oz/ft3", AmountText.KgPerPound / 16 / LitresPerFt3),
        ("oz/ft³", AmountText.KgPerPound / 16 / LitresPerFt3),
    ];
}
