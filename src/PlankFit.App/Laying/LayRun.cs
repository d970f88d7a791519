using System.Collections.Concurrent;
using System.Collections.Immutable;
using PlankFit.Export;
using PlankFit.Export.Files;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>The main job: a job file in, everything that a builder needs to saw the planks out.</summary>
public static class LayRun
{
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

        if (plan.Job.Nest is { } spec)
        {
            plan = NestedPlan.Of(plan, spec, progress, timings, stop);
            stop.ThrowIfCancellationRequested();
        }

        progress.Report(new("writing lists, drawings and patterns", 0));
        IReadOnlyList<string> written = timings.Time(
            "write all files",
            () => Write(request.Folder, plan, progress, timings, stop)
        );
        string? json = request.Json ? Text(stream => PlankingJson.Write(plan, stream)) : null;
        return new(
            ExitCode.Done,
            plan.Findings,
            [
                .. PlanSummary.Of(plan).Lines(plan.Job.Units),
                .. NestRun.Lines(plan),
                $"{written.Count} files are in {request.Folder}: start with check-before-sawing.pdf.",
            ],
            json
        );
    }

    private static IReadOnlyList<string> Write(
        string folder,
        BottomPlan plan,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    )
    {
        using OutputFolder output = OutputFolder.Begin(folder, "lay", stop);
        ImmutableArray<FileWork> work = LayFiles.Of(plan);
        int done = 0;
        try
        {
            // One piece at a time to each core, the heavy ones first, so that none is left to run alone at the end.
            Parallel.ForEach(
                Partitioner.Create(work, EnumerablePartitionerOptions.NoBuffering),
                new ParallelOptions
                {
                    CancellationToken = stop,
                    MaxDegreeOfParallelism = Environment.ProcessorCount,
                },
                w =>
                {
                    timings.Time("  " + w.What, () => w.Write(output));
                    progress.Report(
                        new(
                            "writing " + w.What,
                            (double)Interlocked.Increment(ref done) / work.Length
                        )
                    );
                }
            );
        }
        catch (AggregateException e)
        {
            // One file that cannot be written ends the run; the first reason is the one to tell.
            throw e.InnerExceptions.OfType<OutputException>().FirstOrDefault()
                ?? e.InnerExceptions[0];
        }

        return output.Commit();
    }

    private static string Text(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return System.Text.Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }
}

/// <summary>A piece of work that writes one file or a few.</summary>
internal sealed record FileWork(string What, Action<OutputFolder> Write);
