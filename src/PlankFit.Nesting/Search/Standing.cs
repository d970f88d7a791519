using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Search;

/// <summary>How a plan stands to what is proved, in the measure that speaks of it.</summary>
/// <param name="Value">Of the plan.</param>
/// <param name="Bound">No plan in rows has less; nought while pieces have no place.</param>
/// <param name="IsComplete">Every piece has its place.</param>
internal readonly record struct Standing(
    NestMeasure Measure,
    double Value,
    double Bound,
    bool IsComplete
)
{
    /// <summary>What sums of doubles lose, as a part of the dearest board.</summary>
    private const double Summing = 1e-6;

    public static Standing Of(
        NestProblem problem,
        BoardCosts costs,
        CuttingPlan cutting,
        Bounds bounds,
        bool isComplete
    )
    {
        double asked = cutting.Boards.Sum(b => problem.Boards[b.Board].Asked);
        NestMeasure measure = costs.Measure(asked);
        if (asked > 0)
        {
            return new(
                measure,
                asked,
                isComplete
                    ? DualBound.Raised(problem.Boards.Select(b => b.Asked), bounds.Asked)
                    : 0,
                isComplete
            );
        }

        // Nothing that the objective counts is spent: costs are areas then, on a scale of their own, and the bound is on plans of such boards only.
        double area = cutting.Boards.Sum(b => problem.Boards[b.Board].AreaMm2);
        return new(
            measure,
            area,
            isComplete
                ? DualBound.Raised(
                    problem.Boards.Where(b => b.Asked == 0).Select(b => b.AreaMm2),
                    bounds.Cost / costs.TiePerMm2
                )
                : 0,
            isComplete
        );
    }

    /// <summary>Beside another plan of the same pieces and stock; one that buys nothing is better than one that buys.</summary>
    public bool IsBetterThan(Standing other) =>
        IsComplete == other.IsComplete
            ? IsComplete
                && (Measure < other.Measure || (Measure == other.Measure && Value < other.Value))
            : IsComplete;

    /// <summary>With what is proved for another plan of the same pieces and stock.</summary>
    public Standing Raised(Standing other) =>
        Measure == other.Measure ? this with { Bound = Math.Max(Bound, other.Bound) } : this;

    /// <summary>No plan has less.</summary>
    public bool IsProved(NestProblem problem) =>
        Bound > 0
        && Value
            <= Bound
                + (
                    Summing
                    * (
                        Measure == NestMeasure.Area
                            ? problem.Boards.Max(b => b.AreaMm2)
                            : problem.DearestBoard
                    )
                );
}
