using System.Collections.Immutable;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Mix;

/// <summary>A plan as the search sees it: boards ripped, and a row or none in every clear stretch of every lane.</summary>
internal sealed record CuttingPlan(ImmutableArray<CuttingPlanBoard> Boards)
{
    public static readonly CuttingPlan None = new([]);

    public double Cost(NestProblem problem) => Boards.Sum(b => problem.Boards[b.Board].Cost);

    public IEnumerable<Row> Rows => Boards.SelectMany(b => b.Rows).Select(r => r.Row);

    /// <summary>By item, how many lie in it.</summary>
    public int[] Counts(NestProblem problem)
    {
        int[] counts = new int[problem.Items.Length];
        foreach (int i in Rows.SelectMany(r => r.Parts))
        {
            counts[i]++;
        }

        return counts;
    }

    /// <summary>What it costs, with the price of leaving things out.</summary>
    public double Value(NestProblem problem, Share share, double[] missing)
    {
        int[] counts = Counts(problem);
        double left = 0;
        for (int i = 0; i < counts.Length; i++)
        {
            left += Math.Max(0, share.Items[i] - counts[i]) * missing[i];
        }

        return Cost(problem) + left;
    }
}

/// <param name="Board">Which of the problem's boards.</param>
internal sealed record CuttingPlanBoard(int Board, Ripping Ripping, ImmutableArray<LaneRow> Rows)
{
    /// <summary>The part of the board that lies under things.</summary>
    public double Filled(NestProblem problem) =>
        Rows.Sum(r => r.Row.Items.Sum(i => problem.Items[i].AreaMm2))
        / problem.Boards[Board].AreaMm2;
}

internal sealed record LaneRow(int Lane, int Stretch, Row Row);
