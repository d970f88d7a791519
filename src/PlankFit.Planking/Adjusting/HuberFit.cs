using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Adjusting;

/// <summary>
/// Unknowns by readings of which none is put aside: one that is further off than so many of its own standard deviations counts for less, the less the further
/// (Huber 1964, Robust estimation of a location parameter, from memory). It is held beside what is adjusted without the slips, to show what hangs on putting them aside.
/// </summary>
public static class HuberFit
{
    /// <summary>Standard deviations of a reading, from where on it counts for less.</summary>
    public const double Bend = 1.5;

    private const int MostRounds = 200;

    /// <summary>Of a reading's standard deviation: where no reading's misfit moves by more, it is done.</summary>
    private const double Done = 1e-7;

    /// <param name="readings">Whose errors do not hang together.</param>
    public static Estimate Of(Estimate before, Observations readings)
    {
        Vector<double> sigmas = readings.Errors.Diagonal().PointwiseSqrt(),
            off = Vector<double>.Build.Dense(readings.Count);
        Estimate now = before;
        for (int round = 0; round < MostRounds; round++)
        {
            now = Adjustment
                .Of(
                    before,
                    readings with
                    {
                        Errors = Matrix<double>.Build.DenseOfDiagonalVector(
                            sigmas.PointwisePower(2).PointwiseMultiply(off.Map(Wider))
                        ),
                    }
                )
                .After;
            Vector<double> next = (readings.Read - readings.Expected(now.Values)).PointwiseDivide(
                sigmas
            );
            double moved = (next - off).AbsoluteMaximum();
            off = next;
            if (moved < Done)
            {
                break;
            }
        }

        return now;
    }

    /// <summary>By how much the variance of a reading is taken to be larger, which is off by so many of its standard deviations.</summary>
    private static double Wider(double off) => Math.Max(1, Math.Abs(off) / Bend);
}
