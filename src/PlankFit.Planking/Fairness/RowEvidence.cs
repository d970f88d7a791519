using System.Collections.Immutable;

namespace PlankFit.Planking.Fairness;

/// <summary>What a row says of one of its cells.</summary>
/// <param name="LogOdds">ln of how much likelier the row is with an error of any size in this cell than with none.</param>
/// <param name="Residual">The likeliest error: the value less what the others foretell.</param>
/// <param name="Spread">Standard deviation of that.</param>
internal readonly record struct CellEvidence(double LogOdds, double Residual, double Spread);

/// <summary>
/// How likely a row is as it stands, and with errors in given cells. A fair line is taken as one drawn by chance from the smooth kinds, of an unknown scale, read
/// with errors of an unknown size; what is unknown is not fitted but summed over, each way of it weighed by how likely it makes the row. For each way, with
/// R = B'V⁻¹B (B takes off parabolas, V is the covariance of what is left) an error d at point k alters the logarithm of the likelihood by
/// d (R y)_k - d² R_kk / 2: the energy matrix again, softened by the reading. (Bayes factors: Kass and Raftery, JASA 90, 1995, from memory.)
/// </summary>
internal sealed class RowEvidence
{
    /// <summary>Sizes of reading errors tried, as parts of the one expected: the rule may be worse than its marks.</summary>
    public static readonly ImmutableArray<double> Readings = [1, 1.5, 2.25];

    /// <summary>Scales of a line's third derivative tried, as parts of the row's own range: from all but a parabola to a hook.</summary>
    private const double LeastScale = 0.25;
    private const double ScaleStep = 3;
    private const int Scales = 6;

    /// <summary>A row that hardly varies may still bend by some readings.</summary>
    private const double LeastRangeInReadings = 6;

    /// <summary>Sizes of a slip thought likely beforehand, standard deviations in mm, all alike.</summary>
    private static readonly ImmutableArray<double> SlipMm = [4, 16, 64, 256];

    /// <summary>How rare a slip is thought when the size of the reading errors is weighed: one row in so many has one.</summary>
    private const double RowsToASlip = 50;

    private sealed record Way(
        int Reading,
        double LogWeight,
        double[] Pull,
        double[] Stiffness,
        double[] WithNext,
        double[] AnySize
    );

    private readonly ImmutableArray<Way> ways;
    private readonly int points;
    private readonly double logNone;
    private readonly ImmutableArray<CellEvidence> cells;

    private RowEvidence(ImmutableArray<Way> ways, int points)
    {
        (this.ways, this.points) = (ways, points);
        logNone = LogSum.Of([.. ways.Select(w => w.LogWeight)]);
        cells = [.. Enumerable.Range(0, points).Select(Weighed)];
    }

    /// <param name="kinds">On the row's x.</param>
    /// <param name="y">The values, mm.</param>
    /// <param name="readingMm">Standard deviation expected of reading and writing one value.</param>
    public static RowEvidence Of(
        ImmutableArray<SmoothKind> kinds,
        ReadOnlySpan<double> y,
        double readingMm
    )
    {
        int n = y.Length;
        double first = y[0],
            least = first,
            most = first;
        double[] off = new double[n];
        for (int i = 0; i < n; i++)
        {
            off[i] = y[i] - first;
            (least, most) = (Math.Min(least, y[i]), Math.Max(most, y[i]));
        }

        double range = Math.Max(most - least, LeastRangeInReadings * readingMm);
        ImmutableArray<Way>.Builder ways = ImmutableArray.CreateBuilder<Way>();
        foreach (SmoothKind kind in kinds)
        {
            double[] parts = kind.Of(off);
            for (int s = 0; s < Scales; s++)
            {
                double scale = range * LeastScale * Math.Pow(ScaleStep, s);
                for (int r = 0; r < Readings.Length; r++)
                {
                    ways.Add(Of(kind, parts, scale, readingMm * Readings[r], r, n));
                }
            }
        }

        return new(ways.ToImmutable(), n);
    }

    private static Way Of(
        SmoothKind kind,
        double[] parts,
        double scale,
        double readingMm,
        int reading,
        int n
    )
    {
        double log = 0;
        double[] pull = new double[n],
            stiffness = new double[n],
            next = new double[n - 1];
        for (int p = 0; p < parts.Length; p++)
        {
            double v = (scale * scale * kind.Variances[p]) + (readingMm * readingMm);
            double z = parts[p];
            log -= 0.5 * (Math.Log(v) + (z * z / v));
            ImmutableArray<double> of = kind.Parts[p];
            for (int k = 0; k < n; k++)
            {
                double b = of[k] / v;
                pull[k] += b * z;
                stiffness[k] += b * of[k];
                if (k + 1 < n)
                {
                    next[k] += b * of[k + 1];
                }
            }
        }

        double[] any = [.. pull.Select((c, k) => AnySize(c, stiffness[k]))];
        return new(reading, log, pull, stiffness, next, any);
    }

    /// <summary>ln of how likely the row is for each size of reading errors, with or without a slip.</summary>
    public double[] LogByReading() =>
        [
            .. Readings.Select(
                (_, r) => LogSum.Of([.. ways.Where(w => w.Reading == r).Select(WithOrWithoutSlip)])
            ),
        ];

    private double WithOrWithoutSlip(Way way) =>
        way.LogWeight + LogSum.Of([0, LogSum.Of(way.AnySize) - Math.Log(RowsToASlip * points)]);

    /// <summary>The same row where something else is known of the size of reading errors: ln of how likely each is.</summary>
    public RowEvidence Knowing(ImmutableArray<double> logReadings) =>
        new(
            [.. ways.Select(w => w with { LogWeight = w.LogWeight + logReadings[w.Reading] })],
            points
        );

    /// <summary>An error of any size in one cell.</summary>
    public CellEvidence At(int k) => cells[k];

    private CellEvidence Weighed(int k)
    {
        double[] logs = [.. ways.Select(w => w.LogWeight + w.AnySize[k])];
        double all = LogSum.Of(logs);
        double mean = 0,
            square = 0;
        for (int i = 0; i < logs.Length; i++)
        {
            double part = Math.Exp(logs[i] - all),
                error = ways[i].Pull[k] / ways[i].Stiffness[k];
            mean += part * error;
            square += part * ((error * error) + (1 / ways[i].Stiffness[k]));
        }

        return new(all - logNone, mean, Math.Sqrt(Math.Max(0, square - (mean * mean))));
    }

    /// <summary>ln of how much likelier the row is if the value at k is too great by just so much.</summary>
    public double Exactly(int k, double errorMm) =>
        LogSum.Of([
            .. ways.Select(w =>
                w.LogWeight + (errorMm * w.Pull[k]) - (0.5 * errorMm * errorMm * w.Stiffness[k])
            ),
        ]) - logNone;

    /// <summary>ln of how much likelier the row is if k is too great by so much and k + 1 too small by as much.</summary>
    public double Exchanged(int k, double errorMm) =>
        LogSum.Of([
            .. ways.Select(w =>
                w.LogWeight
                + (errorMm * (w.Pull[k] - w.Pull[k + 1]))
                - (
                    0.5
                    * errorMm
                    * errorMm
                    * (w.Stiffness[k] - (2 * w.WithNext[k]) + w.Stiffness[k + 1])
                )
            ),
        ]) - logNone;

    /// <summary>ln of the mean over the sizes of slips of e^(c²s/2b) / √b, where b = 1 + s a and s is the square of a size.</summary>
    private static double AnySize(double c, double a)
    {
        double largest = SlipMm[^1] * SlipMm[^1],
            most = 0.5 * c * c * largest / (1 + (largest * a)),
            sum = 0;
        foreach (double size in SlipMm)
        {
            double s = size * size,
                b = 1 + (s * a);
            sum += Math.Exp((0.5 * c * c * s / b) - most) / Math.Sqrt(b);
        }

        return most + Math.Log(sum / SlipMm.Length);
    }
}
