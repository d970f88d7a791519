using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Adjusting;

/// <summary>A reading that is worth while: which of those that can be taken, and what is left of the sum of variances once it and those before it are.</summary>
public readonly record struct ChosenReading(int Reading, double SumAfter);

/// <summary>
/// The few readings that leave least of a sum of variances (A-optimal: Pukelsheim, Optimal Design of Experiments, ch. 6, from memory): greedily one after
/// the other, then each exchanged for a better one as long as there is one (Fedorov 1972, from memory). What a reading brings does not depend on what it will say.
/// </summary>
public sealed record ReadingChoice(
    ImmutableArray<ChosenReading> Chosen,
    double SumBefore,
    int Rounds
)
{
    private const int MostRounds = 20;

    /// <summary>Of the sum: a gain of less is none.</summary>
    private const double Least = 1e-10;

    /// <param name="covariance">S, of the unknowns.</param>
    /// <param name="wanted">J: what shall be known well, a row each, in the units in which its variances are summed.</param>
    /// <param name="readings">H: readings that can be taken, a row each.</param>
    /// <param name="variances">Of what each is out by itself.</param>
    /// <param name="count">How many are taken at most; fewer where no more bring anything.</param>
    public static ReadingChoice Of(
        Matrix<double> covariance,
        Matrix<double> wanted,
        Matrix<double> readings,
        Vector<double> variances,
        int count
    )
    {
        Matrix<double> spread = covariance * readings.Transpose();
        var start = new Left(
            wanted * spread,
            readings * spread,
            variances,
            Estimate.Carried(wanted, covariance).Trace()
        );
        var chosen = new List<int>();
        Left left = start;
        while (chosen.Count < count && left.Best() is { } best)
        {
            chosen.Add(best);
            left = left.Taken(best);
        }

        int rounds = 0;
        for (bool better = chosen.Count > 1; better && rounds < MostRounds; rounds++)
        {
            better = false;
            for (int i = 0; i < chosen.Count; i++)
            {
                Left others = start.Taken([.. chosen.Where((_, k) => k != i)]);
                if (
                    others.Best() is { } best
                    && best != chosen[i]
                    && others.Gain(best) - others.Gain(chosen[i]) > Least * start.Sum
                )
                {
                    chosen[i] = best;
                    better = true;
                }
            }
        }

        return new(InOrder(start, chosen), start.Sum, rounds);
    }

    /// <summary>The one that brings most alone first, then the one that brings most beside it, and so on.</summary>
    private static ImmutableArray<ChosenReading> InOrder(Left start, List<int> chosen)
    {
        ImmutableArray<ChosenReading>.Builder order = ImmutableArray.CreateBuilder<ChosenReading>();
        var rest = new List<int>(chosen);
        for (Left left = start; rest.Count > 0; )
        {
            int next = rest.MaxBy(left.Gain);
            left = left.Taken(next);
            rest.Remove(next);
            order.Add(new(next, left.Sum));
        }

        return order.ToImmutable();
    }

    /// <param name="Cross">J S H': a row a wanted value, a column a reading.</param>
    /// <param name="Mutual">H S H'.</param>
    private sealed record Left(
        Matrix<double> Cross,
        Matrix<double> Mutual,
        Vector<double> Variances,
        double Sum
    )
    {
        public double Gain(int reading)
        {
            double q = Mutual[reading, reading] + Variances[reading];
            if (q <= 0 || Mutual[reading, reading] <= 1e-12)
            {
                return 0;
            }

            double sum = 0;
            for (int i = 0; i < Cross.RowCount; i++)
            {
                sum += Cross[i, reading] * Cross[i, reading];
            }

            return sum / q;
        }

        public int? Best()
        {
            (int at, double most) = (-1, Least * Sum);
            for (int i = 0; i < Variances.Count; i++)
            {
                double gain = Gain(i);
                if (gain > most)
                {
                    (at, most) = (i, gain);
                }
            }

            return at < 0 ? null : at;
        }

        public Left Taken(int reading)
        {
            double q = Mutual[reading, reading] + Variances[reading];
            Vector<double> row = Mutual.Row(reading) / q,
                variances = Variances.Clone();
            // Not to be taken again: reading twice is for finding slips, and is asked of every one.
            variances[reading] = double.PositiveInfinity;
            return new(
                Cross - Cross.Column(reading).OuterProduct(row),
                Mutual - Mutual.Column(reading).OuterProduct(row),
                variances,
                Sum - Gain(reading)
            );
        }

        public Left Taken(ImmutableArray<int> readings) =>
            readings.Aggregate(this, (left, r) => left.Taken(r));
    }
}
