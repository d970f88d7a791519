using PlankFit.App.Showing;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Text;

namespace PlankFit.Pages.Sessions;

/// <summary>A text of a job, read and laid, whatever comes of it.</summary>
internal static class TextLaying
{
    /// <param name="path">Where the job file lies.</param>
    /// <param name="mayRead">Which of the files that the text names may be read.</param>
    /// <param name="laid">Given the planks before the rest.</param>
    public static ShownJob Of(
        string path,
        byte[] bytes,
        ShownJob? before,
        Func<string, bool> mayRead,
        Action<BottomPlan> laid,
        CancellationToken stop
    )
    {
        string file = Path.GetFileName(path);
        try
        {
            return ShownJob.Of(
                path,
                TextFile.Decode(bytes, file),
                before,
                new Progress<PlanProgress>(),
                stop,
                laid,
                mayRead
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
