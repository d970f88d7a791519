using System.Collections.Immutable;
using System.Text;
using PlankFit.Export.Files;
using PlankFit.Planking;
using PlankFit.Reading;

namespace PlankFit.App;

/// <summary>Marks planks as sawn: their shapes are written down beside the job, and no later lay-out moves them.</summary>
public static class CutRun
{
    private const string UsualName = "cut-planks.json";

    public static RunReport Run(
        RunRequest request,
        IReadOnlyList<string> planks,
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

        (ImmutableArray<Plank> named, ImmutableArray<Finding> unknown) = Named(plan, planks);
        if (!unknown.IsEmpty)
        {
            return RunReport.Faults(unknown);
        }

        StandingSpec standing = plan.Job.Standing;
        string name = standing.CutFile ?? UsualName,
            path = Path.Combine(Path.GetDirectoryName(request.JobPath) ?? "", name);
        if (standing.CutFile is null && File.Exists(path))
        {
            return RunReport.Faults([
                new(
                    Severity.Error,
                    name,
                    $"is there already, and the job does not name it: write cut = \"{name}\" under [standing], or move it away"
                ),
            ]);
        }

        var sawn = standing.Cut.ToDictionary(c => c.Id);
        string[] again = [.. named.Where(p => sawn.ContainsKey(p.Id)).Select(p => p.Id)];
        foreach (Plank plank in named.Where(p => !sawn.ContainsKey(p.Id)))
        {
            sawn[plank.Id] = CutPlank.Of(plank, plan.Job.Revision);
        }

        AtomicFile.Write(
            path,
            s => s.Write(Encoding.UTF8.GetBytes(CutPlanksFile.Write(sawn.Values))),
            stop
        );
        var lines = ImmutableArray.CreateBuilder<string>();
        lines.Add(
            $"{sawn.Count} plank(s) are written down as sawn in {path}; no lay-out moves or renumbers them from now on."
        );
        if (again.Length > 0)
        {
            lines.Add(
                $"Sawn before, and left as they were written down then: {string.Join(", ", again)}."
            );
        }

        if (standing.CutFile is null)
        {
            lines.Add(
                $"The job does not read it yet: write these two lines into {Path.GetFileName(request.JobPath)}:\n  [standing]\n  cut = \"{name}\""
            );
        }

        return new(ExitCode.Done, [], lines.ToImmutable());
    }

    /// <summary>
    /// Takes planks off the record: spoiled, or to be sawn anew. The bottom is not planned for it, so that a record that stands in the way of a plan can be mended.
    /// </summary>
    public static RunReport Forget(
        RunRequest request,
        IReadOnlyList<string> planks,
        CancellationToken stop
    )
    {
        ReadResult read = JobReader.Read(request.JobPath);
        if (read.Job is not { } job)
        {
            return RunReport.Faults(read.Findings);
        }

        if (job.Standing.CutFile is not { } name)
        {
            return RunReport.Faults([
                new(
                    Severity.Error,
                    Path.GetFileName(request.JobPath),
                    "the job names no record of sawn planks: there is nothing to forget"
                ),
            ]);
        }

        ImmutableArray<CutPlank> had = job.Standing.Cut;
        var off = new HashSet<string>();
        var unknown = ImmutableArray.CreateBuilder<Finding>();
        foreach (string word in planks)
        {
            (ImmutableArray<string> ids, string? fault) = PlankIds.Expand(word);
            if (fault is not null || ids.Any(id => had.All(c => c.Id != id)))
            {
                unknown.Add(
                    new(
                        Severity.Error,
                        word,
                        $"is not in {name}, which has {(had.IsEmpty ? "none" : string.Join(", ", had.Select(c => c.Id)))}"
                    )
                );
            }

            off.UnionWith(ids);
        }

        if (unknown.Count > 0)
        {
            return RunReport.Faults(unknown.ToImmutable());
        }

        string path = Path.Combine(Path.GetDirectoryName(request.JobPath) ?? "", name);
        CutPlank[] left = [.. had.Where(c => !off.Contains(c.Id))];
        AtomicFile.Write(
            path,
            s => s.Write(Encoding.UTF8.GetBytes(CutPlanksFile.Write(left))),
            stop
        );
        return new(
            ExitCode.Done,
            [],
            [
                $"{had.Length - left.Length} plank(s) are taken off {path}, {left.Length} left on it; the next lay-out is free to move them.",
            ]
        );
    }

    /// <summary>Single planks, and runs of one layer and side: S1-08..S1-12.</summary>
    private static (ImmutableArray<Plank>, ImmutableArray<Finding>) Named(
        BottomPlan plan,
        IReadOnlyList<string> words
    )
    {
        var named = ImmutableArray.CreateBuilder<Plank>();
        var unknown = ImmutableArray.CreateBuilder<Finding>();
        foreach (string word in words)
        {
            string[] ends = word.Split("..", StringSplitOptions.TrimEntries);
            Plank? first = plan.Find(ends[0]),
                last = plan.Find(ends[^1]);
            if (
                ends.Length > 2
                || first is null
                || last is null
                || first.Layer != last.Layer
                || first.Side != last.Side
                || first.Number > last.Number
            )
            {
                unknown.Add(
                    new(
                        Severity.Error,
                        word,
                        "names no plank of this job: give numbers such as S1-08, or a run of one layer and side from forward, S1-08..S1-12"
                    )
                );
                continue;
            }

            named.AddRange(
                plan.PlankLayers.First(l => l.Number == first.Layer)
                    .On(first.Side)
                    .Where(p => p.Number >= first.Number && p.Number <= last.Number)
            );
        }

        return ([.. named.DistinctBy(p => p.Id)], unknown.ToImmutable());
    }
}
