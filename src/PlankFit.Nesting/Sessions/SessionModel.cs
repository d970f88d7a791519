using System.Collections.Immutable;
using Google.OrTools.Sat;
using PlankFit.Planking.Glue.Sessions;

namespace PlankFit.Nesting.Sessions;

/// <summary>One session as a model of CP-SAT, in whole sixtieths of a minute: what takes time is rounded up, what may be waited for down; for a bound the other way.</summary>
internal sealed class SessionModel
{
    private const double Ticks = 60;
    private readonly SessionProblem problem;
    private readonly IntVar[] starts;
    private readonly long[] lasts;
    private readonly Func<double, long> takes;
    private readonly Func<double, long> waits;

    /// <param name="end">No later than this, minutes.</param>
    /// <param name="slacked">A rule that gives way by as much as <see cref="Slack"/>.</param>
    /// <param name="forBound">Rounded the other way: no plan is lost by it, and what it proves holds for all of them.</param>
    public SessionModel(
        SessionProblem problem,
        double end,
        SessionRule? slacked = null,
        bool forBound = false
    )
    {
        this.problem = problem;
        (takes, waits) = forBound ? ((Func<double, long>)Down, (Func<double, long>)Up) : (Up, Down);
        Horizon = Up(end);
        Slack = Model.NewIntVar(0, slacked is null ? 0 : Horizon, "");
        End = Model.NewIntVar(0, Horizon, "");
        lasts = [.. problem.Tasks.Select(t => takes(t.Minutes))];
        starts = [.. problem.Tasks.Select(_ => Model.NewIntVar(0, Horizon, ""))];
        CumulativeConstraint hands = Model.AddCumulative(problem.Hands);
        for (int i = 0; i < starts.Length; i++)
        {
            GangTask task = problem.Tasks[i];
            hands.AddDemand(Model.NewFixedSizeIntervalVar(starts[i], lasts[i], ""), task.Hands);
            Model.Add(starts[i] + lasts[i] <= End);
            foreach (TaskLink link in task.After)
            {
                Bound(new(i, link.Task, link.LeastMinutes, link.MostMinutes), null, false);
            }
        }

        foreach ((double from, double to) in problem.Breaks)
        {
            hands.AddDemand(
                Model.NewFixedSizeIntervalVar(Down(from), Up(to) - Down(from), ""),
                problem.Hands
            );
        }

        Kept = [.. problem.Rules.Select(_ => Model.NewBoolVar(""))];
        for (int r = 0; r < Kept.Length; r++)
        {
            foreach (SessionBound bound in problem.Rules[r].Bounds)
            {
                Bound(bound, Kept[r], ReferenceEquals(problem.Rules[r], slacked));
            }
        }

        // Neither can be beaten; said aloud it need not be found out.
        Model.Add(End >= Down(Chains.BoundMinutes(problem.Tasks, problem.Hands)));
    }

    public CpModel Model { get; } = new();

    public IntVar End { get; }

    public IntVar Slack { get; }

    /// <summary>For each rule whether it is kept.</summary>
    public ImmutableArray<BoolVar> Kept { get; }

    private long Horizon { get; }

    public void KeepAll() => Keep(problem.Rules);

    public void Keep(IEnumerable<SessionRule> rules)
    {
        foreach (SessionRule rule in rules)
        {
            Model.Add(Kept[problem.Rules.IndexOf(rule)] == 1);
        }
    }

    public void Hint(Timetable table)
    {
        for (int i = 0; i < starts.Length; i++)
        {
            Model.AddHint(starts[i], Up(table.Starts[i]));
        }
    }

    /// <summary>One worker and effort that is counted, not timed: the same answer on every machine.</summary>
    public CpSolver Solver(double effort) =>
        new()
        {
            StringParameters = FormattableString.Invariant(
                $"num_workers:1 random_seed:1 max_deterministic_time:{effort}"
            ),
        };

    public Timetable Table(CpSolver solver) =>
        new(
            [.. starts.Select(s => solver.Value(s) / Ticks)],
            starts.Select((s, i) => (solver.Value(s) + lasts[i]) / Ticks).DefaultIfEmpty(0).Max()
        );

    public static double Minutes(long ticks) => ticks / Ticks;

    private void Bound(SessionBound bound, BoolVar? kept, bool gives)
    {
        LinearExpr wait = bound.After is { } other
            ? starts[bound.Task] - (starts[other] + lasts[other])
            : starts[bound.Task];
        LinearExpr slack = gives ? Slack : LinearExpr.Constant(0);
        if (bound.Least is { } least)
        {
            Kept(Model.Add(wait + slack >= takes(least)));
        }

        if (bound.Most is { } most)
        {
            Kept(Model.Add(wait - slack <= waits(most)));
        }

        void Kept(Constraint constraint)
        {
            if (kept is not null)
            {
                constraint.OnlyEnforceIf(kept);
            }
        }
    }

    private static long Up(double minutes) => (long)Math.Ceiling((minutes * Ticks) - 1e-6);

    private static long Down(double minutes) => (long)Math.Floor((minutes * Ticks) + 1e-6);
}
