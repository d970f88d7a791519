using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Adjusting;

/// <summary>What is known of a row of unknowns: the likeliest values, and the covariance of what they are out by, in the units of the values squared.</summary>
public sealed record Estimate(Vector<double> Values, Matrix<double> Covariance)
{
    /// <summary>Nothing is out but by chance: values of nought, and their covariance.</summary>
    public static Estimate Around(Matrix<double> covariance) =>
        new(Vector<double>.Build.Dense(covariance.RowCount), covariance);

    /// <summary>One standard deviation of each value.</summary>
    public Vector<double> Sigmas => Covariance.Diagonal().Map(v => Math.Sqrt(Math.Max(0, v)));

    /// <summary>
    /// What is known of other values that hang together with these by their slopes: covariance J S J' (JCGM 100:2008, 5.2).
    /// </summary>
    public static Matrix<double> Carried(Matrix<double> slopes, Matrix<double> covariance) =>
        slopes * covariance * slopes.Transpose();

    /// <summary>Correlation of two of them, from -1 to 1.</summary>
    public static double Correlation(Matrix<double> covariance, int a, int b) =>
        covariance[a, b] / Math.Sqrt(covariance[a, a] * covariance[b, b]);

    /// <summary>The same, with every standard deviation as much greater as the root of the factor.</summary>
    public Estimate Widened(double factor) => this with { Covariance = factor * Covariance };
}
