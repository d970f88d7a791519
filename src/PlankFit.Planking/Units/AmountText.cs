namespace PlankFit.Planking.Units;

/// <summary>
/// Amounts of what is weighed and poured, in the job's units. Where lengths are in feet and inches a mass is in ounces or pounds and a volume in US fluid ounces or US
/// quarts, of which four are a US gallon; what goes into one pot has its grams and millilitres beside it, since scales and cups show those as well and finer.
/// </summary>
public static class AmountText
{
    /// <summary>The avoirdupois pound, kg, exactly (international yard and pound, 1959).</summary>
    public const double KgPerPound = 0.45359237;

    /// <summary>The US fluid ounce, ml, exactly: a 128th of a gallon of 231 cubic inches.</summary>
    public const double MillilitresPerUsOunce = 29.5735295625;

    /// <summary>An ounce on a square yard, g/m², exactly.</summary>
    public const double GsmPerOunceOnYard = GramsPerOunce / (0.9144 * 0.9144);

    /// <summary>231 cubic inches, exactly.</summary>
    public const double LitresPerUsGallon = 4 * LitresPerUsQuart;

    /// <summary>Exactly, by definition.</summary>
    public const double LitresPerImperialGallon = 4.54609;

    private const double GramsPerOunce = 1000 * KgPerPound / 16,
        LitresPerUsQuart = 32 * MillilitresPerUsOunce / 1000;

    /// <summary>One pot's mass: <c>231 g</c>, <c>97.4 g</c>; <c>8.15 oz (231 g)</c>.</summary>
    public static string Grams(double grams, LengthUnit unit)
    {
        string metric = NumberText.Padded(grams, grams < 100 ? 1 : 0) + " g";
        return LengthUnits.IsMetric(unit) ? metric : $"{Ounces(grams / GramsPerOunce)} ({metric})";
    }

    /// <summary>One pot's volume: <c>210 ml</c>; <c>7.1 US fl oz (210 ml)</c>.</summary>
    public static string Millilitres(double litres, LengthUnit unit)
    {
        string metric = NumberText.Padded(1000 * litres, litres < 0.1 ? 1 : 0) + " ml";
        return LengthUnits.IsMetric(unit)
            ? metric
            : $"{NumberText.Padded(1000 * litres / MillilitresPerUsOunce, litres < 0.1 ? 2 : 1)} US fl oz ({metric})";
    }

    /// <summary>What is bought: <c>12.47 kg</c>; <c>27.49 lb</c>.</summary>
    public static string Kg(double kg, LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? Hundredths(kg, "kg") : Hundredths(kg / KgPerPound, "lb");

    /// <summary>The same up to the next hundredth, for an order.</summary>
    public static string KgUp(double kg, LengthUnit unit)
    {
        double one = LengthUnits.IsMetric(unit) ? 1 : KgPerPound;
        return Kg(Math.Ceiling((100 * kg / one) - 1e-6) / 100 * one, unit);
    }

    /// <summary>What is bought: <c>3.42 l</c>; <c>3.61 US qt</c>.</summary>
    public static string Litres(double litres, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? Hundredths(litres, "l")
            : Hundredths(litres / LitresPerUsQuart, "US qt");

    /// <summary>What lies on an area, as cloth is sold: <c>600 g/m²</c>; <c>17.7 oz/sq yd</c>.</summary>
    public static string Gsm(double gsm, LengthUnit unit) =>
        $"{NumberText.Trimmed(gsm / GsmPer(unit), LengthUnits.IsMetric(unit) && gsm >= 10 ? 0 : 1)} {GsmUnit(unit)}";

    public static string GsmUnit(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? "g/m²" : "oz/sq yd";

    /// <summary>g/m² in one of <see cref="GsmUnit"/>.</summary>
    public static double GsmPer(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? 1 : GsmPerOunceOnYard;

    /// <summary>The area that a rate of <see cref="GsmUnit"/> is of.</summary>
    public static string OneArea(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? "square metre" : "square yard";

    /// <summary>How dense a mix is, as data sheets have it: <c>1.09 kg a litre</c>; <c>9.1 lb a US gallon</c>.</summary>
    public static string Density(double kgPerLitre, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? NumberText.Trimmed(kgPerLitre, 3) + " kg a litre"
            : NumberText.Trimmed(kgPerLitre * LitresPerUsGallon / KgPerPound, 2)
                + " lb a US gallon";

    /// <summary>What goes into a mix: <c>g of silica to a kg</c>; <c>oz of silica to a lb</c>.</summary>
    public static string GramsPerKgUnit(string of, LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? $"g of {of} to a kg" : $"oz of {of} to a lb";

    /// <summary>g to a kg in one of <see cref="GramsPerKgUnit"/>.</summary>
    public static double GramsPerKgPer(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? 1 : 1000.0 / 16;

    private static string Ounces(double ounces) =>
        ounces < 10 ? Hundredths(ounces, "oz") : NumberText.Padded(ounces, 1) + " oz";

    /// <summary>What is there and under half of the last digit is not called nought.</summary>
    private static string Hundredths(double amount, string unit) =>
        (amount is > 0 and < 0.005 ? "under 0.01" : NumberText.Padded(amount, 2)) + " " + unit;
}
