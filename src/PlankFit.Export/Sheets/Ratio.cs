using System.Globalization;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Sheets;

/// <summary>A drawing's scale, 1 to so many, from those found on a scale rule of the job's units.</summary>
internal readonly record struct Ratio(double Of)
{
    private static readonly double[] Metric =
    [
        1,
        2,
        2.5,
        4,
        5,
        7.5,
        10,
        12.5,
        15,
        20,
        25,
        30,
        40,
        50,
        75,
        100,
        150,
        200,
        250,
    ];

    private static readonly double[] Feet =
    [
        1,
        2,
        3,
        4,
        6,
        8,
        10,
        12,
        16,
        20,
        24,
        32,
        40,
        48,
        64,
        96,
        128,
        192,
        256,
    ];

    public double Factor => 1 / Of;

    public override string ToString() => "1:" + Of.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>The largest drawing that still fits; beyond the list, whatever fits.</summary>
    public static Ratio Fitting(Box thing, double widthMm, double heightMm, LengthUnit unit)
    {
        double needed = Math.Max(thing.Width / widthMm, thing.Height / heightMm);
        foreach (double of in LengthUnits.IsMetric(unit) ? Metric : Feet)
        {
            if (of >= needed)
            {
                return new(of);
            }
        }

        return new(Math.Ceiling(needed));
    }
}
