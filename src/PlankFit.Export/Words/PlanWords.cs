using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Words;

/// <summary>Sizes of the whole plan in words.</summary>
public static class PlanWords
{
    /// <summary>6.36 m²; 68.4 sq ft.</summary>
    public static string Area(double mm2, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? $"{NumberText.Padded(mm2 / 1e6, 2)} m²"
            : $"{NumberText.Padded(mm2 / (LengthUnits.MmPerFoot * LengthUnits.MmPerFoot), 1)} sq ft";

    /// <summary>A length of stock, rounded up: 118.4 m; 389 ft.</summary>
    public static string Stock(double mm, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? $"{NumberText.Padded(Math.Ceiling(mm / 100) / 10, 1)} m"
            : LengthText.WholeInches(
                Math.Ceiling(mm / LengthUnits.MmPerFoot) * LengthUnits.MmPerFoot,
                unit
            );

    /// <summary>What is amiss with the job's table, as every sheet has it in its margin; empty where nothing is.</summary>
    public static string InMargin(Job job) =>
        job.Margin.Length == 0 ? "" : char.ToUpperInvariant(job.Margin[0]) + job.Margin[1..] + ".";

    /// <summary>Of what job a drawing without a title block is, what is amiss with its table first.</summary>
    public static string Headed(Job job, string revision = "revision") =>
        (job.Margin.Length == 0 ? "" : InMargin(job).ToUpperInvariant() + " ")
        + $"{job.Name}, {revision} {job.Revision}";

    /// <summary>1 plank; 34 planks.</summary>
    public static string Count(int number, string one) => NumberText.Count(number, one);
}
