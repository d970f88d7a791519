using System.Collections.Immutable;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Search;

/// <summary>
/// A plan out of the mix in fractions: what it has most of is settled, the rest mixed anew, and so on down to a few things, which are mixed whole (diving; Gilmore and
/// Gomory's own rounding with the mix found again each time; from memory).
/// </summary>
internal static class Diving
{
    /// <summary>Of the boards that the mix has, such a part is settled at once, one at least.</summary>
    private const double Part = 0.12;

    /// <summary>Rows that the mix has whole are settled whatever their number.</summary>
    private const double AllButWhole = 0.999;

    /// <summary>By so much, as a part, chance sways what is settled first.</summary>
    private const double Sway = 0.3;
    private const int Rounds = 12;

    public static CuttingPlan Once(
        NestLot lot,
        ColumnResult begin,
        Random chance,
        Patience patience
    )
    {
        (NestProblem problem, Share left, double[] missing, _) = lot;
        ImmutableArray<CuttingPlanBoard>.Builder done =
            ImmutableArray.CreateBuilder<CuttingPlanBoard>();
        ColumnResult columns = begin;
        while (left.Items.Sum() > PricedFit.Few && !patience.IsOver)
        {
            List<CuttingPlanBoard> settled = Settled(problem, left, columns.Mix, chance);
            if (settled.Count == 0)
            {
                break;
            }

            done.AddRange(settled);
            left = Without(problem, left, settled);
            if (left.Items.Sum() > PricedFit.Few)
            {
                Share now = left;
                columns = ColumnSearch.Run(
                    problem,
                    left,
                    missing,
                    new(
                        columns
                            .Mix.Rows.Where(r => r.Used > 0 && r.Row.IsWithin(now.Items))
                            .Select(r => r.Row),
                        columns.Centre,
                        left,
                        Rounds,
                        double.PositiveInfinity
                    ),
                    patience
                );
            }
        }

        CuttingPlan rest = PricedFit.Rest(lot with { Share = left }, columns.Centre, patience);
        return new([.. done, .. rest.Boards]);
    }

    /// <summary>Boards ripped as the mix has it most, each with the rows that it has most of.</summary>
    private static List<CuttingPlanBoard> Settled(
        NestProblem problem,
        Share left,
        MasterMix mix,
        Random chance
    )
    {
        double Swayed(double used) => used * (1 + (Sway * (chance.NextDouble() - 0.5)));
        (MixedRow Row, double By)[] rows =
        [
            .. mix
                .Rows.Where(r => r.Used > Least)
                .Select(r => (Row: r, By: r.Used >= AllButWhole ? 2 + r.Used : Swayed(r.Used)))
                .OrderByDescending(r => r.By),
        ];
        var rippings = mix
            .Rippings.Where(r => r.Used > Least)
            .Select(r => (Ripping: r, By: Swayed(r.Used)))
            .ToList();
        double boards = mix.Rippings.Sum(r => r.Used);
        int most = Math.Max(1, (int)(Part * boards));
        int[] items = [.. left.Items],
            stock = [.. left.Boards];
        var settled = new List<CuttingPlanBoard>();
        foreach ((MixedRow first, double by) in rows)
        {
            if (settled.Count >= most && by < 2)
            {
                break;
            }

            for (int copy = 0; copy < Math.Max(1, (int)(first.Used + 1e-6)); copy++)
            {
                if (Board(problem, first, rows, rippings, items, stock) is not { } cut)
                {
                    break;
                }

                stock[cut.Board]--;
                foreach (int i in cut.Rows.SelectMany(r => r.Row.Parts))
                {
                    items[i]--;
                }

                settled.Add(cut);
            }
        }

        return settled;
    }

    private const double Least = 1e-6;

    /// <summary>A board with one row in it, in a ripping that has such a strip, and the mix's rows in its other strips; null where there is none.</summary>
    private static CuttingPlanBoard? Board(
        NestProblem problem,
        MixedRow first,
        (MixedRow Row, double By)[] rows,
        List<(MixedRipping Ripping, double By)> rippings,
        int[] items,
        int[] stock
    )
    {
        if (!first.Row.IsWithin(items))
        {
            return null;
        }

        // The shortest strip that it goes into, and of such the ripping that the mix has most of.
        (MixedRipping Ripping, double By)? best = null;
        double shortest = double.PositiveInfinity;
        foreach ((MixedRipping ripping, double by) in rippings)
        {
            if (stock[ripping.Board] <= 0)
            {
                continue;
            }

            double length = Strips(problem, ripping)
                .Where(s => s.Kind == first.Kind && s.LengthMm >= first.Row.LengthMm - 1e-7)
                .Select(s => s.LengthMm)
                .DefaultIfEmpty(double.PositiveInfinity)
                .Min();
            if (length < shortest || (length == shortest && length < 1e9 && by > best!.Value.By))
            {
                (best, shortest) = ((ripping, by), length);
            }
        }

        if (best is not { } found)
        {
            return null;
        }

        int[] left = [.. items];
        ImmutableArray<LaneRow>.Builder laid = ImmutableArray.CreateBuilder<LaneRow>();
        bool isLaid = false;
        foreach (
            (int Kind, double LengthMm, int Lane, int Stretch) strip in Strips(
                    problem,
                    found.Ripping
                )
                .OrderBy(s => s.LengthMm)
        )
        {
            Row? row =
                !isLaid && strip.Kind == first.Kind && strip.LengthMm >= first.Row.LengthMm - 1e-7
                    ? first.Row
                    : rows.Where(r =>
                            r.Row.Kind == strip.Kind
                            && r.Row.Row.LengthMm <= strip.LengthMm + 1e-7
                            && problem.Bucket(strip.Kind, r.Row.Row.LengthMm)
                                == problem.Bucket(strip.Kind, strip.LengthMm)
                            && r.Row.Row.IsWithin(left)
                        )
                        .Select(r => r.Row.Row)
                        .FirstOrDefault();
            isLaid |= ReferenceEquals(row, first.Row);
            if (row is null || !row.IsWithin(left))
            {
                continue;
            }

            laid.Add(new(strip.Lane, strip.Stretch, row));
            foreach (int i in row.Parts)
            {
                left[i]--;
            }
        }

        return new(
            found.Ripping.Board,
            found.Ripping.Ripping,
            [.. laid.OrderBy(r => r.Lane).ThenBy(r => r.Stretch)]
        );
    }

    private static IEnumerable<(int Kind, double LengthMm, int Lane, int Stretch)> Strips(
        NestProblem problem,
        MixedRipping ripping
    ) =>
        ripping.Ripping.Lanes.SelectMany(
            (lane, l) =>
                lane.Stretches.Select(
                    (s, i) =>
                        (
                            problem.Kind(lane.Class, problem.Boards[ripping.Board].Sort),
                            s.LengthMm,
                            l,
                            i
                        )
                )
        );

    private static Share Without(NestProblem problem, Share share, List<CuttingPlanBoard> cut)
    {
        int[] laid = new CuttingPlan([.. cut]).Counts(problem),
            boards = [.. share.Boards];
        foreach (CuttingPlanBoard b in cut)
        {
            boards[b.Board]--;
        }

        return new([.. share.Items.Select((n, i) => n - laid[i])], [.. boards]);
    }
}
