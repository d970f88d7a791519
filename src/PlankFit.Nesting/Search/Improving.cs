using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Search;

/// <summary>
/// Takes a few boards out of a plan and plans what lay in them anew, with the boards that are not used yet, again and again (large neighbourhood search; Shaw 1998,
/// from memory). The boards that waste most are taken oftenest.
/// </summary>
internal static class Improving
{
    private const int FewestBoards = 3;
    private const int MostBoards = 5;

    /// <summary>So many things are planned anew at once.</summary>
    private const int MostThings = 24;
    private const int ColumnRounds = 14;
    private const double Slack = 0.3;
    private const double OnHand = 0.25;
    private const double Effort = 0.06;

    /// <summary>One attempt; the same plan where nothing better was found.</summary>
    public static CuttingPlan Once(
        NestLot lot,
        MasterPrices prices,
        CuttingPlan plan,
        Random chance,
        Patience patience
    )
    {
        (NestProblem problem, Share whole, double[] missing, _) = lot;
        int[] chosen = Chosen(problem, plan, chance);
        CuttingPlanBoard[] taken = [.. chosen.Select(i => plan.Boards[i])];
        Share share = Freed(problem, whole, plan, taken);
        double now = new CuttingPlan([.. taken]).Value(problem, share, missing);
        ColumnResult columns = ColumnSearch.Run(
            problem,
            share,
            missing,
            new(
                taken.SelectMany(b => b.Rows).Select(r => r.Row),
                prices,
                share,
                ColumnRounds,
                now,
                Slack
            ),
            patience
        );
        double least = problem.CostsAreAsked
            ? DualBound.Raised(problem.Boards.Select(b => b.Asked), columns.Bound.Cost)
            : columns.Bound.Cost;
        if (least >= now * (1 - 1e-9))
        {
            return plan;
        }

        CuttingPlan? better = WholeMix.Of(
            lot with
            {
                Share = share,
            },
            columns.Mix,
            now,
            Effort,
            patience
        );
        if (better is null || better.Value(problem, share, missing) >= now * (1 - 1e-9))
        {
            return plan;
        }

        HashSet<int> out_ = chosen.ToHashSet();
        return new([.. plan.Boards.Where((_, i) => !out_.Contains(i)), .. better.Boards]);
    }

    /// <summary>What the boards taken out held and what no board holds, and all boards that the rest of the plan does not use.</summary>
    private static Share Freed(
        NestProblem problem,
        Share whole,
        CuttingPlan plan,
        CuttingPlanBoard[] taken
    )
    {
        int[] laid = plan.Counts(problem),
            inTaken = new CuttingPlan([.. taken]).Counts(problem);
        int[] boards = [.. whole.Boards];
        foreach (CuttingPlanBoard b in plan.Boards)
        {
            boards[b.Board]--;
        }

        foreach (CuttingPlanBoard b in taken)
        {
            boards[b.Board]++;
        }

        return new(
            [.. whole.Items.Select((n, i) => Math.Max(0, n - laid[i]) + inTaken[i])],
            [.. boards]
        );
    }

    private static int[] Chosen(NestProblem problem, CuttingPlan plan, Random chance)
    {
        int want = Math.Min(plan.Boards.Length, chance.Next(FewestBoards, MostBoards + 1));
        // What is to be bought counts for more than its like on hand, which may yet take what lies in it.
        double[] waste =
        [
            .. plan.Boards.Select(b =>
                problem.Boards[b.Board].AreaMm2
                * Math.Max(0.01, 1 - b.Filled(problem))
                * (problem.Boards[b.Board].Asked > 0 ? 1 : OnHand)
            ),
        ];
        var chosen = new List<int>();
        int things = 0;
        while (chosen.Count < want)
        {
            double at = chance.NextDouble() * waste.Sum();
            int i = 0;
            while (i + 1 < waste.Length && at >= waste[i])
            {
                at -= waste[i++];
            }

            if (waste[i] == 0)
            {
                break;
            }

            waste[i] = 0;
            things += plan.Boards[i].Rows.Sum(r => r.Row.Parts.Length);
            if (things > MostThings && chosen.Count > 0)
            {
                break;
            }

            chosen.Add(i);
        }

        return [.. chosen.Order()];
    }
}
