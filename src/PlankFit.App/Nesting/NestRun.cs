using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PlankFit.Export;
using PlankFit.Export.Files;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>The planks laid out in the boards on hand, and what the saw needs for it.</summary>
public static class NestRun
{
    /// <param name="stop">Once the search is on it ends it, and the best plan found is written.</param>
    public static RunReport Run(
        RunRequest request,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    )
    {
        PlannedJob planned = PlannedJob.From(request.JobPath, progress, timings, stop);
        if (planned.Plan is not { } plan)
        {
            return planned.Faults!;
        }

        if (plan.Job.Nest is not { } spec)
        {
            return RunReport.Faults([
                new(
                    Severity.Error,
                    Path.GetFileName(request.JobPath),
                    "the job names no stock: add [nest] with stock = \"stock.csv\", the boards on hand, or buy = \"yard.csv\", what may be bought"
                ),
            ]);
        }

        plan = NestedPlan.Of(plan, spec, progress, timings, stop);
        bool cutShort = stop.IsCancellationRequested;
        progress.Report(new("writing cut sheets and lists", 1));
        using OutputFolder output = OutputFolder.Begin(
            request.Folder,
            "nest",
            CancellationToken.None
        );
        timings.Time(
            "write cut sheets and lists",
            () =>
            {
                foreach (FileWork work in NestFiles.Of(plan))
                {
                    work.Write(output);
                }
            }
        );
        IReadOnlyList<string> written = output.Commit();
        string? json = null;
        if (request.Json)
        {
            using var stream = new MemoryStream();
            NestJson.Write(plan, stream);
            json = Encoding.UTF8.GetString(stream.ToArray());
        }

        return new(
            ExitCode.Done,
            plan.Nest!.Findings,
            [
                .. cutShort ? ["Stopped: this is the best plan found so far."] : (string[])[],
                .. Lines(plan),
                $"{written.Count} files are in {request.Folder}: start with cut-sheets.pdf.",
            ],
            json
        );
    }

    /// <summary>What the plan takes, in a line a material.</summary>
    public static ImmutableArray<string> Lines(BottomPlan plan)
    {
        if (plan.Nest is not { } nest)
        {
            return [];
        }

        return
        [
            .. nest.Materials.Select(m =>
            {
                SawnBoard[] boards =
                [
                    .. nest.Boards.Where(b => b.Pieces.Any(p => m.PieceIds.Contains(p.Piece.Id))),
                ];
                string square = NestWords.SquareCuts(nest.Spec, m, plan.Job.Units) is { } s
                    ? "; " + s
                    : "";
                return $"{m.Name}: {boards.Sum(b => b.Pieces.Length)} pieces in {boards.Length} boards, {NestWords.Value(nest.Spec, m.Value, plan.Job.Units)}, {NestWords.Gap(nest.Spec, m, plan.Job.Units)}{square}.";
            }),
        ];
    }
}
