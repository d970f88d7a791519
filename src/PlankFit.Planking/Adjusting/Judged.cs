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

    /// <summary>Of two readings one is 19 times likelier to be the slip than the other: twice the logarithm of that.</summary>
    private static readonly double Parted = 2 * Math.Log(19);

    public static double LimitOf(int readings) => ChiSquared.InvCDF(readings, Level);

    /// <summary>
    /// Slips are looked for first: the worst reading alone is put aside and the rest adjusted anew, and what goes with the rest after all is taken back. Where those left still do not go with what was said of the
    /// unknowns, that is widened, never the readings.
    /// </summary>
    /// <param name="places">What each is a reading of: two of one place that contradict one another are both put aside where the others do not part them.</param>
    public static Judged Of(
        Estimate before,
        Observations readings,
        IReadOnlyList<int>? places = null
    )
    {
        ImmutableArray<(int, SlipRow)>.Builder slips = ImmutableArray.CreateBuilder<(
            int,
            SlipRow
        )>();
        ImmutableArray<int> kept = [.. Enumerable.Range(0, readings.Count)];
        // Of two that contradict one another neither is taken back: by itself either would pass.
        HashSet<int> notParted = [];
        bool settled = false;
        while (!kept.IsEmpty)
        {
            Observations left = readings.Only(kept);
            var adjusted = Adjustment.Of(before, left);
            ImmutableArray<SlipRow> rows = SlipTest.Rows(adjusted, left.Errors);
            if (SlipTest.Worst(rows) is { } worst)
            {
                int[] aside =
                [
                    worst,
                    .. Enumerable
                        .Range(0, kept.Length)
                        .Where(k => k != worst && IsNotParted(kept[k], k)),
                ];
                if (aside.Length > 1)
                {
                    notParted.UnionWith(aside.Select(k => kept[k]));
                }

                slips.AddRange(aside.Select(k => (kept[k], rows[k])));
                kept = [.. kept.Where((_, k) => !aside.Contains(k))];
                continue;

                bool IsNotParted(int reading, int k) =>
                    places is not null
                    && places[reading] == places[kept[worst]]
                    && Math.Sign(rows[k].W) != Math.Sign(rows[worst].W)
                    && Math.Abs(rows[k].W) > SlipTest.Limit
                    && Square(rows[worst].W) - Square(rows[k].W) < Parted;
            }

            if (!settled)
            {
                settled = true;
                ImmutableArray<int> back = TakenBack(before, readings, kept, slips, notParted);
                slips.RemoveAll(s => back.Contains(s.Item1));
                kept = back;
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

    /// <summary>
    /// A slip that is read twice bears down on good readings beside it, which are then put aside before it: what goes with all that is kept, once the worst are gone, is
    /// taken back, the last one put aside first.
    /// </summary>
    private static ImmutableArray<int> TakenBack(
        Estimate before,
        Observations readings,
        ImmutableArray<int> kept,
        IReadOnlyList<(int Reading, SlipRow Row)> slips,
        HashSet<int> notParted
    )
    {
        foreach ((int reading, _) in slips.Reverse().Where(s => !notParted.Contains(s.Reading)))
        {
            ImmutableArray<int> with = [.. kept.Append(reading).Order()];
            Observations all = readings.Only(with);
            if (SlipTest.Worst(SlipTest.Rows(Adjustment.Of(before, all), all.Errors)) is null)
            {
                kept = with;
            }
        }

        return kept;
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

    private static double Square(double x) => x * x;
}
