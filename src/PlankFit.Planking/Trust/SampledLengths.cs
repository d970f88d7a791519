using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;

namespace PlankFit.Planking.Trust;

/// <summary>
/// How sure the lengths of planks are that hang on the table by no slope, such as corner pieces, whose ends go from one edge to another: the seams are laid anew, every
/// choice kept, on tables drawn by chance as [trust] says they are out.
/// </summary>
public sealed class SampledLengths
{
    /// <summary>Drawn in pairs, one the other's mirror image, so that what is odd in the errors falls out of their mean.</summary>
    private const int Pairs = 16;

    /// <summary>1 and one standard deviation of a root mean square of so many: 1 / √(2 n), and somewhat more for what is no normal error (our own, no source).</summary>
    private const double KnownTo = 1 + (1 / 6.0);

    /// <summary>The same tables every time.</summary>
    private const int Seed = 1;

    private readonly ImmutableDictionary<PlankId, double> within;

    private SampledLengths(ImmutableDictionary<PlankId, double> within) => this.within = within;

    public static readonly SampledLengths None = new(ImmutableDictionary<PlankId, double>.Empty);

    /// <summary>
    /// Within which a plank's length is of what is drawn, 19 times in 20, mm: the greater of 1.96 of the root mean square and of what 19 in 20 of the tables keep to. A
    /// sample so small knows it to about a sixth of itself, by which it is told the greater. Null for one that is not there on every table.
    /// </summary>
    /// <param name="starboard">Its own name or its twin's.</param>
    public double? WithinOf(PlankId starboard) =>
        within.TryGetValue(starboard with { Side = Side.Starboard }, out double mm) ? mm : null;

    /// <param name="table">S of the cells.</param>
    /// <param name="wanted">Of which planks; where there is none nothing is laid.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static SampledLengths Of(
        Planked planked,
        TableCells cells,
        Matrix<double> table,
        Func<PlankId, bool> wanted,
        CancellationToken stop
    )
    {
        if (!planked.PlankLayers.SelectMany(l => l.Starboard).Any(p => wanted(p.Id)))
        {
            return None;
        }

        var held = HeldPlan.Of(planked, stop);
        PlankingJob job = held.Job;
        double[] drawn = held.LengthsOn(job);
        Vector<double>[] errors = [.. Errors(table)];
        double[][] lengths = new double[errors.Length][];
        Parallel.For(
            0,
            errors.Length,
            new ParallelOptions { CancellationToken = stop },
            i => lengths[i] = held.LengthsOn(cells.Moved(job, errors[i]))
        );
        return new(
            held.Planks.Select(
                    (id, k) => (Id: id, Mm: Within([.. lengths.Select(l => l[k] - drawn[k])]))
                )
                .Where(p => wanted(p.Id) && double.IsFinite(p.Mm))
                .ToImmutableDictionary(p => p.Id, p => p.Mm)
        );
    }

    private static double Within(double[] off)
    {
        double[] sizes = [.. off.Select(Math.Abs).Order()];
        return KnownTo
            * Math.Max(
                TrustSpec.Within * Math.Sqrt(off.Sum(o => o * o) / off.Length),
                sizes[(int)Math.Ceiling(0.95 * sizes.Length) - 1]
            );
    }

    private static IEnumerable<Vector<double>> Errors(Matrix<double> table)
    {
        MathNet.Numerics.LinearAlgebra.Factorization.Evd<double> evd = table.Evd(
            Symmetricity.Symmetric
        );
        Vector<double> lengths = evd.EigenValues.Map(e => Math.Sqrt(Math.Max(0, e.Real)));
        var chance = new Random(Seed);
        for (int i = 0; i < Pairs; i++)
        {
            Vector<double> z = lengths.Map(l => l * Normal.InvCDF(0, 1, chance.NextDouble()));
            Vector<double> p = evd.EigenVectors * z;
            yield return p;
            yield return -p;
        }
    }
}
