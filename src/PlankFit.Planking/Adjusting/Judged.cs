using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Adjusting;

/// <summary>Readings taken into account once those that are slips are put aside, and the whole judged.</summary>
/// <param name="Adjusted">By the readings that are kept; null where there is none.</param>
/// <param name="Kept">Their places in the row of all.</param>
/// <param name="Rows">Each of these against the others.</param>
/// <param name="Slips">Those put aside, worst first, as each stood when it was.</param>
/// <param name="Scale">What the covariance of the unknowns was widened by: 1 where the readings go with it.</param>
/// <param name="MisfitBefore">Of the readings kept, before it was widened.</param>
public sealed record Judged(
    Adjustment? Adjusted,
    Estimate After,
    ImmutableArray<int> Kept,
    ImmutableArray<SlipRow> Rows,
    ImmutableArray<(int Reading, SlipRow Row)> Slips,
    double Scale,
    double MisfitBefore
)
{
    /// <summary>19 times in 20 the misfit of good readings is within its limit.</summary>
    public const double Level = 0.95;

    public static double LimitOf(int readings) => ChiSquared.InvCDF(readings, Level);

    /// <summary>
    /// Slips are looked for first: the worst reading alone is put aside and the rest adjusted anew. Where those left still do not go with what was said of the
    /// unknowns, that is widened, never the readings.
    /// </summary>
    public static Judged Of(Estimate before, Observations readings)
    {
        ImmutableArray<(int, SlipRow)>.Builder slips = ImmutableArray.CreateBuilder<(
            int,
            SlipRow
        )>();
        ImmutableArray<int> kept = [.. Enumerable.Range(0, readings.Count)];
        while (!kept.IsEmpty)
        {
            Observations left = readings.Only(kept);
            var adjusted = Adjustment.Of(before, left);
            ImmutableArray<SlipRow> rows = SlipTest.Rows(adjusted, left.Errors);
            if (SlipTest.Worst(rows) is { } worst)
            {
                slips.Add((kept[worst], rows[worst]));
                kept = kept.RemoveAt(worst);
                continue;
            }

            double misfit = adjusted.Misfit,
                scale = misfit > LimitOf(kept.Length) ? Scaled(before, left, adjusted) : 1;
            if (scale > 1)
            {
                adjusted = Adjustment.Of(before.Widened(scale), left);
                rows = SlipTest.Rows(adjusted, left.Errors);
            }

            return new(adjusted, adjusted.After, kept, rows, slips.ToImmutable(), scale, misfit);
        }

        return new(null, before, [], [], slips.ToImmutable(), 1, 0);
    }

    private static double Scaled(Estimate before, Observations readings, Adjustment adjusted)
    {
        Matrix<double> h = adjusted.Slopes;
        return PriorScale.Likeliest(
            Estimate.Carried(h, before.Covariance),
            readings.Errors,
            adjusted.Innovations
        );
    }
}
