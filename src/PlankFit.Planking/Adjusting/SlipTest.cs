using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Adjusting;

/// <summary>One reading held against all others and what was known before (Baarda 1968, A testing procedure for use in geodetic networks, from memory).</summary>
/// <param name="W">Its own misfit in standard deviations.</param>
/// <param name="Redundancy">0 to 1: how far the others would give it away; 0 where nothing else speaks of it.</param>
/// <param name="Slip">By which it is out, if it alone is.</param>
/// <param name="SlipSigma">One standard deviation of that.</param>
/// <param name="LeastFound">The least slip in it that is found four times in five.</param>
public sealed record SlipRow(
    double W,
    double Redundancy,
    double Slip,
    double SlipSigma,
    double LeastFound
);

/// <summary>Which reading is a slip, if one is.</summary>
public static class SlipTest
{
    /// <summary>One good reading in a thousand stands out by more: 3.29 standard deviations, both ways.</summary>
    public const double Limit = 3.29;

    /// <summary>A slip of this many standard deviations is past the limit four times in five.</summary>
    public static readonly double Found = Limit + Normal.InvCDF(0, 1, 0.8);

    public static ImmutableArray<SlipRow> Rows(Adjustment of, Matrix<double> errors)
    {
        Vector<double> pull = of.Weights * of.Innovations;
        return
        [
            .. Enumerable
                .Range(0, pull.Count)
                .Select(i =>
                {
                    double weight = of.Weights[i, i],
                        sigma = 1 / Math.Sqrt(weight);
                    return new SlipRow(
                        pull[i] * sigma,
                        errors[i, i] * weight,
                        pull[i] / weight,
                        sigma,
                        Found * sigma
                    );
                }),
        ];
    }

    /// <summary>The one that stands out most, past the limit; null where none does.</summary>
    public static int? Worst(ImmutableArray<SlipRow> rows) =>
        Enumerable
            .Range(0, rows.Length)
            .Where(i => Math.Abs(rows[i].W) > Limit)
            .OrderByDescending(i => Math.Abs(rows[i].W))
            .Cast<int?>()
            .FirstOrDefault();

    /// <summary>
    /// A misfit held against what all readings together leave of scatter, for use where their errors are not known but by themselves, with the most that one good
    /// reading in a thousand comes to (Pope 1976, The statistics of residuals and the detection of outliers, from memory).
    /// </summary>
    /// <param name="misfit">d' C⁻¹ d of all.</param>
    /// <param name="degrees">Readings more than are needed.</param>
    public static (double Tau, double Limit) Pope(double w, double misfit, int degrees)
    {
        double t = StudentT.InvCDF(0, 1, degrees - 1, 0.9995);
        return (
            w / Math.Sqrt(misfit / degrees),
            t * Math.Sqrt(degrees) / Math.Sqrt(degrees - 1 + (t * t))
        );
    }
}
