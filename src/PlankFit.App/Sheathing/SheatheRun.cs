using PlankFit.App.Laying;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Export.Sheathing;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;

namespace PlankFit.App.Sheathing;

/// <summary>The cloth alone: how it lies, how it is cut, what to draw first.</summary>
public static class SheatheRun
{
    public static RunReport Run(
        RunRequest request,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    )
    {
        var planned = PlannedJob.From(request.JobPath, progress, timings, stop);
        if (planned.Plan is not { } plan)
        {
            return planned.Faults!;
        }

        if (plan.Sheathing is not { } sheathing)
        {
            return RunReport.Faults([
                new(
                    Severity.Error,
                    Path.GetFileName(request.JobPath),
                    "the job does not say how any cloth lies: add a [[cloth]] with name, kind, mass and roll, and a [[sheathing]] with layer and cloth for each [[layer]] of kind \"cloth\"; `plankfit help sheathing` shows both"
                ),
            ]);
        }

        FeatureFiles files = SheathingFiles.Of(plan);
        IReadOnlyList<string> written = timings.Time(
            "write the cloth's files",
            () =>
                WrittenFiles.Write(
                    request.Folder,
                    "sheathe",
                    [
                        .. files.Files,
                        .. files.Sheets.Select(s => MadeFiles.SingleSheets(plan.Job, s)),
                        .. MadeFiles.Csvs(files.Tables),
                    ],
                    progress,
                    timings,
                    stop
                )
        );
        return new(
            ExitCode.Done,
            sheathing.Findings,
            [
                .. sheathing.Layers.SelectMany(l =>
                    l.Sides.Select(s =>
                        $"{SheathingWords.Of(l)}: {SheathingWords.Verdict(l, s, plan.Job.Units)}"
                    )
                ),
                .. sheathing.Rolls.Select(r => Rolls(r, plan.Job.Units)),
                written.Count == 0
                    ? "No cloth could be laid: see what was found."
                    : $"{written.Count} files are in {request.Folder}: start with sheets/cloth.pdf.",
            ],
            request.Json
                ? WrittenFiles.Text(s => SheathingJson.Write(plan.Job, sheathing, s))
                : null
        )
        {
            First = NestTold.First(plan),
        };
    }

    private static string Rolls(RollPlan plan, LengthUnit unit) =>
        $"{plan.Cloth.Name}: {LengthText.ForPaper(plan.LengthMm, unit, RoundTo.Up)} off {PlanWords.Count(plan.Rolls.Length, "roll")} (no plan can take less than {LengthText.ForPaper(plan.AreaBoundMm, unit)}).";
}
