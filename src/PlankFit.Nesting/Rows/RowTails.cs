using PlankFit.Nesting.Effort;

namespace PlankFit.Nesting.Rows;

/// <summary>
/// What may still be laid behind a thing in its pose, at the most, by the length that is left: every pitch as it is, but a thing may be laid more than once
/// (paths with repetition, as in Christofides, Mingozzi and Toth 1981, from memory). Lengths are rounded down to steps, so that it is never too low.
/// </summary>
internal sealed class RowTails
{
    private const double Fudge = 1e-9;

    /// <summary>Lengths are rounded down to steps of this: quick, or fine enough to cut most of a search off.</summary>
    public const double FineMm = 1;
    public const double CoarseMm = 5;

    /// <summary>With more poses than this no steps are as fine as asked for: the work grows with the square of them.</summary>
    private const int Many = 600;
    private const int Some = 200;
    private const double MiddleMm = 2;
    private const int MostCells = 12_000;
    private const float Rounding = 2e-6f;
    private readonly RowPoses poses;
    private readonly TailStates states;

    /// <summary>By state of a pose and steps of length that are left; before each pose's own, room for lengths below nought, in which nothing fits.</summary>
    private readonly float[] table;
    private readonly int before;
    private readonly int cells;
    private readonly double step;

    private RowTails(TailStates states, float[] table, int before, int cells, double step)
    {
        (poses, this.states, this.table) = (states.Poses, states, table);
        (this.before, this.cells, this.step) = (before, cells, step);
    }

    /// <returns>Null where things lie so much abreast that this is of no use, where any order will do, and where there is no time for it.</returns>
    public static RowTails? Of(RowPoses poses, double longestMm, double fineMm, Patience patience)
    {
        if (poses.AnyOrder || longestMm <= 0)
        {
            return null;
        }

        double step = Math.Max(
            Math.Max(fineMm, longestMm / MostCells),
            poses.Count > Many ? CoarseMm
                : poses.Count > Some ? MiddleMm
                : FineMm
        );
        var states = new TailStates(poses);
        int n = states.Count,
            cells = (int)Math.Floor((longestMm / step) + Fudge);
        int[][] pitch = new int[n][];
        int block = cells + 1,
            before = 0;
        for (int p = 0; p < n; p++)
        {
            pitch[p] = new int[poses.Count];
            for (int q = 0; q < poses.Count; q++)
            {
                // What is further away than the longest strip never fits.
                int steps = (int)Math.Floor((states.PitchMm(p, q) / step) + Fudge);
                pitch[p][q] = Math.Min(cells + 1, steps);
                block = Math.Min(block, steps);
                before = Math.Max(before, pitch[p][q]);
            }
        }

        if (block < 1)
        {
            return null;
        }

        int row = Row(before, cells);
        float[] worth = [.. poses.Worth.Select(w => (float)w)];
        float[] table = new float[n * row];
        int[] least =
        [
            .. Enumerable
                .Range(0, n)
                .Select(p => poses.LengthMm[states.PoseOf(p)])
                .Select(l => Math.Min(cells + 1, (int)Math.Floor((l / step) + Fudge))),
        ];
        for (int p = 0; p < n; p++)
        {
            table.AsSpan(p * row, before + least[p]).Fill(float.NegativeInfinity);
            for (int q = 0; q < poses.Count; q++)
            {
                // From where it reads what is laid behind it.
                pitch[p][q] = (states.After(p, q) * row) + before - pitch[p][q];
            }
        }

        // A block is no longer than the shortest pitch, so that it depends on blocks before it only, and each is worked as a whole.
        for (int from = 0; from <= cells; from += block)
        {
            if (patience.IsOver)
            {
                return null;
            }

            int to = Math.Min(cells + 1, from + block);
            Parallel.For(
                0,
                n,
                p =>
                {
                    int begin = Math.Max(from, least[p]);
                    if (begin < to)
                    {
                        // It may go a little further than the block, from what is too low there as yet; the next block raises that again.
                        Maxima.Raise(
                            table,
                            (p * row) + before + begin,
                            to - begin,
                            pitch[p],
                            begin,
                            worth
                        );
                    }
                }
            );
        }

        return new(states, table, before, cells, step);
    }

    /// <summary>So many places has each pose, with room behind them for what is raised too far.</summary>
    private static int Row(int before, int cells) => before + cells + 1 + Maxima.Wide;

    /// <summary>Nothing laid behind a thing is worth more, with so much length left from its least x on.</summary>
    /// <param name="before">What lies just before it, and as near as may be; -1 for nothing, or for not so near.</param>
    public double Behind(int pose, int before, double leftMm)
    {
        int state = before < 0 ? pose : states.After(before, pose);
        int c = (int)Math.Floor((leftMm / step) + Fudge);
        return c < 0
            ? double.NegativeInfinity
            : table[(state * Row(this.before, cells)) + this.before + Math.Min(c, cells)]
                * (1 + Rounding);
    }

    /// <summary>No row that is this long is worth more.</summary>
    public double AtMost(double lengthMm)
    {
        double most = 0;
        for (int p = 0; p < poses.Count; p++)
        {
            most = Math.Max(most, poses.Worth[p] + Behind(p, -1, lengthMm));
        }

        return most;
    }
}
