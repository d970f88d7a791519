using System.Collections.Immutable;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Mix;

/// <summary>Deals rows out to the strips of boards that were chosen for them.</summary>
internal static class StripDealing
{
    /// <param name="boards">Ripped boards, one for each that is cut into.</param>
    /// <param name="rows">With the kind of strip each is for.</param>
    /// <param name="share">Of no thing more is kept than is asked for.</param>
    public static CuttingPlan Of(
        NestProblem problem,
        Share share,
        RowBook book,
        IReadOnlyList<(int Board, Ripping Ripping)> boards,
        IReadOnlyList<(Row Row, int Kind)> rows
    )
    {
        var free = new List<(int Kind, double Length, int Board, int Lane, int Stretch)>();
        for (int b = 0; b < boards.Count; b++)
        {
            ImmutableArray<RippedLane> lanes = boards[b].Ripping.Lanes;
            for (int l = 0; l < lanes.Length; l++)
            {
                for (int s = 0; s < lanes[l].Stretches.Length; s++)
                {
                    free.Add(
                        (
                            problem.Kind(lanes[l].Class, problem.Boards[boards[b].Board].Sort),
                            lanes[l].Stretches[s].LengthMm,
                            b,
                            l,
                            s
                        )
                    );
                }
            }
        }

        ImmutableArray<LaneRow>.Builder[] dealt = boards
            .Select(_ => ImmutableArray.CreateBuilder<LaneRow>())
            .ToArray();
        int[] wanted = [.. share.Items];
        // The longest first, each into the shortest strip that holds it: what is left over stays in one piece, and no longer row is ever shut out.
        foreach (
            (Row row, int kind) in Asked(problem, rows, wanted, book)
                .OrderByDescending(r => r.Row.LengthMm)
        )
        {
            int bucket = problem.Bucket(kind, row.LengthMm);
            if (bucket < 0)
            {
                continue;
            }

            double need = problem.StripLengths(kind)[bucket];
            int best = -1;
            for (int i = 0; i < free.Count; i++)
            {
                if (
                    free[i].Kind == kind
                    && free[i].Length >= need
                    && (best < 0 || free[i].Length < free[best].Length)
                )
                {
                    best = i;
                }
            }

            if (best >= 0)
            {
                dealt[free[best].Board].Add(new(free[best].Lane, free[best].Stretch, row));
                free.RemoveAt(best);
            }
        }

        return new([
            .. boards
                .Select(
                    (b, i) =>
                        new CuttingPlanBoard(
                            b.Board,
                            b.Ripping,
                            [.. dealt[i].OrderBy(r => r.Lane).ThenBy(r => r.Stretch)]
                        )
                )
                .Where(b => !b.Rows.IsEmpty),
        ]);
    }

    /// <summary>Rows without what other rows have already.</summary>
    private static List<(Row Row, int Kind)> Asked(
        NestProblem problem,
        IReadOnlyList<(Row Row, int Kind)> rows,
        int[] wanted,
        RowBook book
    )
    {
        var asked = new List<(Row, int)>();
        foreach ((Row row, int kind) in rows)
        {
            var kept = new List<int>();
            foreach (int i in row.Items)
            {
                // Of a pair head to tail of which one is there already the other lies by itself.
                int[] parts = [.. problem.Items[i].Parts.Where(p => wanted[p] > 0)];
                foreach (int p in parts)
                {
                    wanted[p]--;
                }

                kept.AddRange(parts.Length == problem.Items[i].Parts.Length ? [i] : parts);
            }

            if (kept.Count > 0)
            {
                asked.Add((kept.SequenceEqual(row.Items) ? row : Shorter(book, row, kept), kind));
            }
        }

        return asked;
    }

    /// <summary>A row of more than a few things is not always laid the shortest: what was in a longer one is never let grow.</summary>
    private static Row Shorter(RowBook book, Row whole, List<int> kept)
    {
        Row row = book.Of(kept);
        return row.LengthMm <= whole.LengthMm || !kept.All(whole.Items.Contains)
            ? row
            : book.InOrder(whole, kept);
    }
}
