using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using PlankFit.App.Running;
using PlankFit.Export.Stock;
using PlankFit.Nesting;
using PlankFit.Nesting.Effort;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>A planned bottom with its planks laid out in the stock.</summary>
internal static class NestedPlan
{
    /// <summary>Told where the search was ended from outside: its best plan is kept, and the files are written all the same.</summary>
    public const string Stopped = "Stopped: this is the best plan of cutting found so far.";

    /// <param name="stop">Ends the search with the best plan so far; nothing is thrown for it.</param>
    public static BottomPlan Of(
        BottomPlan plan,
        NestSpec spec,
        IProgress<PlanProgress> progress,
        Timings timings,
        CancellationToken stop
    )
    {
        using var enough = CancellationTokenSource.CreateLinkedTokenSource(stop);
        if (spec.Rounds is null)
        {
            enough.CancelAfter(TimeSpan.FromSeconds(spec.Seconds));
        }

        Patience patience = spec.Rounds is null
            ? new TimedPatience(TimeSpan.FromSeconds(spec.Seconds), enough.Token)
            : new Patience(enough.Token);
        ImmutableArray<SawPiece> pieces = plan.PiecesToSaw();
        progress.Report(new("laying pieces out in the stock", 0));
        NestPlan nest = timings.Time(
            "lay pieces out in the stock",
            () =>
                NestPlanner.Until(spec, pieces, plan.Job.Units, new Shown(progress, spec), patience)
        );
        nest = nest with
        {
            Unplaced =
            [
                .. nest.Unplaced,
                .. plan.PiecesRefused().Select(p => new UnplacedPiece(p, RefusedBend.ToDo)),
            ],
        };
        ImmutableArray<Finding> findings = nest.Findings;
        int sawn = plan
            .AllPlankLayers.SelectMany(l => l.Layer.Starboard.Concat(l.Layer.Port))
            .Count(p => p.IsFixed);
        if (sawn > 0)
        {
            findings = findings.Add(
                new(
                    Severity.Note,
                    "the plan of cutting",
                    $"{sawn} plank{(sawn == 1 ? " is" : "s are")} sawn or fitted already and left out of it; {(plan.Job.AsBuilt.SawnInto.IsEmpty ? "take the boards that they came from off the stock" : "the boards that they came from are off the rack as far as the record has them")}"
                )
            );
        }

        return plan with
        {
            Nest = nest with { Findings = findings },
            Findings = plan.Findings.AddRange(findings),
        };
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
