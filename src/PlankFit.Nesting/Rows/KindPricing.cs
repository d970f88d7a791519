using System.Collections.Immutable;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Model;

namespace PlankFit.Nesting.Rows;

/// <summary>The dearest rows of one kind of strip, by its lengths, and what none of them is worth more than.</summary>
internal sealed class KindPricing
{
    private const long ApartSteps = 100_000;

    private readonly NestProblem problem;
    private readonly Share share;
    private readonly MasterPrices worth;
    private readonly double eps;
    private readonly int kind;
    private readonly RowTables tables;
    private readonly Patience patience;

    private readonly ImmutableArray<double> lengths;
    private readonly ImmutableArray<double> prices;
    private readonly double[] most;
    private readonly List<Row>[] rows;
    private RowValues? values;
    private RowTails? tails;

    public KindPricing(
        NestProblem problem,
        Share share,
        MasterPrices worth,
        double eps,
        int kind,
        RowTables tables,
        Patience patience
    )
    {
        (this.problem, this.share, this.worth, this.eps) = (problem, share, worth, eps);
        (this.kind, this.tables, this.patience) = (kind, tables, patience);
        (lengths, prices) = (problem.StripLengths(kind), worth.Strips[kind]);
        Lengths = tables.Buckets(kind);
        most = new double[lengths.Length];
        Array.Fill(most, double.PositiveInfinity);
        rows = new List<Row>[lengths.Length];
    }

    /// <summary>Which of the kind's lengths are searched.</summary>
    public ImmutableArray<int> Lengths { get; }

    public List<PricedRow> Found { get; } = [];

    /// <summary>By band; null where there was no time for it.</summary>
    public ImmutableArray<BandAtMost>? AtMost { get; private set; }

    /// <summary>No board has such a lane.</summary>
    private bool IsNone =>
        Lengths.IsEmpty
        && problem.Boards.All(b =>
            b.Sort != problem.SortOf(kind)
            || b.Region.WidthMm + problem.ProudMm
                < problem.Classes[problem.ClassOf(kind)].Bands[^1].LeastMm
        );

    /// <summary>What no row is worth more than, before any is looked for; tables are shared, and this is not done for two kinds at once.</summary>
    /// <returns>False where there was no time for it.</returns>
    public bool Bound()
    {
        if (IsNone)
        {
            return true;
        }

        values = tables.Values(kind);
        if (!values.IsWhole || patience.IsOver)
        {
            return false;
        }

        for (int j = 0; j < most.Length; j++)
        {
            most[j] = values.AtMost(lengths[j]);
        }

        if (Lengths.Any(j => most[j] > prices[j] + eps))
        {
            tails = tables.Tails(kind);
            _ = tables.Poses(kind);
        }

        return true;
    }

    /// <param name="steps">Of the search; where it takes more, the figure is somewhat high.</param>
    public void Find(int length, long steps)
    {
        if (tails is not null)
        {
            most[length] = Math.Min(most[length], tails.AtMost(lengths[length]));
        }

        rows[length] = [];
        if (most[length] > prices[length] + eps && !patience.IsOver)
        {
            (rows[length], double dearest, bool whole) = tables
                .Search(kind)
                .Find(lengths[length], prices[length] + eps, steps);
            most[length] = whole ? dearest : most[length];
        }
    }

    public void Finish()
    {
        if (values is null)
        {
            AtMost =
            [
                .. problem
                    .Classes[problem.ClassOf(kind)]
                    .Bands.Select(_ => new BandAtMost(
                        [.. most],
                        [.. problem.BoundLengths(kind).Select(_ => double.PositiveInfinity)],
                        0
                    )),
            ];
            return;
        }

        AtMost = Bands(new(most, values, tails, tails is null ? 0 : tables.TailsToMm(kind)));
        Found.AddRange(Lengths.SelectMany(j => rows[j]).Select(r => new PricedRow(r, kind)));
        if (AtMost is null || patience.IsOver)
        {
            return;
        }

        // Rows that have nothing in common fit into one plan: with them the mix becomes better at once.
        RowSearch apart = tables.Search(kind);
        foreach (
            int j in Lengths
                .Where(j => most[j] > prices[j] + eps)
                .OrderByDescending(j => most[j] - prices[j])
        )
        {
            (List<Row> next, _, _) = apart.Find(lengths[j], prices[j] + eps, ApartSteps);
            if (next.Count > 0)
            {
                Found.AddRange(next.Select(r => new PricedRow(r, kind)));
                apart.LeaveOut(next[0].Parts);
            }
        }
    }

    /// <summary>What rows are worth at the most whose highest thing is of a band: no more than any row is, and no more than things of its height give.</summary>
    private ImmutableArray<BandAtMost>? Bands(WorthAtMost any)
    {
        double longest = problem.LongestMm(kind);
        double[] bounded =
        [
            .. problem.BoundLengths(kind).Select(l => any.Of(l, problem.Bucket(kind, l))),
        ];
        ImmutableArray<BandAtMost>.Builder bands = ImmutableArray.CreateBuilder<BandAtMost>();
        foreach (LaneBand band in problem.Classes[problem.ClassOf(kind)].Bands)
        {
            if (bands.Count == 0)
            {
                bands.Add(new([.. any.Searched], [.. bounded], any.Values.AtMost(longest)));
                continue;
            }

            using var values = new RowValues(
                problem,
                share,
                kind,
                worth.Items,
                patience,
                band.HighMm
            );
            if (!values.IsWhole)
            {
                return null;
            }

            bands.Add(
                new(
                    [.. lengths.Select((l, j) => Math.Min(any.Searched[j], values.AtMost(l)))],
                    [
                        .. problem
                            .BoundLengths(kind)
                            .Select((l, j) => Math.Min(bounded[j], values.AtMost(l))),
                    ],
                    values.AtMost(longest)
                )
            );
        }

        return bands.ToImmutable();
    }
}
