using System.Collections.Immutable;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Draughting.Files;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Jobs;

namespace PlankFit.App.Marking;

/// <summary>Marks planks as sawn: their shapes are written down beside the job, and no later lay-out moves them.</summary>
public static class SawnRun
{
    /// <param name="mostWaits">How often it looks, every tenth of a second, whether another that has the record is done with it.</param>
    /// <param name="isThat">Whether a plank, as it is laid now, is the one that was sawn; null where nobody can tell.</param>
    /// <exception cref="OutputException">The record is another's, was changed meanwhile, or cannot be written: it is as it was.</exception>
    public static RunReport Run(
        RunRequest request,
        IReadOnlyList<string> planks,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop,
        int mostWaits = RecordLock.MostWaits,
        Func<Plank, bool>? isThat = null
    )
    {
        ReadResult read = JobReader.Read(request.JobPath);
        if (read.Job is not { } job)
        {
            return RunReport.Faults(read.Findings);
        }

        // Held from here on: the planks are worked out from the record as it is now, and nobody else changes it until they are on it.
        string? named = job.AsBuilt.SawnFile;
        using var record = SawnRecord.Hold(
            Beside(request, named ?? SawnPlanksFile.UsualName),
            progress,
            stop,
            mostWaits
        );
        var planned = PlannedJob.From(request.JobPath, progress, timings, stop);
        if (planned.Plan is not { } plan)
        {
            return planned.Faults!;
        }

        if (plan.Job.AsBuilt.SawnFile != named)
        {
            return RunReport.Faults([
                new(
                    Severity.Error,
                    Path.GetFileName(request.JobPath),
                    "it was changed while it was being read: run again"
                ),
            ]);
        }

        (ImmutableArray<Plank> wanted, ImmutableArray<Finding> unknown) = Named(plan, planks);
        if (wanted.FirstOrDefault(p => isThat?.Invoke(p) == false) is { } other)
        {
            return RunReport.Faults([
                new(
                    Severity.Error,
                    Path.GetFileName(request.JobPath),
                    $"{other.Id} is laid otherwise by the files as they are now than it was shown: look at it once more, then mark it"
                ),
            ]);
        }

        return unknown.IsEmpty
            ? Marked(record, plan, wanted, named is null, request.Folder, stop)
            : RunReport.Faults(unknown);
    }

    private static RunReport Marked(
        SawnRecord record,
        BottomPlan plan,
        ImmutableArray<Plank> wanted,
        bool first,
        string folder,
        CancellationToken stop
    )
    {
        var sawn = plan.OnRecord.ToDictionary(c => c.Id);
        PlankId[] again = [.. wanted.Where(p => sawn.ContainsKey(p.Id)).Select(p => p.Id)];
        foreach (Plank plank in wanted.Where(p => !sawn.ContainsKey(p.Id)))
        {
            sawn[plank.Id] = SawnPlank.Of(plank, plan.LayerOf(plank.Id).Planks, plan.Job.Revision);
        }

        stop.ThrowIfCancellationRequested();
        ImmutableArray<BoardSawnInto> had = plan.Job.AsBuilt.SawnInto;
        ImmutableArray<BoardSawnInto>? planned = PlannedBoards.In(folder, plan.Job.Name);
        BoardSawnInto[] into =
        [
            .. PlannedBoards.Of(
                planned ?? [],
                wanted.Select(p => p.Id).Except(again).ToHashSet(),
                had
            ),
        ];
        record.Replace(sawn.Values, [.. had, .. into]);
        ImmutableArray<string>.Builder lines = ImmutableArray.CreateBuilder<string>();
        lines.Add(
            $"{Planks(sawn.Count)} written down as sawn in {record.Path}; no lay-out moves or renumbers {(sawn.Count == 1 ? "it" : "them")} from now on."
        );
        if (again.Length > 0)
        {
            lines.Add(
                $"On the record before, and left as they were written down then: {string.Join(", ", again)}."
            );
        }

        if (plan.Job.Nest is not null)
        {
            lines.Add(Rack(planned is not null, into, sawn.Keys, folder));
        }

        if (first)
        {
            lines.Add(
                "Every command finds it there as long as it lies beside the job; it need not be named."
            );
        }

        return new(ExitCode.Done, [], lines.ToImmutable());
    }

    /// <summary>What became of the rack: never passed over, since the next plan is made of what it has.</summary>
    private static string Rack(
        bool known,
        BoardSawnInto[] into,
        IEnumerable<PlankId> sawn,
        string folder
    )
    {
        if (!known)
        {
            return $"{folder} has no plan of cutting of this job, so the boards that they came from stay in the rack: take them off the stock, or mark the planks with --out where {PlannedBoards.File} is.";
        }

        PlankId[] left = [.. into.SelectMany(b => b.Planks).Except(sawn)];
        if (into.Length == 0)
        {
            return "No further board leaves the rack by the plan of cutting.";
        }

        int offcuts = into.Sum(b => b.Offcuts.Length);
        string[] off =
        [
            .. new[]
            {
                ("off the rack by the plan of cutting", false),
                ("bought for it, and so not on the rack", true),
            }
                .Select(w => (What: w.Item1, Boards: into.Where(b => b.ToBuy == w.Item2)))
                .Where(w => w.Boards.Any())
                .Select(w => $"{w.What}: {string.Join(", ", w.Boards.Select(b => b.Board))}"),
            $"{PlanWords.Count(offcuts, "offcut")} of {(into.Length == 1 ? "it" : "them")} come{(offcuts == 1 ? "s" : "")} in",
        ];
        string said = string.Join("; ", off);
        return $"{char.ToUpperInvariant(said[0])}{said[1..]}."
            + (
                left.Length == 0
                    ? ""
                    : $" In these boards were also {string.Join(", ", left)}: mark them too once they are sawn, or the next plan has other boards for them."
            );
    }

    /// <summary>
    /// Takes planks off the record: spoiled, or to be sawn anew. The bottom is not planned for it, so that a record that stands in the way of a plan can be mended.
    /// </summary>
    public static RunReport Forget(
        RunRequest request,
        IReadOnlyList<string> planks,
        IProgress<PlanProgress> progress,
        CancellationToken stop
    )
    {
        ReadResult read = JobReader.Read(request.JobPath);
        if (read.Job is null)
        {
            return RunReport.Faults(read.Findings);
        }

        if (read.Job.AsBuilt.SawnFile is not { } name)
        {
            return RunReport.Faults([
                new(
                    Severity.Error,
                    Path.GetFileName(request.JobPath),
                    "the job names no record of sawn planks: there is nothing to forget"
                ),
            ]);
        }

        using var record = SawnRecord.Hold(Beside(request, name), progress, stop);

        // Once more, now that nobody else can change it.
        read = JobReader.Read(request.JobPath);
        if (read.Job is not { } job)
        {
            return RunReport.Faults(read.Findings);
        }

        ImmutableArray<SawnPlank> had = job.AsBuilt.Sawn;
        var off = new HashSet<PlankId>();
        ImmutableArray<Finding>.Builder unknown = ImmutableArray.CreateBuilder<Finding>();
        foreach (string word in planks)
        {
            (ImmutableArray<PlankId> ids, string? fault) = PlankIds.Expand(word);
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

        SawnPlank[] left = [.. had.Where(c => !off.Contains(c.Id))];
        record.Replace(left, job.AsBuilt.SawnInto);
        return new(
            ExitCode.Done,
            [],
            [
                $"{Planks(had.Length - left.Length)} taken off {record.Path}, {left.Length} left on it; the next lay-out is free to move them. The boards that they came from stay off the rack.",
            ]
        );
    }

    /// <summary>1 plank is; 3 planks are.</summary>
    private static string Planks(int number) =>
        $"{PlanWords.Count(number, "plank")} {(number == 1 ? "is" : "are")}";

    private static string Beside(RunRequest request, string name) =>
        Path.Combine(Path.GetDirectoryName(request.JobPath) ?? "", name);

    /// <summary>Single planks, and runs of one layer and side: S1-08..S1-12.</summary>
    private static (ImmutableArray<Plank>, ImmutableArray<Finding>) Named(
        BottomPlan plan,
        IReadOnlyList<string> words
    )
    {
        ImmutableArray<Plank>.Builder named = ImmutableArray.CreateBuilder<Plank>();
        ImmutableArray<Finding>.Builder unknown = ImmutableArray.CreateBuilder<Finding>();
        foreach (string word in words)
        {
            string[] ends = word.Split("..", StringSplitOptions.TrimEntries);
            Plank? first = plan.Find(ends[0]),
                last = plan.Find(ends[^1]);
            if (
                ends.Length > 2
                || first is null
                || last is null
                || (first.Id with { Number = last.Number }) != last.Id
                || first.Number > last.Number
            )
            {
                unknown.Add(
                    new(
                        Severity.Error,
                        word,
                        PlankIds.OfPiece(ends)
                            ?? "names no plank of this job: give numbers such as S1-08, or a run of one layer and side from forward, S1-08..S1-12"
                    )
                );
                continue;
            }

            named.AddRange(
                plan.LayerOf(first.Id)
                    .On(first.Side)
                    .Where(p => p.Number >= first.Number && p.Number <= last.Number)
            );
        }

        return ([.. named.DistinctBy(p => p.Id)], unknown.ToImmutable());
    }
}
