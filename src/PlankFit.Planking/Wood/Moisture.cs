namespace PlankFit.Planking.Wood;

/// <summary>How boards were sawn: whether their faces lie along the rings or across them.</summary>
public enum Grain
{
    Flat,
    Quarter,
}

/// <summary>Moisture of wood, percent of its oven-dry weight.</summary>
/// <param name="From">The climate from which it was worked out; null where the moisture itself was given.</param>
public sealed record MoistureGiven(double Percent, string? From);

/// <summary>What wood takes up from the air, and how it moves.</summary>
public static class Moisture
{
    /// <summary>The straight-line rule of movement holds between these, percent (Wood Handbook, eq. 13-1, second hand).</summary>
    public const double LinearFromPercent = 6;
    public const double LinearToPercent = 14;

    /// <summary>Wood that is to be glued with epoxy is dried below this: common practice, no source.</summary>
    public const double GluePercent = 12;

    /// <summary>At this the walls of the fibres are full, and more water moves nothing (Wood Handbook eq. 4-7, recalled).</summary>
    public const double SaturationPercent = 30;

    /// <summary>Of a dimension: dimension · C · change of moisture; swelling positive.</summary>
    public static double ChangeMm(
        double dimensionMm,
        double coefficient,
        double fromPercent,
        double toPercent
    ) => dimensionMm * coefficient * (toPercent - fromPercent);

    /// <summary>A coefficient from the shrinkage green to oven-dry, percent, which is spread evenly over 30 % of moisture (Wood Handbook eq. 4-7, recalled).</summary>
    public static Sourced? FromShrinkage(Sourced? shrinkage) =>
        shrinkage is null
            ? null
            : new(
                shrinkage.Value / 100 / SaturationPercent,
                SourceTag.Derived,
                $"shrinkage over 30 %; shrinkage: {shrinkage.Source}"
            );

    /// <summary>
    /// The moisture at which wood comes to rest in air, percent: Hailwood and Horrobin's equation with the Wood Handbook's constants (FPL-GTR-190, eq. 4-5), recalled
    /// and not read. The constants for degrees Fahrenheit and for Celsius, recalled apart from each other, agree within 0.05 %.
    /// </summary>
    /// <param name="fahrenheit">Temperature of the air, °F.</param>
    /// <param name="humidity">Relative humidity, a part from 0 to 1.</param>
    public static double AtRest(double fahrenheit, double humidity)
    {
        double t = fahrenheit,
            w = 330 + (0.452 * t) + (0.00415 * t * t),
            k = 0.791 + (0.000463 * t) - (0.000000844 * t * t),
            k1 = 6.34 + (0.000775 * t) - (0.0000935 * t * t),
            k2 = 1.09 + (0.0284 * t) - (0.0000904 * t * t),
            kh = k * humidity,
            once = k1 * kh,
            twice = k1 * k2 * kh * kh;
        return 1800 / w * ((kh / (1 - kh)) + ((once + (2 * twice)) / (1 + once + twice)));
    }

    public static double Fahrenheit(double celsius) => (celsius * 9 / 5) + 32;

    public static double Celsius(double fahrenheit) => (fahrenheit - 32) * 5 / 9;
}
