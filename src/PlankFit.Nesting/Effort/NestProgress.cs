using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Effort;

/// <summary>How far the search for a plan is: there is always a plan, and it only gets better.</summary>
/// <param name="Material">Which stock is being planned.</param>
/// <param name="Value">Of the best plan so far, as the objective measures it.</param>
/// <param name="LowerBound">What is proved so far.</param>
/// <param name="Boards">Cut into by the best plan so far.</param>
/// <param name="Unplaced">Pieces that it leaves out.</param>
public readonly record struct NestProgress(
    string Material,
    int Round,
    double Value,
    double LowerBound,
    int Boards,
    int Unplaced
)
{
    public double GapPercent => Gap.Percent(Value, LowerBound);
}
