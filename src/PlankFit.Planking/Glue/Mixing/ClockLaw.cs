using System.Collections.Immutable;
using MathNet.Numerics.LinearRegression;

namespace PlankFit.Planking.Glue.Mixing;

/// <summary>One line of a data sheet: so many minutes at this temperature, of this mass in the pot; a film has no mass.</summary>
public readonly record struct ClockReading(double Celsius, double Minutes, double? Grams = null);

/// <summary>
/// How long a mix lasts, by temperature and by the mass in the pot: t = t1 exp(Ea/R (1/T - 1/T1)) (m/m1)^-n, Arrhenius' law with a power of the mass (a
/// proposal, no source), put through what the data sheet says; with more readings than unknowns the least squares of the logarithms.
/// </summary>
public sealed record ClockLaw
{
    /// <summary>Of the gas constant, J/(mol K): CODATA 2018.</summary>
    public const double GasConstant = 8.314462618;

    private const double Kelvin = 273.15;

    private ClockLaw(ImmutableArray<ClockReading> readings) => Readings = readings;

    public ImmutableArray<ClockReading> Readings { get; }

    /// <summary>Ea, J/mol.</summary>
    public double ActivationJPerMol { get; private init; }

    /// <summary>n; 0 where only one mass is given.</summary>
    public double MassPower { get; private init; }

    private double LogMinutes { get; init; }

    public double ColdestCelsius => Readings.Min(r => r.Celsius);

    public double WarmestCelsius => Readings.Max(r => r.Celsius);

    /// <summary>The largest mass that is given: above it the law is not to be asked. Null for a film.</summary>
    public double? MostGrams => Readings.Max(r => r.Grams);

    private double? LeastGrams => Readings.Min(r => r.Grams);

    /// <summary>Null where the readings do not say how the time goes with temperature: two temperatures are the least.</summary>
    public static ClockLaw? Through(ImmutableArray<ClockReading> readings)
    {
        if (readings.Select(r => r.Celsius).Distinct().Count() < 2)
        {
            return null;
        }

        ClockReading first = readings[0];
        bool masses = readings.Select(r => r.Grams).Distinct().Count() > 1;
        double[][] rows =
        [
            .. readings.Select(r =>
            {
                double inverse = (Inverse(r.Celsius) - Inverse(first.Celsius)) / GasConstant * 1e4;
                return masses
                    ? new[] { 1, inverse, -Math.Log(r.Grams!.Value / first.Grams!.Value) }
                    : [1, inverse];
            }),
        ];
        if (readings.Length < rows[0].Length)
        {
            return null;
        }

        double[] found = MultipleRegression.QR(
            rows,
            [.. readings.Select(r => Math.Log(r.Minutes))]
        );
        return new(readings)
        {
            LogMinutes = found[0],
            ActivationJPerMol = found[1] * 1e4,
            MassPower = masses ? found[2] : 0,
        };
    }

    /// <summary>How long it lasts at a steady temperature. A mass below the least that is given counts as that one.</summary>
    /// <param name="grams">Not above <see cref="MostGrams"/>; null for a film.</param>
    public double Minutes(double celsius, double? grams = null) => Of(celsius, MassTerm(grams));

    /// <summary>What the mass in the pot takes off the logarithm of its minutes: the same at any temperature.</summary>
    internal double MassTerm(double? grams) =>
        MassPower != 0 && grams is { } g
            ? MassPower * Math.Log(Math.Max(g, LeastGrams!.Value) / Readings[0].Grams!.Value)
            : 0;

    /// <param name="massTerm">As <see cref="MassTerm"/> has it.</param>
    internal double Of(double celsius, double massTerm)
    {
        double inverse = (Inverse(celsius) - Inverse(Readings[0].Celsius)) / GasConstant;
        return Math.Exp(LogMinutes + (ActivationJPerMol * inverse) - massTerm);
    }

    private static double Inverse(double celsius) => 1 / (celsius + Kelvin);
}
