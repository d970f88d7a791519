using PlankFit.Nesting.Model;

namespace PlankFit.Nesting.Rows;

/// <summary>
/// Things so short, or so low, that they find room under their neighbours' ends: by its two pitches with them alone such a thing would bring these nearer to each
/// other than they may come, and a row would be the shorter for holding it. What follows it must keep clear of what lies before it as well, of which a few groups
/// are told apart.
/// </summary>
internal sealed class ShortPoses
{
    /// <summary>What neighbours would come too near to each other by, mm, before it is worth looking at.</summary>
    private const double NearMm = 0.5;

    /// <summary>So many are looked at, the shortest first; fewer where there are so many poses that it would take longer than a moment.</summary>
    private const int Most = 48;
    private const double Work = 3e8;

    /// <summary>So many groups for each: what comes nearest over it in one, and so on.</summary>
    public const int Groups = 8;

    private readonly double[][] pitches;
    private readonly (bool Left, bool Right)[] asTheyAre;

    /// <summary>By pose and the one before it; no row where it is not short.</summary>
    private readonly sbyte[]?[] group;

    /// <summary>By pose, group and the pose behind it.</summary>
    private readonly double[]?[][] behind;

    private ShortPoses(double[][] pitches, (bool Left, bool Right)[] asTheyAre)
    {
        (this.pitches, this.asTheyAre) = (pitches, asTheyAre);
        group = new sbyte[]?[pitches.Length];
        behind = new double[]?[pitches.Length][];
    }

    /// <param name="pitches">By pose and by the one after it.</param>
    /// <param name="leftMm">By pose, the least that its left end asks of any row, and so its right end.</param>
    /// <param name="asTheyAre">By pose, whether its left end, and its right one, are never turned to a neighbour's angle: of others the pitch says nothing but of neighbours.</param>
    public static ShortPoses Of(
        double[][] pitches,
        ItemPose[] poses,
        double[] leftMm,
        double[] rightMm,
        (bool Left, bool Right)[] asTheyAre
    )
    {
        var its = new ShortPoses(pitches, asTheyAre);
        int n = pitches.Length;
        double[] size = [.. leftMm.Zip(rightMm, (a, b) => a + b)];
        double widest = 0;
        for (int a = 0; a < n; a++)
        {
            for (int b = 0; asTheyAre[a].Right && b < n; b++)
            {
                double beyond =
                    pitches[a][b] - poses[a].CentreMm + poses[b].CentreMm - rightMm[a] - leftMm[b];
                widest = asTheyAre[b].Left ? Math.Max(widest, beyond) : widest;
            }
        }

        foreach (
            int t in Enumerable
                .Range(0, n)
                .Where(t => size[t] < widest - NearMm)
                .OrderBy(t => size[t])
                .ThenBy(t => t)
                .Take((int)Math.Min(Most, Work / ((double)n * n)))
        )
        {
            its.Look(t);
        }

        return its;
    }

    /// <summary>Over it neighbours may come too near to each other.</summary>
    public bool IsShort(int pose) => group[pose] is not null;

    /// <summary>To which of its groups belongs what lies just before it; -1 where it is not short, or what follows surely keeps clear of that.</summary>
    public int Group(int pose, int before) => group[pose]?[before] ?? -1;

    /// <summary>From the least x of a short one to that of the next, if it lies as near as may be to one of a group before it.</summary>
    public double BehindMm(int pose, int its, int next) => behind[pose][its]![next];

    /// <summary>From the least x of one to that of another behind it with others between, at the least; negative infinity where nothing is known.</summary>
    public double ApartMm(int one, int other) =>
        asTheyAre[one].Right && asTheyAre[other].Left
            ? pitches[one][other]
            : double.NegativeInfinity;

    private void Look(int t)
    {
        int n = pitches.Length;
        double[] most = new double[n];
        for (int a = 0; a < n; a++)
        {
            for (int b = 0; asTheyAre[a].Right && b < n; b++)
            {
                if (asTheyAre[b].Left)
                {
                    most[a] = Math.Max(most[a], pitches[a][b] - pitches[a][t] - pitches[t][b]);
                }
            }
        }

        int[] near =
        [
            .. Enumerable
                .Range(0, n)
                .Where(a => most[a] > NearMm)
                .OrderBy(a => most[a])
                .ThenBy(a => a),
        ];
        if (near.Length == 0)
        {
            return;
        }

        sbyte[] its = new sbyte[n];
        Array.Fill(its, (sbyte)-1);
        behind[t] = new double[]?[Groups];
        for (int g = 0; g < Groups; g++)
        {
            int[] alike = near[(g * near.Length / Groups)..((g + 1) * near.Length / Groups)];
            foreach (int a in alike)
            {
                its[a] = (sbyte)g;
            }

            behind[t][g] =
            [
                .. Enumerable
                    .Range(0, n)
                    .Select(b =>
                        Math.Max(
                            pitches[t][b],
                            alike.Select(a => ApartMm(a, b) - pitches[a][t]).DefaultIfEmpty(0).Min()
                        )
                    ),
            ];
        }

        group[t] = its;
    }
}
