using System.Collections.Immutable;
using Google.OrTools.Sat;
using PlankFit.Planking.Glue.Sessions;

namespace PlankFit.Nesting.Sessions;

/// <summary>A session planned by search.</summary>
/// <param name="Table">Null where no plan keeps all rules, or none was found.</param>
/// <param name="Proven">The table ends as early as any can; or there is none at all.</param>
/// <param name="BoundMinutes">No plan ends before this.</param>
public sealed record SessionAnswer(Timetable? Table, bool Proven, double BoundMinutes);

/// <summary>Why a session cannot be: rules that cannot be kept together although any of them might be dropped, and by how much each would have to give way.</summary>
/// <param name="Minutes">Null where it is not this rule alone, however much it gives way.</param>
public sealed record RuleInTheWay(SessionRule Rule, double? Minutes);

/// <summary>When each task of a session begins so that the last ends as early as may be, by CP-SAT.</summary>
public static class SessionSearch
{
    /// <summary>Enough for sessions of a shift, in the solver's own measure of effort.</summary>
    public const double UsualEffort = 2;

    /// <param name="first">A plan that keeps the rules, to start from; null for none.</param>
    /// <param name="horizon">No plan is sought that ends later, minutes.</param>
    public static SessionAnswer Of(
        SessionProblem problem,
        double horizon,
        Timetable? first = null,
        double effort = UsualEffort
    )
    {
        var model = new SessionModel(problem, horizon);
        model.KeepAll();
        if (first is not null)
        {
            model.Hint(first);
        }

        model.Model.Minimize(model.End);
        CpSolver solver = model.Solver(effort);
        CpSolverStatus status = solver.Solve(model.Model);
        return status switch
        {
            CpSolverStatus.Optimal or CpSolverStatus.Feasible => new(
                model.Table(solver),
                status == CpSolverStatus.Optimal,
                Reached(solver)
            ),
            // Its effort was spent before it had any plan.
            CpSolverStatus.Unknown => new(null, false, Reached(solver)),
            _ => new(null, status == CpSolverStatus.Infeasible, 0),
        };
    }

    /// <summary>Minutes before which no plan ends, by the solver's own bound; 0 where it came to none.</summary>
    /// <param name="first">A plan that keeps the rules, to start from.</param>
    public static double Bound(
        SessionProblem problem,
        double horizon,
        Timetable first,
        double effort = UsualEffort
    )
    {
        var model = new SessionModel(problem, horizon, null, true);
        model.KeepAll();
        model.Hint(first);
        model.Model.Minimize(model.End);
        CpSolver solver = model.Solver(effort);
        return
            solver.Solve(model.Model)
                is CpSolverStatus.Optimal
                    or CpSolverStatus.Feasible
                    or CpSolverStatus.Unknown
            ? Reached(solver)
            : 0;
    }

    /// <summary>The solver's own bound, minutes.</summary>
    private static double Reached(CpSolver solver) =>
        SessionModel.Minutes((long)Math.Ceiling(Math.Max(0, solver.BestObjectiveBound) - 1e-6));

    /// <summary>A least set of rules that no plan keeps; empty where some plan keeps all.</summary>
    public static ImmutableArray<RuleInTheWay> InTheWay(
        SessionProblem problem,
        double horizon,
        double effort = UsualEffort
    )
    {
        if (!Refused(problem.Rules))
        {
            return [];
        }

        ImmutableArray<SessionRule> left = problem.Rules;
        foreach (SessionRule rule in problem.Rules)
        {
            ImmutableArray<SessionRule> without = left.Remove(rule);
            left = Refused(without) ? without : left;
        }

        return [.. left.Select(rule => new RuleInTheWay(rule, Way(rule)))];

        bool Refused(ImmutableArray<SessionRule> rules)
        {
            var model = new SessionModel(problem, horizon);
            model.Keep(rules);
            return model.Solver(effort).Solve(model.Model) == CpSolverStatus.Infeasible;
        }

        double? Way(SessionRule rule)
        {
            var model = new SessionModel(problem, horizon, rule);
            model.KeepAll();
            model.Model.Minimize(model.Slack);
            CpSolver solver = model.Solver(effort);
            return solver.Solve(model.Model) == CpSolverStatus.Optimal
                ? SessionModel.Minutes(solver.Value(model.Slack))
                : null;
        }
    }
}
