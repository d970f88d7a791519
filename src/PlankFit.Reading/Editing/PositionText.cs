using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Reading.Editing;

/// <summary>A place along the hull as a job's own file has it: counted in the sense of its table, in the unit that the file is written in.</summary>
public static class PositionText
{
    /// <summary>In metric units to a millimetre, else to 1/32 in; null where that is no place at all.</summary>
    /// <param name="xMm">Growing aft.</param>
    public static string? Of(Job job, double xMm)
    {
        double position = Position(job, xMm);
        return !(Math.Abs(position) < 1e6) ? null
            : LengthUnits.IsMetric(job.WrittenIn)
                ? NumberText.Trimmed(Math.Round(position) / LengthUnits.MmPer(job.WrittenIn), 3)
            : LengthText.ForPaper(position, LengthUnit.Foot).Replace('\u2212', '-');
    }

    /// <summary>The same for people, in any unit.</summary>
    public static string Shown(Job job, double xMm, LengthUnit unit) =>
        LengthText.FormatExact(Position(job, xMm), unit);

    private static double Position(Job job, double xMm) =>
        job.PositionsFromMm is { } from ? from - xMm : xMm;
}
