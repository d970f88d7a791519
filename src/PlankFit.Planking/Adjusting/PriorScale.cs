using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Adjusting;

/// <summary>By how much what was known before was too hopeful, by the readings themselves.</summary>
public static class PriorScale
{
    /// <summary>Standard deviations ten times as great: nothing is learnt from a table that is worse.</summary>
    private const double Most = 100;

    private const int Steps = 400;

    /// <summary>
    /// The factor f ≥ 1 on the covariance S of the unknowns, the readings' own R left as it is, for which the readings are likeliest: least of
    /// ln det C + d' C⁻¹ d, C = f H S H' + R. Within 1 % of it.
    /// </summary>
    /// <param name="carried">H S H'.</param>
    public static double Likeliest(
        Matrix<double> carried,
        Matrix<double> errors,
        Vector<double> innovations
    )
    {
        // In the coordinates in which both are diagonal it is a sum.
        Matrix<double> root = errors.Cholesky().Factor,
            inverse = root.Inverse(),
            inUnits = inverse * carried * inverse.Transpose();
        MathNet.Numerics.LinearAlgebra.Factorization.Evd<double> evd = (
            0.5 * (inUnits + inUnits.Transpose())
        ).Evd(Symmetricity.Symmetric);
        Vector<double> z = evd.EigenVectors.TransposeThisAndMultiply(inverse * innovations);
        double Cost(double f)
        {
            double sum = 0;
            for (int i = 0; i < z.Count; i++)
            {
                double c = 1 + (f * Math.Max(0, evd.EigenValues[i].Real));
                sum += Math.Log(c) + (z[i] * z[i] / c);
            }

            return sum;
        }

        return Enumerable
            .Range(0, Steps + 1)
            .Select(k => Math.Pow(Most, (double)k / Steps))
            .MinBy(Cost);
    }
}
