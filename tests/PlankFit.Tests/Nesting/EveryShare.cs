namespace PlankFit.Tests.Nesting;

/// <summary>The least that pieces can be sawn out of, by trying every board and lane for each of them.</summary>
internal static class EveryShare
{
    /// <param name="sizes">Each with the kerf behind it, longest first.</param>
    /// <param name="boards">The room that each of a board's lanes has; one of each on hand, as many as are wanted otherwise.</param>
    /// <returns>What is asked for the boards cut into and, where two ways are alike in that, their area; null where there is no way.</returns>
    public static (double Asked, double Area)? Least(
        double[] sizes,
        (double Room, int Lanes, bool OnHand, double Asked, double Area)[] boards
    )
    {
        (double Asked, double Area)? best = null;
        var open = new List<double[]>();
        int[] used = new int[boards.Length];
        void Go(int i, double asked, double area)
        {
            if (best is { } b && (asked > b.Asked || (asked == b.Asked && area >= b.Area)))
            {
                return;
            }

            if (i == sizes.Length)
            {
                best = (asked, area);
                return;
            }

            foreach (double[] lanes in open.ToArray())
            {
                Into(lanes, i, asked, area);
            }

            for (int t = 0; t < boards.Length; t++)
            {
                if (boards[t].OnHand && used[t] > 0)
                {
                    continue;
                }

                used[t]++;
                double[] fresh = [.. Enumerable.Repeat(boards[t].Room, boards[t].Lanes)];
                open.Add(fresh);
                Into(fresh, i, asked + boards[t].Asked, area + boards[t].Area);
                open.RemoveAt(open.Count - 1);
                used[t]--;
            }
        }

        void Into(double[] lanes, int i, double asked, double area)
        {
            for (int l = 0; l < lanes.Length; l++)
            {
                if (lanes[l] >= sizes[i] - 1e-9 && (l == 0 || lanes[l] != lanes[l - 1]))
                {
                    lanes[l] -= sizes[i];
                    Go(i + 1, asked, area);
                    lanes[l] += sizes[i];
                }
            }
        }

        Go(0, 0, 0);
        return best;
    }
}
