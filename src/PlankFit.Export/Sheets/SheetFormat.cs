using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheets;

/// <summary>The paper of a sheet, mm.</summary>
internal readonly record struct SheetFormat(double WidthMm, double HeightMm)
{
    /// <summary>For the bench, lying: A4, or Letter where the job prints on that.</summary>
    public static SheetFormat Bench(Job job) =>
        job.Output.Paper == PaperSize.Letter ? new(279.4, 215.9) : new(297, 210);

    /// <summary>For the bench, standing.</summary>
    public static SheetFormat BenchStanding(Job job) =>
        new(Bench(job).HeightMm, Bench(job).WidthMm);

    /// <summary>For the wall: A3, or 17 by 11 in where the job prints on Letter.</summary>
    public static SheetFormat Wall(Job job) =>
        job.Output.Paper == PaperSize.Letter ? new(431.8, 279.4) : new(420, 297);
}
