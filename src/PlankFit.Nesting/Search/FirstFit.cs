using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Search;

/// <summary>A plan at once, to begin with: the longest first, each into the first strip where a row with it still fits.</summary>
internal static class FirstFit
{
    /// <param name="patience">Once it is over no row's things are put in order anew: each goes where its row grows least, and the plan is a whole one all the same.</param>
    public static CuttingPlan Of(NestProblem problem, Share share, RowBook book, Patience patience)
    {
        var open = new OpenStrips(problem, book);
        var opened = new List<(int Board, Ripping Ripping)>();
        var fresh = new FreshBoards(problem, share);
        int[] laid = new int[problem.Items.Length];
        IEnumerable<int> wanted =
            from i in Enumerable.Range(0, problem.Items.Length)
            orderby problem.Items[i].HeightMm > 0 ? problem.Ends.SizeMm(i) : 0 descending, i
            from copy in Enumerable.Range(0, share.Items[i])
            select i;
        foreach (int item in wanted)
        {
            // A block goes in place of each of its parts, and once.
            int block = problem.Instead[item],
                thing = block < 0 ? item : block;
            if (block >= 0 && problem.Items[block].Parts.Any(p => laid[p] == share.Items[p]))
            {
                continue;
            }

            bool quick = patience.IsOver;
            if (!open.Take(thing, quick, likely: quick))
            {
                double length = book.Of([thing]).LengthMm;
                if (fresh.Next(thing, length) is not { } board)
                {
                    // Before it is told that nothing holds it, everything is asked.
                    if (quick && open.Take(thing, quick, likely: false))
                    {
                        Lay(thing);
                    }

                    continue;
                }

                Ripping ripping = fresh.Ripped(board, thing, length);
                open.Add(opened.Count, board, ripping);
                opened.Add((board, ripping));
                open.Take(thing, quick, likely: quick);
            }

            Lay(thing);
        }

        void Lay(int thing)
        {
            foreach (int part in problem.Items[thing].Parts)
            {
                laid[part]++;
            }
        }

        ILookup<int, LaneRow> rows = open.Filled.ToLookup(f => f.Opened, f => f.Row);
        return new([
            .. opened
                .Select((b, i) => new CuttingPlanBoard(b.Board, b.Ripping, [.. rows[i]]))
                .Where(b => !b.Rows.IsEmpty),
        ]);
    }
}
