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
        double position = job.PositionsFromMm is { } from ? from - xMm : xMm;
        return !(Math.Abs(position) < 1e6) ? null
            : LengthUnits.IsMetric(job.WrittenIn)
                ? NumberText.Trimmed(Math.Round(position) / LengthUnits.MmPer(job.WrittenIn), 3)
            : LengthText.ForPaper(position, LengthUnit.Foot).Replace('\u2212', '-');
    }
}
