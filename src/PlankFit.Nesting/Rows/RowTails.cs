namespace PlankFit.Nesting;

/// <summary>
/// What may still be laid behind a thing in its pose, at the most, by the length that is left: every pitch as it is, but a thing may be laid more than once
/// (paths with repetition, as in Christofides, Mingozzi and Toth 1981, from memory). Lengths are rounded down to steps, so that it is never too low.
/// </summary>
internal sealed class RowTails
{
    private const double Fudge = 1e-9;

    /// <summary>Lengths are rounded down to steps of this: coarse enough to be quick, and fine enough to cut most of a search off.</summary>
    private const double FineMm = 1;
    private const double MiddleMm = 2;
    private const double CoarseMm = 5;

    /// <summary>With more poses than this the steps are coarse: the work grows with the square of them.</summary>
    private const int Many = 600;
    private const int Some = 200;
    private const int MostCells = 12_000;
    private const float Rounding = 2e-6f;
    private readonly float[][] tails;
    private readonly RowPoses poses;

    private readonly double step;

    private RowTails(RowPoses poses, float[][] tails, double step)
    {
        this.step = step;
        this.poses = poses;
        this.tails = tails;
    }

    /// <returns>Null where things lie so much abreast that this is of no use, where any order will do, and where there is no time for it.</returns>
    public static RowTails? Of(RowPoses poses, double longestMm, Patience patience)
    {
        if (poses.AnyOrder)
        {
            return null;
        }

        double step = Math.Max(
            longestMm / MostCells,
            poses.Count > Many ? CoarseMm
                : poses.Count > Some ? MiddleMm
                : FineMm
        );
        int n = poses.Count,
            cells = (int)Math.Floor((longestMm / step) + Fudge);
        var pitch = new int[n][];
        int block = cells + 1;
        for (int p = 0; p < n; p++)
        {
            pitch[p] = new int[n];
            for (int q = 0; q < n; q++)
            {
                pitch[p][q] = (int)Math.Floor((poses.PitchMm(p, q) / step) + Fudge);
                block = Math.Min(block, pitch[p][q]);
            }
        }

        if (block < 1)
        {
            return null;
        }

        float[] worth = [.. poses.Worth.Select(w => (float)w)];
        float[][] tails = [.. Enumerable.Range(0, n).Select(_ => new float[cells + 1])];
        for (int p = 0; p < n; p++)
        {
            tails[p]
                .AsSpan(0, Math.Min(cells + 1, (int)Math.Floor((poses.LengthMm[p] / step) + Fudge)))
                .Fill(float.NegativeInfinity);
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
                    Span<float> tail = tails[p].AsSpan();
                    int least = (int)Math.Floor((poses.LengthMm[p] / step) + Fudge);
                    int a = Math.Max(from, least);
                    for (int q = 0; q < n; q++)
                    {
                        int begin = Math.Max(a, pitch[p][q]);
                        if (begin < to)
                        {
                            Maxima.Raise(
                                tail[begin..to],
                                tails[q].AsSpan(begin - pitch[p][q], to - begin),
                                worth[q]
                            );
                        }
                    }
                }
            );
        }

        return new(poses, tails, step);
    }

    /// <summary>Nothing laid behind a thing is worth more, with so much length left from its least x on.</summary>
    public double Behind(int pose, double leftMm)
    {
        int c = (int)Math.Floor((leftMm / step) + Fudge);
        return c < 0
            ? double.NegativeInfinity
            : tails[pose][Math.Min(c, tails[pose].Length - 1)] * (1 + Rounding);
    }

    /// <summary>No row that is this long is worth more.</summary>
    public double AtMost(double lengthMm)
    {
        double most = 0;
        for (int p = 0; p < poses.Count; p++)
        {
            most = Math.Max(most, poses.Worth[p] + Behind(p, lengthMm));
        }

        return most;
    }
}
