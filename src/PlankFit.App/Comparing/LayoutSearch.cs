using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Diagnostics;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.App.Showing;
using PlankFit.Export.Comparing;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Comparing;

/// <summary>The laying of all of them, on all cores, each lay-out taking over from the job as it stands what is the same.</summary>
internal sealed class LayoutSearch(
    Job job,
    CompareMeasures measures,
    CompareAsked wanted,
    int asked,
    (IProgress<PlanProgress> Progress, Action<Comparison>? Found) told,
    JobFiles? files
)
{
    private static readonly IProgress<PlanProgress> Unseen = new Silent();

    /// <summary>The lesser part of the golden section: steps of it round a ring come everywhere soon.</summary>
    private const double Golden = 0.3819660112501051;

    private readonly Lock gate = new();
    private readonly long began = Stopwatch.GetTimestamp();
    private readonly SortedDictionary<int, Layout> laid = [];

    public Comparison Now
    {
        get
        {
            lock (gate)
            {
                return new(job, [.. laid.Values], asked, measures.By) { Axes = measures.Axes };
            }
        }
    }

    public void Lay(ImmutableArray<Variant> all, CancellationToken stop)
    {
        ShownJob? first = null;
        told.Progress.Report(
            new($"the job as it stands, the first of {asked} lay-outs (Ctrl-C stops)", 0)
        );
        Add(
            all[0],
            null,
            stop,
            // What is amiss with its table stands on every sheet.
            shown => (first, job) = (shown, shown.Plan!.Job)
        );
        _ = Parallel.ForEach(
            Partitioner.Create(
                Spread(all.Length - 1).Select(i => all[i + 1]),
                EnumerablePartitionerOptions.NoBuffering
            ),
            new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, wanted.AtOnce) },
            variant =>
                Add(variant, variant.JobPath == all[0].JobPath ? first : null, stop, _ => { })
        );
    }

    /// <summary>All places once, those after each other far apart, so that whoever stops has seen something of every range.</summary>
    private static IEnumerable<int> Spread(int count)
    {
        int step = Math.Max(1, (int)Math.Round(Golden * count));
        while (Divisor(step, count) > 1)
        {
            step++;
        }

        for (int i = 0, at = 0; i < count; i++, at = (at + step) % count)
        {
            yield return at;
        }
    }

    private static int Divisor(int a, int b) => b == 0 ? a : Divisor(b, a % b);

    private void Add(
        Variant variant,
        ShownJob? before,
        CancellationToken stop,
        Action<ShownJob> shown
    )
    {
        if (stop.IsCancellationRequested || Laid(variant, before, stop, shown) is not { } layout)
        {
            return;
        }

        lock (gate)
        {
            laid.Add(layout.Number, layout);
            told.Progress.Report(
                new(
                    $"{laid.Count} of {asked} lay-outs, {TimeLeft.Words(Stopwatch.GetElapsedTime(began), laid.Count, asked, wanted.AtOnce)}the last {layout.Name} (Ctrl-C keeps what is found)",
                    (double)laid.Count / asked
                )
            );
            told.Found?.Invoke(Now);
        }
    }

    /// <summary>Null where it was stopped before its end.</summary>
    private Layout? Laid(
        Variant variant,
        ShownJob? before,
        CancellationToken stop,
        Action<ShownJob> shown
    )
    {
        try
        {
            var made = ShownJob.Of(
                variant.JobPath,
                variant.Text,
                before,
                Unseen,
                stop,
                files: files
            );
            if (made.Plan is not { } plan)
            {
                return NotLaid(variant, made.Findings);
            }

            shown(made);
            if (InBoards(plan, stop) is not { } nested)
            {
                return null;
            }

            return new(
                variant.Number,
                variant.Name,
                variant.Changed,
                LaidFigures.Of(nested, made.Findings),
                []
            )
            {
                Picture = SmallPicture.Of(nested),
            };
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            return null;
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            // One lay-out that the program fails at must not cost the others.
            return NotLaid(
                variant,
                [
                    new(
                        Severity.Error,
                        Path.GetFileName(variant.JobPath),
                        $"a fault of the program, not of the job: {e.Message} Please report it"
                    ),
                ]
            );
        }
    }

    private BottomPlan? InBoards(BottomPlan plan, CancellationToken stop)
    {
        if (wanted.BoardRounds is not { } rounds || plan.Job.Nest is not { } nest)
        {
            return plan;
        }

        BottomPlan bounded = plan with
        {
            Job = plan.Job with { Nest = nest with { Rounds = rounds } },
        };
        BottomPlan nested = Planner.InBoards(bounded, null, Unseen, new Timings(), stop);
        // A search that was cut short is no measure beside others.
        return stop.IsCancellationRequested ? null : nested;
    }

    private static Layout NotLaid(Variant variant, ImmutableArray<Finding> faults) =>
        new(
            variant.Number,
            variant.Name,
            variant.Changed,
            null,
            [
                .. faults
                    .Where(f => f.Severity == Severity.Error)
                    .DefaultIfEmpty(new(Severity.Error, variant.Name, "no reason was found"))
                    .Select(f => $"{f.Where}: {f.Message}"),
            ]
        );

    private sealed class Silent : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) { }
    }
}
