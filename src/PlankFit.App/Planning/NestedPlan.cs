using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using PlankFit.App.Running;
using PlankFit.Export.Stock;
using PlankFit.Nesting;
using PlankFit.Nesting.Effort;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Planning;

/// <summary>A planned bottom with its planks laid out in the stock.</summary>
internal static class NestedPlan
{
    /// <summary>Told where the search was ended from outside: its best plan is kept, and the files are written all the same.</summary>
    public const string Stopped = "Stopped: this is the best plan of cutting found so far.";

    /// <param name="before">The plan of cutting of another job: taken over where this one's would be made from the same.</param>
    /// <param name="stop">Ends the search with the best plan so far; nothing is thrown for it.</param>
    public static BottomPlan Of(
        BottomPlan plan,
        NestSpec spec,
        NestPlan? before,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    )
    {
        using var enough = CancellationTokenSource.CreateLinkedTokenSource(stop);
        Patience Begun()
        {
            if (spec.Rounds is not null)
            {
                return new(enough.Token);
            }

            enough.CancelAfter(TimeSpan.FromSeconds(spec.Seconds));
            return new TimedPatience(TimeSpan.FromSeconds(spec.Seconds), enough.Token);
        }

        progress.Report(new("laying pieces out in the stock", 0));
        NestPlan nest = timings.Time(
            "lay pieces out in the stock",
            () =>
                NestPlanner.Again(
                    before,
                    spec,
                    plan.PiecesToSaw(),
                    plan.Job.Units,
                    new Shown(progress, spec),
                    Begun
                )
        );
        ImmutableArray<Finding> findings = WithSawn(nest.Findings, plan);
        ImmutableArray<UnplacedPiece> unplaced = WithRefused(nest.Unplaced, plan);
        return plan with
        {
            Nest =
                SameValue.Are(nest.Findings, findings) && SameValue.Are(nest.Unplaced, unplaced)
                    ? nest
                    : nest with
                    {
                        Findings = findings,
                        Unplaced = unplaced,
                    },
            Findings = Finding.CausesRaised(plan.Findings.AddRange(findings)),
        };
    }

    /// <summary>What has no place in the boards, and last what is not to be sawn since its bend is refused.</summary>
    /// <param name="unplaced">Of another plan perhaps, in which others were refused.</param>
    private static ImmutableArray<UnplacedPiece> WithRefused(
        ImmutableArray<UnplacedPiece> unplaced,
        BottomPlan plan
    ) =>
        [
            .. unplaced.Where(u => u.Why != RefusedBend.ToDo),
            .. plan.PiecesRefused().Select(p => new UnplacedPiece(p, RefusedBend.ToDo)),
        ];

    /// <summary>What is found of a plan of cutting, and last what it leaves out since it is sawn.</summary>
    /// <param name="findings">Those of another plan perhaps, which left out others.</param>
    private static ImmutableArray<Finding> WithSawn(
        ImmutableArray<Finding> findings,
        BottomPlan plan
    )
    {
        const string About = "the plan of cutting";
        int sawn = plan
            .AllPlankLayers.SelectMany(l => l.Layer.Starboard.Concat(l.Layer.Port))
            .Count(p => p.IsFixed);
        ImmutableArray<Finding> others = findings.RemoveAll(f => f.Where == About);
        return sawn == 0
            ? others
            : others.Add(
                new(
                    Severity.Note,
                    About,
                    $"{sawn} plank{(sawn == 1 ? " is" : "s are")} sawn or fitted already and left out of it; {(plan.Job.AsBuilt.SawnInto.IsEmpty ? "take the boards that they came from off the stock" : "the boards that they came from are off the rack as far as the record has them; boards are named anew in every plan of cutting, so put away cut sheets of an earlier one")}"
                )
            );
    }

    /// <summary>The search as a line at the terminal.</summary>
    private sealed class Shown(IProgress<PlanProgress> progress, NestSpec spec)
        : IProgress<NestProgress>
    {
        private readonly long began = Stopwatch.GetTimestamp();

        public void Report(NestProgress value)
        {
            double part = spec.Rounds is { } rounds
                ? (double)value.Round / Math.Max(1, rounds)
                : Stopwatch.GetElapsedTime(began).TotalSeconds / Math.Max(1e-3, spec.Seconds);
            string gap =
                value.LowerBound > 0 && value.Unplaced == 0
                    ? string.Create(
                        CultureInfo.InvariantCulture,
                        $", no more than {NestWords.AtMost(value.GapPercent)} above the least possible"
                    )
                    : "";
            string left = value.Unplaced > 0 ? $", {value.Unplaced} without a place" : "";
            progress.Report(
                new(
                    $"{value.Material}: {value.Boards} boards{gap}{left} (Ctrl-C keeps the best so far)",
                    Math.Clamp(part, 0, 1)
                )
            );
        }
    }
}
