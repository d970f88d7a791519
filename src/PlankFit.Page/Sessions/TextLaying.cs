using PlankFit.App.Showing;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Text;

namespace PlankFit.Pages.Sessions;

/// <summary>A text of a job laid, whatever comes of it.</summary>
internal static class TextLaying
{
    /// <param name="job">Where the job file lies, and what would stand in it.</param>
    /// <param name="before">As <see cref="ShownJob"/> has it.</param>
    /// <param name="laid">Given the planks as soon as there are any.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static ShownJob Of(
        (string Path, byte[] Bytes) job,
        JobFiles files,
        ShownJob? before,
        CancellationToken stop,
        Action<BottomPlan> laid
    )
    {
        string file = Path.GetFileName(job.Path);
        try
        {
            return ShownJob.Of(
                job.Path,
                TextFile.Decode(job.Bytes, file),
                before,
                new Progress<PlanProgress>(),
                stop,
                laid,
                files
            );
        }
        catch (Exception e) when (!stop.IsCancellationRequested)
        {
            // As on the command line: the page lives on, with the picture that it had.
            return new(
                null,
                [
                    new(
                        Severity.Error,
                        file,
                        $"a fault of the program, not of the job: {e.Message} Please report it with the job's two files"
                    ),
                ]
            );
        }
    }
}
