using System.Collections.Immutable;
using Google.OrTools.Sat;
using PlankFit.Planking.Joints;

namespace PlankFit.Tests.Planking.Joints;

/// <summary>
/// The fewest joints of a row by a general solver (CP-SAT): a plank is a path of pieces from its one end over places to the other, and two joints that a rule
/// forbids to stand together are never both taken. The rules are written out once more here, apart from the planner's.
/// </summary>
internal static class SolverJoints
{
    /// <summary>The fewest joints; null where there is no way at all.</summary>
    public static int? Fewest(
        ImmutableArray<PlankRoom> planks,
        JointStock stock,
        ImmutableArray<JointRule> rules
    ) => Solved(planks, stock, rules, null);

    /// <summary>Whether there is a way with no more than so many joints.</summary>
    public static bool CanHave(
        ImmutableArray<PlankRoom> planks,
        JointStock stock,
        ImmutableArray<JointRule> rules,
        int joints
    ) => Solved(planks, stock, rules, joints) is not null;

    private static int? Solved(
        ImmutableArray<PlankRoom> planks,
        JointStock stock,
        ImmutableArray<JointRule> rules,
        int? most
    )
    {
        var model = new CpModel();
        BoolVar[][] taken =
        [
            .. planks.Select(p => p.Places.Select(_ => model.NewBoolVar("")).ToArray()),
        ];
        for (int i = 0; i < planks.Length; i++)
        {
            if (planks[i].IsDivided && !Path(model, planks[i], taken[i], stock))
            {
                return null;
            }

            for (int j = i + 1; j < planks.Length; j++)
            {
                for (int p = 0; p < taken[i].Length; p++)
                {
                    for (int q = 0; q < taken[j].Length; q++)
                    {
                        if (Forbidden(rules, planks[i].Places[p], planks[j].Places[q], j - i))
                        {
                            model.AddBoolOr([taken[i][p].Not(), taken[j][q].Not()]);
                        }
                    }
                }
            }
        }

        var all = LinearExpr.Sum(taken.SelectMany(t => t));
        if (most is { } few)
        {
            model.Add(all <= few);
        }
        else
        {
            model.Minimize(all);
        }

        var solver = new CpSolver { StringParameters = "num_workers:1,linearization_level:2" };
        CpSolverStatus status = solver.Solve(model);
        Assert.True(
            status
                is CpSolverStatus.Optimal
                    or CpSolverStatus.Feasible
                    or CpSolverStatus.Infeasible,
            $"{status}"
        );
        return status == CpSolverStatus.Infeasible
            ? null
            : taken.SelectMany(t => t).Count(t => solver.BooleanValue(t));
    }

    /// <summary>Whether joints on two planks so many apart break a rule.</summary>
    public static bool Forbidden(
        ImmutableArray<JointRule> rules,
        JointPlace a,
        JointPlace b,
        int apart
    ) =>
        rules.Any(r =>
            r.What switch
            {
                JointRuleKind.NextPlank => apart == 1
                    && Math.Abs(a.AlongMm - b.AlongMm) < r.DistanceMm - 1e-6,
                JointRuleKind.OneBetween => apart == 2
                    && Math.Abs(a.AlongMm - b.AlongMm) < r.DistanceMm - 1e-6,
                JointRuleKind.SameBacking => apart - 1 < r.Count
                    && (
                        a.Named && b.Named
                            ? a.Backing == b.Backing
                            : r.DistanceMm is { } near && Math.Abs(a.XMm - b.XMm) < near - 1e-6
                    ),
                _ => false,
            }
        );

    /// <summary>One piece leaves the inboard end, one comes to the outboard end, and at a place that is taken one ends and one begins.</summary>
    private static bool Path(CpModel model, PlankRoom plank, BoolVar[] taken, JointStock stock)
    {
        int n = taken.Length;
        var into = new List<BoolVar>[n + 1];
        var from = new List<BoolVar>[n + 1];
        for (int k = 0; k <= n; k++)
        {
            (into[k], from[k]) = ([], []);
        }

        // Node 0 of `from` is the inboard end, node n of `into` the outboard one.
        for (int a = -1; a < n; a++)
        {
            for (int b = a + 1; b <= n; b++)
            {
                double length =
                    (b == n ? plank.ToMm : plank.Places[b].FarMm)
                    - (a < 0 ? plank.FromMm : plank.Places[a].NearMm);
                if (
                    length > stock.LongestMm + 1e-6
                    || length < stock.ShortestMm - 1e-6
                    || (a < 0 && b == n)
                )
                {
                    continue;
                }

                BoolVar piece = model.NewBoolVar("");
                from[a + 1].Add(piece);
                into[b].Add(piece);
            }
        }

        if (from[0].Count == 0 || into[n].Count == 0)
        {
            return false;
        }

        model.AddExactlyOne(from[0]);
        model.AddExactlyOne(into[n]);
        for (int k = 0; k < n; k++)
        {
            model.Add(LinearExpr.Sum(into[k]) == taken[k]);
            model.Add(LinearExpr.Sum(from[k + 1]) == taken[k]);
        }

        return true;
    }
}
