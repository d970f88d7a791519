using PlankFit.App.Laying;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Export.Keel;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Keels;

/// <summary>The keel alone: what it should be, what it is, and what that does to the planks.</summary>
public static class KeelRun
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

        if (plan.Keel is not { } keel)
        {
            return RunReport.Faults([
                new(
                    Severity.Error,
                    Path.GetFileName(request.JobPath),
                    "the job names no keel layer: add a [[keel-layer]] with name, meets (the layer of planks whose ends meet it), thickness and half-width"
                ),
            ]);
        }

        FeatureFiles files = KeelFiles.Of(plan);
        IReadOnlyList<string> written = timings.Time(
            "write the keel's files",
            () =>
                WrittenFiles.Write(
                    request.Folder,
                    "keel",
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
            keel.Findings,
            [
                .. keel.Layers.Select(l => Line(plan.Job, l)),
                $"{written.Count} files are in {request.Folder}: start with sheets/keel.pdf.",
            ],
            request.Json ? WrittenFiles.Text(s => KeelJson.Write(plan.Job, keel, s)) : null
        )
        {
            First = NestTold.First(plan),
        };
    }

    private static string Line(Job job, KeelLayerPlan layer)
    {
        if (layer.Stations.IsEmpty)
        {
            return $"{layer.Spec.Name}: the planks of {layer.Spec.Meets} nowhere meet it.";
        }

        string Mm(double mm) => LengthText.ForPaper(mm, job.Units);
        int off = KeelWords.OffAt(job.Keel, layer);
        return $"{layer.Spec.Name}, met by {layer.Spec.Meets}: half-width wanted {Mm(layer.Stations.Min(s => s.WantedHalfWidthMm))} to {Mm(layer.Stations.Max(s => s.WantedHalfWidthMm))}; {(off == 0 ? "fair at every station" : $"out at {PlanWords.Count(off, "place")}")}.";
    }
}
