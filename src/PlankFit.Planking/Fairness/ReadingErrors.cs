using System.Collections.Immutable;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fairness;

/// <summary>
/// How well a table was read and written. A rule is read to half a sixteenth of an inch at best, and a value written to steps of 1/8 in or 5 mm is off by up
/// to half a step besides; how much worse it is than that, all rows of a table say together.
/// </summary>
internal static class ReadingErrors
{
    /// <summary>Standard deviation of readings good to ±0.8 mm, 1/32 in: that over the root of three.</summary>
    public const double RuleMm = 0.46;

    /// <summary>A table is written in the coarsest of these steps on which so many of its values lie.</summary>
    private const double OnStep = 0.8;
    private const double SameMm = 1e-3;
    private static readonly ImmutableArray<double> MetricMm = [5, 2, 1, 0.5];
    private static readonly ImmutableArray<double> Inches = [1 / 8.0, 1 / 16.0, 1 / 32.0];

    /// <summary>Standard deviation of one value, mm.</summary>
    public static double ExpectedMm(IReadOnlyCollection<double> values, LengthUnit unit)
    {
        double step = StepMm(values, unit);
        return Math.Sqrt((RuleMm * RuleMm) + (step * step / 12));
    }

    /// <summary>The step the table is written in, mm; nothing where it is finer than a rule.</summary>
    public static double StepMm(IReadOnlyCollection<double> values, LengthUnit unit)
    {
        IEnumerable<double> steps = LengthUnits.IsMetric(unit)
            ? MetricMm
            : Inches.Select(i => i * LengthUnits.MmPerInch);
        return steps.FirstOrDefault(step =>
            values.Count(v => Math.Abs((v / step) - Math.Round(v / step)) * step < SameMm)
            >= OnStep * values.Count
        );
    }

    /// <summary>For every row, what all the others say of the size of reading errors: ln of how likely each size is.</summary>
    public static ImmutableArray<ImmutableArray<double>> ByOthers(
        IReadOnlyCollection<RowEvidence> rows
    )
    {
        double[][] each = [.. rows.Select(r => r.LogByReading())];
        return
        [
            .. each.Select(own =>
                RowEvidence
                    .Readings.Select((_, size) => each.Sum(log => log[size]) - own[size])
                    .ToImmutableArray()
            ),
        ];
    }
}
