using System.Collections.Immutable;

namespace PlankFit.Nesting;

/// <summary>
/// From a mix in fractions to a plan: the boards whose rows the mix is surest of are settled, and what is left is mixed anew, until nothing is left
/// (diving, as it is called; from memory).
/// </summary>
internal static class Diving
{
    /// <summary>So much of the boards that the mix uses is settled at a time.</summary>
    private const double Settled = 0.2;

    /// <summary>Rows of which the mix has less than this are not settled.</summary>
    private const double Sure = 0.05;
    private const int Rounds = 25;

    public static Cutting Of(
        NestProblem problem,
        Share whole,
        double[] missing,
        MasterMix mix,
        CancellationToken enough
    )
    {
        var done = ImmutableArray.CreateBuilder<CutBoard>();
        Share share = whole;
        while (true)
        {
            if (Environment.GetEnvironmentVariable("V") is not null) Console.WriteLine($"   dive left {share.Items.Sum()} done {done.Count} cost {new Cutting(done.ToImmutable()).Cost(problem)}");
            List<CutBoard> settled = Settle(problem, share, mix);
            done.AddRange(settled);
            share = Without(share, settled);
            if (
                settled.Count == 0
                || share.Items.All(n => n == 0)
                || enough.IsCancellationRequested
            )
            {
                break;
            }

            mix = ColumnSearch
                .Run(
                    problem,
                    share,
                    missing,
                    mix.Rows.Select(r => r.Row),
                    share,
                    Rounds,
                    enough
                )
                .Mix;
        }

        // What the mix was sure of nowhere is put wherever it fits.
        Cutting rest = FirstFit.Of(problem, share, new RowBook(problem.Ends));
        return new([.. done, .. rest.Boards]);
    }

    private static Share Without(Share share, List<CutBoard> settled)
    {
        int[] items = [.. share.Items],
            boards = [.. share.Boards];
        foreach (CutBoard cut in settled)
        {
            boards[cut.Board]--;
            foreach (int i in cut.Rows.SelectMany(r => r.Row.Items))
            {
                items[i]--;
            }
        }

        return new([.. items], [.. boards]);
    }

    private static List<CutBoard> Settle(NestProblem problem, Share share, MasterMix mix)
    {
        int[] items = [.. share.Items],
            boards = [.. share.Boards];
        MixedRow[] rows =
        [
            .. mix
                .Rows.Where(r => r.Used > Sure)
                .OrderByDescending(r => r.Used)
                .ThenByDescending(r => r.Row.LengthMm)
                .ThenBy(r => r.Row.Key, StringComparer.Ordinal),
        ];
        var candidates =
            from ripping in mix.Rippings
            where ripping.Used > 1e-6
            let filled = Fill(problem, ripping, rows, items)
            where filled is { } f && !f.Board.Rows.IsEmpty
            orderby filled.Value.Sureness descending, filled.Value.Board.Filled(problem) descending
            select ripping;
        double used = mix.Rippings.Sum(r => r.Used);
        int want = Math.Max(1, (int)Math.Ceiling(Settled * used));
        var settled = new List<CutBoard>();
        foreach (MixedRipping ripping in candidates.ToArray())
        {
            // Several of one kind of board, as the mix has several.
            for (int n = (int)Math.Ceiling(ripping.Used - 1e-6); n > 0 && settled.Count < want; n--)
            {
                if (
                    boards[ripping.Board] == 0
                    || Fill(problem, ripping, rows, items) is not { } filled
                    || filled.Board.Rows.IsEmpty
                )
                {
                    break;
                }

                settled.Add(filled.Board);
                boards[ripping.Board]--;
                foreach (int i in filled.Board.Rows.SelectMany(r => r.Row.Items))
                {
                    items[i]--;
                }
            }
        }

        return settled;
    }

    /// <summary>A board with the surest rows that fill its strips well, none of them wanting what others have; null where there are none for some strip.</summary>
    private static (CutBoard Board, double Sureness)? Fill(
        NestProblem problem,
        MixedRipping ripping,
        MixedRow[] rows,
        int[] items
    )
    {
        int[] free = [.. items];
        int sort = problem.Boards[ripping.Board].Sort;
        var laid = ImmutableArray.CreateBuilder<LaneRow>();
        double sureness = 0;
        int strips = 0;
        ImmutableArray<RippedLane> lanes = ripping.Ripping.Lanes;
        for (int l = 0; l < lanes.Length; l++)
        {
            int kind = problem.Kind(lanes[l].Class, sort);
            for (int s = 0; s < lanes[l].Stretches.Length; s++)
            {
                strips++;
                double length = lanes[l].Stretches[s].LengthMm;
                MixedRow? best = null;
                double bestScore = 0;
                foreach (MixedRow row in rows)
                {
                    double score = row.Used * row.Row.LengthMm / length;
                    if (
                        row.Kind == kind
                        && row.Row.LengthMm <= length + 1e-7
                        && score > bestScore
                        && row.Row.Items.GroupBy(i => i).All(g => g.Count() <= free[g.Key])
                    )
                    {
                        (best, bestScore) = (row, score);
                    }
                }

                if (best is not null)
                {
                    laid.Add(new(l, s, best.Row));
                    sureness += bestScore * length;
                    foreach (int i in best.Row.Items)
                    {
                        free[i]--;
                    }
                }
            }
        }

        double all = lanes.Sum(l => l.Stretches.Sum(s => s.LengthMm));
        return strips == 0
            ? null
            : (new(ripping.Board, ripping.Ripping, laid.ToImmutable()), sureness / all);
    }
}
