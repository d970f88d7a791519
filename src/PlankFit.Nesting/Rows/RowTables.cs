using System.Collections.Immutable;
using PlankFit.Nesting.Effort;

namespace PlankFit.Nesting.Rows;

/// <summary>What bounds the rows of every kind of strip at given worths of things, worked out where it is asked for; not to be asked from two threads at once.</summary>
/// <param name="stepMm">Of the bound by true pitches: the finer the sharper, and the more work.</param>
internal sealed class RowTables(
    NestProblem problem,
    Share share,
    double[] worths,
    double stepMm,
    Patience patience
) : IDisposable
{
    private readonly RowValues?[] values = new RowValues?[problem.Kinds];
    private readonly RowPoses?[] poses = new RowPoses?[problem.Kinds];
    private readonly RowTails?[] tails = new RowTails?[problem.Kinds];
    private readonly bool[] hasTails = new bool[problem.Kinds];
    private readonly ImmutableArray<int>?[] buckets = new ImmutableArray<int>?[problem.Kinds];

    /// <summary>Which of a kind's lengths the boards of the share have.</summary>
    public ImmutableArray<int> Buckets(int kind) => buckets[kind] ??= problem.Buckets(kind, share);

    public RowValues Values(int kind)
    {
        int lead = problem.Leads[kind];
        return values[lead] ??= new(problem, share, lead, worths, patience);
    }

    public RowPoses Poses(int kind)
    {
        int lead = problem.Leads[kind];
        return poses[lead] ??= new(problem, share, lead, worths);
    }

    /// <returns>Null where they are of no use, or there was no time for them.</returns>
    public RowTails? Tails(int kind)
    {
        int lead = problem.Leads[kind];
        if (!hasTails[lead])
        {
            tails[lead] = RowTails.Of(Poses(lead), TailsToMm(kind), stepMm, patience);
            hasTails[lead] = true;
        }

        return tails[lead];
    }

    /// <summary>So far tails reach: as far as the longest strip that the boards of the share have of all kinds that share them.</summary>
    public double TailsToMm(int kind) =>
        Enumerable
            .Range(0, problem.Kinds)
            .Where(k => problem.Leads[k] == problem.Leads[kind])
            .SelectMany(k => Buckets(k).Take(1).Select(j => problem.StripLengths(k)[j]))
            .DefaultIfEmpty(0)
            .Max();

    /// <param name="items">What there is of each; all of the share where left out.</param>
    public RowSearch Search(int kind, IReadOnlyList<int>? items = null)
    {
        int lead = problem.Leads[kind];
        int[] left = [.. items ?? share.Items];
        for (int i = 0; lead != kind && i < left.Length; i++)
        {
            left[i] = LeadKinds.IsOut(problem, lead, kind, i) ? 0 : left[i];
        }

        return new(Poses(kind), Values(kind), hasTails[lead] ? tails[lead] : null, patience, left);
    }

    public void Dispose()
    {
        foreach (RowValues? each in values)
        {
            each?.Dispose();
        }
    }
}
