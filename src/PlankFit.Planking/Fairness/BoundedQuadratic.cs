using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Fairness;

/// <summary>Least of d'Hd/2 + g'd with a bound on each unknown, H positive definite: a few dozen unknowns at most.</summary>
internal static class BoundedQuadratic
{
    private enum Hold
    {
        Free,
        Low,
        High,
    }

    /// <param name="from">The least of each unknown, not above 0: the search starts from 0.</param>
    /// <param name="to">The most of each, not below 0.</param>
    /// <exception cref="ArithmeticException">H is not positive definite to working precision.</exception>
    public static double[] Least(Matrix<double> h, Vector<double> g, double[] from, double[] to)
    {
        int n = g.Count;
        double[] d = new double[n];
        var hold = new Hold[n];
        for (int i = 0; i < n; i++)
        {
            hold[i] =
                from[i] == 0 ? Hold.Low
                : to[i] == 0 ? Hold.High
                : Hold.Free;
        }

        // Each round fixes or frees one bound, and no set of bounds comes twice, since the aim falls; far fewer rounds are ever needed.
        double scale = g.AbsoluteMaximum() + double.Epsilon;
        for (int round = 0; round < 50 * (n + 1); round++)
        {
            int[] free = [.. Enumerable.Range(0, n).Where(i => hold[i] == Hold.Free)];
            int blocked = free.Length > 0 ? Step(h, g, free, d, from, to) : -1;
            if (blocked >= 0)
            {
                hold[blocked] = d[blocked] == from[blocked] ? Hold.Low : Hold.High;
                continue;
            }

            int release = ToRelease(h, g, d, hold, from, to, 1e-12 * scale);
            if (release < 0)
            {
                return d;
            }

            hold[release] = Hold.Free;
        }

        throw new ArithmeticException("the bounded least-energy search did not end");
    }

    /// <summary>Goes to the least over the free unknowns, or as far as the first bound in the way; that unknown, or -1.</summary>
    private static int Step(
        Matrix<double> h,
        Vector<double> g,
        int[] free,
        double[] d,
        double[] from,
        double[] to
    )
    {
        Vector<double> gradient = (h * Vector<double>.Build.Dense(d)) + g;
        Matrix<double> part = Matrix<double>.Build.Dense(
            free.Length,
            free.Length,
            (i, j) => h[free[i], free[j]]
        );
        Vector<double> move = part.Cholesky()
            .Solve(Vector<double>.Build.Dense(free.Length, i => -gradient[free[i]]));
        double part1 = 1;
        int blocked = -1;
        for (int i = 0; i < free.Length; i++)
        {
            int k = free[i];
            double room = move[i] > 0 ? to[k] - d[k] : from[k] - d[k];
            if (move[i] != 0 && room / move[i] < part1)
            {
                (part1, blocked) = (Math.Max(0, room / move[i]), k);
            }
        }

        for (int i = 0; i < free.Length; i++)
        {
            int k = free[i];
            d[k] =
                k == blocked
                    ? (move[i] > 0 ? to[k] : from[k])
                    : Math.Clamp(d[k] + (part1 * move[i]), from[k], to[k]);
        }

        return blocked;
    }

    /// <summary>The held unknown that most wants to leave its bound inwards, or -1.</summary>
    private static int ToRelease(
        Matrix<double> h,
        Vector<double> g,
        double[] d,
        Hold[] hold,
        double[] from,
        double[] to,
        double tolerance
    )
    {
        Vector<double> gradient = (h * Vector<double>.Build.Dense(d)) + g;
        int best = -1;
        double most = tolerance;
        for (int i = 0; i < d.Length; i++)
        {
            double wish = hold[i] switch
            {
                Hold.Low when to[i] > from[i] => -gradient[i],
                Hold.High when to[i] > from[i] => gradient[i],
                _ => 0,
            };
            if (wish > most)
            {
                (best, most) = (i, wish);
            }
        }

        return best;
    }
}
