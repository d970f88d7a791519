using System.Collections.Immutable;

namespace PlankFit.Nesting;

/// <summary>The lower bound that is printed.</summary>
internal static class BoundSearch
{
    /// <summary>Of prices at which no row or ripping is worth more than it costs, where that was proved; of any prices otherwise.</summary>
    public static double Of(NestProblem problem, Share share, MasterPrices prices, bool proved)
    {
        var values = new RowValues?[problem.Kinds];
        try
        {
            double AtMost(int kind, double length)
            {
                int j = problem.Bucket(kind, length);
                return proved && j >= 0
                    ? prices.Strips[kind][j] + (1e-5 * problem.DearestBoard)
                    : (values[kind] ??= new RowValues(problem, share, kind, prices.Items)).AtMost(
                        length
                    );
            }

            return Raised(problem, DualBound.Of(problem, share, prices.Items, AtMost));
        }
        finally
        {
            foreach (RowValues? v in values)
            {
                v?.Dispose();
            }
        }
    }

    /// <summary>The next sum that costs of boards can make, where they have a common measure.</summary>
    public static double Raised(NestProblem problem, double bound)
    {
        // Areas are taken in whole mm²; where they are not whole numbers nothing is raised.
        long measure = 0;
        foreach (BoardType board in problem.Boards)
        {
            long whole = (long)Math.Round(board.Cost);
            if (whole == 0 || Math.Abs(whole - board.Cost) > 1e-6)
            {
                return bound;
            }

            measure = (long)System.Numerics.BigInteger.GreatestCommonDivisor(measure, whole);
        }

        return measure == 0
            ? bound
            : measure * Math.Ceiling((bound / measure) * (1 - Slack) - Slack);
    }

    /// <summary>What doubles and the solver's own tolerances may have added to a bound, as a part of it.</summary>
    private const double Slack = 1e-6;
}
