using System.Buffers;
using PlankFit.Nesting.Effort;

namespace PlankFit.Nesting.Rows;

/// <summary>
/// For one kind of strip and given values of items: the most that a row of given length can be worth, were every end to meet the one that suits it best
/// (a bounded knapsack on steps of a millimetre, or more where strips are long; lengths rounded down).
/// </summary>
internal sealed class RowValues : IDisposable
{
    private const double Fudge = 1e-9;

    /// <summary>Sums of single precision may be this part too small.</summary>
    private const double Rounding = 2e-6;

    private readonly int[] stageItem;
    private readonly int[] size;
    private readonly int[] leastEnd;
    private readonly int[] otherEnd;
    private readonly float[] worth;
    private readonly float[] table;
    private readonly int cells;
    private readonly double step;
    private readonly Dictionary<int, int> firstStage = [];

    /// <summary>Lengths a little under nought are kept too, since an end at the row's end may ask for less than nothing: no kerf.</summary>
    private readonly int reach;

    /// <param name="share">How many of each item there are.</param>
    /// <param name="values">By item.</param>
    /// <param name="highestMm">Of items no higher than this only.</param>
    public RowValues(
        NestProblem problem,
        Share share,
        int kind,
        double[] values,
        Patience patience,
        double highestMm = double.PositiveInfinity
    )
    {
        double longest = problem.LongestLedMm(kind);
        step = Math.Max(1, longest / MostCells);
        cells = Cells(longest);
        EndTable ends = problem.Ends;
        var stages = new List<int>();
        foreach (
            int i in problem
                .Serving[kind]
                .OrderByDescending(i => problem.Worth(i, values) / Math.Max(1e-3, ends.SizeMm(i)))
                .ThenBy(i => i)
        )
        {
            double alone = RowOrder.Least(ends, [i]);
            if (
                problem.Items[i].HeightMm > highestMm
                || problem.Worth(i, values) <= 0
                || alone > longest + Fudge
            )
            {
                continue;
            }

            int copies = Math.Min(
                problem.Available(i, share),
                1 + (int)((longest - alone) / Math.Max(1e-3, ends.SizeMm(i)))
            );
            firstStage[i] = stages.Count;
            stages.AddRange(Enumerable.Repeat(i, copies));
        }

        stageItem = [.. stages];
        int n = stageItem.Length;
        size = [.. stageItem.Select(i => Cells(ends.SizeMm(i)))];
        leastEnd =
        [
            .. stageItem.Select(i => Cells(Math.Min(ends.AtRowEndMm(i, 0), ends.AtRowEndMm(i, 1)))),
        ];
        otherEnd =
        [
            .. stageItem.Select(i => Cells(Math.Max(ends.AtRowEndMm(i, 0), ends.AtRowEndMm(i, 1)))),
        ];
        worth = [.. stageItem.Select(i => (float)problem.Worth(i, values))];
        reach = 4 - (2 * Math.Min(0, leastEnd.Concat(otherEnd).DefaultIfEmpty(0).Min()));
        // Some tens of megabytes for a thousand things, wanted again at once: rented.
        table = ArrayPool<float>.Shared.Rent((n + 1) * 3 * Width);
        IsWhole = Fill(patience);
    }

    /// <summary>False where there was no time to work it out; then it knows no limits.</summary>
    public bool IsWhole { get; }

    /// <summary>No row that is this long is worth more.</summary>
    public double AtMost(double lengthMm)
    {
        if (!IsWhole)
        {
            return double.PositiveInfinity;
        }

        int c = Cells(lengthMm);
        return c < 0 ? 0 : Math.Max(0, At(0, 2, Math.Min(c, cells)) * (1 + Rounding));
    }

    /// <summary>Nothing that is laid behind what is there already, in what is left of a strip, is worth more; negative infinity where nothing fits.</summary>
    public double Rest(double lengthMm) =>
        At(0, 1, Math.Min(Cells(lengthMm), cells)) * (1 + Rounding);

    /// <summary>The same where only what comes after so many of an item in this order is still to be laid.</summary>
    public double RestAfter(int item, int laid, double lengthMm) =>
        firstStage.TryGetValue(item, out int stage)
            ? At(Math.Min(stage + laid, stageItem.Length), 1, Math.Min(Cells(lengthMm), cells))
                * (1 + Rounding)
            : Rest(lengthMm);

    private int Cells(double mm) => (int)Math.Floor((mm / step) + Fudge);

    /// <summary>So fine at the most.</summary>
    private const int MostCells = 16_000;

    private int Width => cells + (2 * reach) + 1;

    public void Dispose() => ArrayPool<float>.Shared.Return(table);

    private float At(int stage, int open, int left)
    {
        int at = left + reach;
        return at < 0
            ? float.NegativeInfinity
            : table[Index(stage, open) + Math.Min(at, Width - 1)];
    }

    private int Index(int stage, int open) => ((stage * 3) + open) * Width;

    /// <summary>By stage, ends of the row still open, and length left: the most that the things from that stage on add.</summary>
    private bool Fill(Patience patience)
    {
        int n = stageItem.Length;
        table.AsSpan(Index(n, 0), 3 * Width).Fill(float.NegativeInfinity);
        table.AsSpan(Index(n, 0) + reach, Width - reach).Clear();
        for (int s = n - 1; s >= 0; s--)
        {
            if (patience.IsOver)
            {
                return false;
            }

            for (int open = 0; open < 3; open++)
            {
                Span<float> to = table.AsSpan(Index(s, open), Width);
                Stage(s + 1, open).CopyTo(to);
                Take(Stage(s + 1, open), to, size[s], worth[s]);
                if (open > 0)
                {
                    Take(Stage(s + 1, open - 1), to, size[s] + leastEnd[s], worth[s]);
                }

                if (open > 1)
                {
                    Take(Stage(s + 1, 0), to, size[s] + leastEnd[s] + otherEnd[s], worth[s]);
                }
            }
        }

        return true;
    }

    private ReadOnlySpan<float> Stage(int stage, int open) =>
        table.AsSpan(Index(stage, open), Width);

    private static void Take(ReadOnlySpan<float> from, Span<float> to, int size, float worth)
    {
        int shift = Math.Max(0, size);
        if (shift < to.Length)
        {
            Maxima.Raise(to[shift..], from, worth);
        }
    }
}
