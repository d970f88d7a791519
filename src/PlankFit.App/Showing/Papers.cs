using PlankFit.App.Laying;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Showing;

/// <summary>Every file that `lay` writes, of a plan in hand.</summary>
public static class Papers
{
    /// <returns>The files' names within the folder.</returns>
    /// <exception cref="Draughting.Files.OutputException">A file cannot be written.</exception>
    /// <exception cref="OperationCanceledException">Stopped before all were written.</exception>
    public static IReadOnlyList<string> Write(
        BottomPlan plan,
        string folder,
        IProgress<PlanProgress> progress,
        CancellationToken stop
    )
    {
        var timings = new Timings();
        BottomPlan inBoards = Planner.InBoards(plan, null, progress, timings, stop);
        stop.ThrowIfCancellationRequested();
        return WrittenFiles.Write(folder, "lay", LayFiles.Of(inBoards), progress, timings, stop);
    }
}
