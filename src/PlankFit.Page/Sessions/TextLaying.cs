using System.Collections.Immutable;
using PlankFit.App.Showing;
using PlankFit.Export.Summary;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Text;

namespace PlankFit.Pages.Sessions;

/// <summary>A text of a job laid, whatever becomes of it.</summary>
internal static class TextLaying
{
    /// <summary>What a change did; nothing where there is nothing to hold it against, or it cannot be told: no reason to lay no more.</summary>
    public static ImmutableArray<string> Said(BottomPlan? before, BottomPlan plan)
    {
        try
        {
            return before is null ? [] : PlanChange.Words(before, plan);
        }
        catch (Exception)
        {
            return [];
        }
    }

    /// <param name="path">Of the job file, of which <paramref name="bytes"/> is what it would hold.</param>
    /// <param name="laid">Given the planks as soon as there are any.</param>
    public static ShownJob Of(
        string path,
        byte[] bytes,
        JobFiles files,
        ShownJob? before,
        CancellationToken stop,
        Action<BottomPlan> laid
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
                files
            );
        }
        catch (Exception e) when (!stop.IsCancellationRequested)
        {
            // As on the command line: the page lives on, with the picture that it had.
            return Fault(path, e);
        }
    }

    /// <param name="path">Of the job file.</param>
    public static ShownJob Fault(string path, Exception e) =>
        new(
            null,
            [
                new(
                    Severity.Error,
                    Path.GetFileName(path),
                    $"a fault of the program, not of the job: {e.Message} Please report it with the job's two files"
                ),
            ]
        );
}
