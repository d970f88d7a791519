using System.Collections.Immutable;
using PlankFit.Nesting.Shapes;

namespace PlankFit.Nesting.Rows;

/// <summary>The shortest row of given things: their order and poses.</summary>
internal static class RowOrder
{
    /// <summary>Up to so many things every order is weighed (Held and Karp, 1962, from memory); with more, the best place for each in turn.</summary>
    public const int Weighed = 7;

    /// <summary>A row this near to the least possible needs no better order, mm.</summary>
    private const double GoodEnoughMm = 1e-6;

    public static Row Best(EndTable ends, IReadOnlyList<int> items)
    {
        double least = Least(ends, items);
        Row plain = Placed(ends, [.. items], [.. items.Select(_ => 0)]);
        if (items.Count == 1 || plain.LengthMm <= least + GoodEnoughMm)
        {
            return plain;
        }

        return items.Count <= Weighed ? Exact(ends, items) : Inserted(ends, items);
    }

    /// <summary>No row of these things is shorter, mm.</summary>
    public static double Least(EndTable ends, IReadOnlyList<int> items)
    {
        double sum = 0,
            first = double.PositiveInfinity,
            second = double.PositiveInfinity;
        foreach (int i in items)
        {
            sum += ends.SizeMm(i);
            for (int e = 0; e < 2; e++)
            {
                double more = ends.AtRowEndMm(i, e);
                (first, second) =
                    more < first ? (more, first)
                    : more < second ? (first, more)
                    : (first, second);
            }
        }

        return sum + first + second;
    }

    /// <summary>Each thing as near to all before it as it may be, so that straight kerfs part them all.</summary>
    public static Row Placed(EndTable ends, ImmutableArray<int> items, ImmutableArray<int> poses)
    {
        ImmutableArray<TurnedTo> turned = ends.Turned(items, poses);
        return Placed(ends, items, poses, turned, Shapes(ends, items, poses, turned));
    }

    /// <summary>The same where the row is shorter than a length; null where it is not, which is seen soonest without parting it: that makes no row shorter.</summary>
    public static Row? Shorter(
        EndTable ends,
        ImmutableArray<int> items,
        ImmutableArray<int> poses,
        double thanMm
    )
    {
        ImmutableArray<TurnedTo> turned = ends.Turned(items, poses);
        ImmutableArray<RowShape> shapes = Shapes(ends, items, poses, turned);
        double[] from = new double[items.Length];
        for (int i = 0; i < items.Length; i++)
        {
            from[i] = BehindAll(ends, items, poses, shapes, from, i);
            if (from[i] + shapes[i].LengthMm >= thanMm)
            {
                return null;
            }
        }

        Row row = Placed(ends, items, poses, turned, shapes);
        return row.LengthMm < thanMm ? row : null;
    }

    private static ImmutableArray<RowShape> Shapes(
        EndTable ends,
        ImmutableArray<int> items,
        ImmutableArray<int> poses,
        ImmutableArray<TurnedTo> turned
    ) =>
        [
            .. items.Select(
                (item, i) => ends.Shape(item, poses[i], turned.IsEmpty ? default : turned[i])
            ),
        ];

    /// <summary>Never before the strip's beginning: a long point may reach back over a short neighbour.</summary>
    private static double BehindAll(
        EndTable ends,
        ImmutableArray<int> items,
        ImmutableArray<int> poses,
        ImmutableArray<RowShape> shapes,
        double[] from,
        int i
    )
    {
        double at = -shapes[i].LeastMm;
        for (int j = 0; j < i; j++)
        {
            at = Math.Max(at, from[j] + ends.PitchMm(items, poses, shapes, j, i));
        }

        return at;
    }

    private static Row Placed(
        EndTable ends,
        ImmutableArray<int> items,
        ImmutableArray<int> poses,
        ImmutableArray<TurnedTo> turned,
        ImmutableArray<RowShape> shapes
    )
    {
        double[] from = new double[items.Length];
        var laid = new List<(RowShape Shape, double FromMm)>(items.Length);
        double length = 0,
            height = 0;
        for (int i = 0; i < items.Length; i++)
        {
            RowShape shape = shapes[i];
            from[i] = RowParting.From(
                laid,
                shape,
                BehindAll(ends, items, poses, shapes, from, i),
                ends.KerfMm
            );
            laid.Add((shape, from[i]));
            length = Math.Max(length, from[i] + shape.LengthMm);
            height = Math.Max(height, shape.HeightMm);
        }

        return new(
            items,
            [.. items.SelectMany(i => ends.Items[i].Parts)],
            poses,
            [.. from],
            length,
            height
        )
        {
            Turned = turned,
        };
    }

    /// <summary>A row with one thing more, put where it grows least; the rest keeps its order.</summary>
    public static Row With(EndTable ends, Row row, int item)
    {
        int n = row.Items.Length,
            bestAt = 0,
            bestPose = 0;
        double least = double.PositiveInfinity;
        for (int at = 0; at <= n; at++)
        {
            for (int p = 0; p < ends.Items[item].Poses.Length; p++)
            {
                double before = at == 0
                        ? 0
                        : ends.PitchMm(row.Items[at - 1], row.Poses[at - 1], item, p),
                    after = at == n
                        ? ends.Items[item].Poses[p].Shape.LengthMm
                        : ends.PitchMm(item, p, row.Items[at], row.Poses[at]),
                    was = at == n
                        ? ends.Items[row.Items[n - 1]].Poses[row.Poses[n - 1]].Shape.LengthMm
                    : at == 0 ? 0
                    : ends.PitchMm(
                        row.Items[at - 1],
                        row.Poses[at - 1],
                        row.Items[at],
                        row.Poses[at]
                    );
                double more = before + after - was;
                if (more < least - GoodEnoughMm)
                {
                    (least, bestAt, bestPose) = (more, at, p);
                }
            }
        }

        return Placed(ends, row.Items.Insert(bestAt, item), row.Poses.Insert(bestAt, bestPose));
    }

    private static Row Exact(EndTable ends, IReadOnlyList<int> items)
    {
        int n = items.Count,
            all = (1 << n) - 1,
            width = items.Max(i => ends.Items[i].Poses.Length),
            slots = n * width;
        double[] at = new double[(all + 1) * slots];
        int[] came = new int[(all + 1) * slots];
        Array.Fill(at, double.PositiveInfinity);
        for (int i = 0; i < n; i++)
        {
            for (int p = 0; p < ends.Items[items[i]].Poses.Length; p++)
            {
                at[((1 << i) * slots) + (i * width) + p] = 0;
                came[((1 << i) * slots) + (i * width) + p] = -1;
            }
        }

        double[] pitches = Pitches(ends, items, width);
        for (int set = 1; set <= all; set++)
        {
            for (int s = 0; s < slots; s++)
            {
                double here = at[(set * slots) + s];
                if (double.IsPositiveInfinity(here))
                {
                    continue;
                }

                for (int j = 0; j < n; j++)
                {
                    if ((set & (1 << j)) != 0)
                    {
                        continue;
                    }

                    int next = (set | (1 << j)) * slots;
                    for (int q = 0; q < ends.Items[items[j]].Poses.Length; q++)
                    {
                        double to = here + pitches[(s * slots) + (j * width) + q];
                        if (to < at[next + (j * width) + q])
                        {
                            at[next + (j * width) + q] = to;
                            came[next + (j * width) + q] = s;
                        }
                    }
                }
            }
        }

        int best = -1;
        double least = double.PositiveInfinity;
        for (int s = 0; s < slots; s++)
        {
            double here = at[(all * slots) + s];
            if (!double.IsPositiveInfinity(here))
            {
                double length = here + ends.Items[items[s / width]].Poses[s % width].Shape.LengthMm;
                (best, least) = length < least ? (s, length) : (best, least);
            }
        }

        var order = new List<int>();
        var poses = new List<int>();
        for (int set = all, s = best; s >= 0; )
        {
            order.Add(items[s / width]);
            poses.Add(s % width);
            int before = came[(set * slots) + s];
            set &= ~(1 << (s / width));
            s = before;
        }

        order.Reverse();
        poses.Reverse();
        return Placed(ends, [.. order], [.. poses]);
    }

    /// <summary>From each of the things in each pose to each of the others: they are asked for thousands of times.</summary>
    private static double[] Pitches(EndTable ends, IReadOnlyList<int> items, int width)
    {
        int slots = items.Count * width;
        double[] pitches = new double[slots * slots];
        for (int i = 0; i < items.Count; i++)
        {
            for (int p = 0; p < ends.Items[items[i]].Poses.Length; p++)
            {
                for (int j = 0; j < items.Count; j++)
                {
                    for (int q = 0; j != i && q < ends.Items[items[j]].Poses.Length; q++)
                    {
                        pitches[(((i * width) + p) * slots) + (j * width) + q] = ends.PitchMm(
                            items[i],
                            p,
                            items[j],
                            q
                        );
                    }
                }
            }
        }

        return pitches;
    }

    /// <summary>The longest first, each put where the row grows least.</summary>
    private static Row Inserted(EndTable ends, IReadOnlyList<int> items)
    {
        int[] sorted = [.. items.OrderByDescending(ends.SizeMm)];
        return sorted
            .Skip(1)
            .Aggregate(Placed(ends, [sorted[0]], [0]), (row, item) => With(ends, row, item));
    }
}
