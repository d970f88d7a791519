using System.Collections.Immutable;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Shapes;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Rows;

/// <summary>
/// All pitches between things in rows, and from them for every end of every thing the least that it ever asks of a row: no row is shorter than the sum of these.
/// </summary>
internal sealed class EndTable
{
    private readonly ImmutableArray<NestItem> items;
    private readonly int[] firstPose;
    private readonly double[] pitches;
    private readonly RowTurn[] turned;
    private readonly RowTurns? turns;
    private readonly int poses;
    private readonly double[] half;
    private readonly double[] beyond;
    private bool boxes;

    /// <summary>Works all pitches between poses, which takes some microseconds a pair; where there is no time for that, things lie apart as boxes do.</summary>
    /// <param name="turns">How ends left long may be turned in rows; null where all stay as they are.</param>
    public EndTable(
        ImmutableArray<NestItem> items,
        double kerfMm,
        Patience patience,
        RowTurns? turns = null
    )
    {
        this.turns = turns;
        this.items = items;
        KerfMm = kerfMm;
        firstPose = new int[items.Length + 1];
        for (int i = 0; i < items.Length; i++)
        {
            firstPose[i + 1] = firstPose[i] + items[i].Poses.Length;
        }

        poses = firstPose[^1];
        ItemPose[] all = [.. items.SelectMany(i => i.Poses)];
        pitches = new double[(long)poses * poses];
        turned = turns is null ? [] : new RowTurn[pitches.LongLength];
        Parallel.For(
            0,
            poses,
            p =>
            {
                bool asBoxes = patience.IsOver;
                for (int q = 0; q < poses; q++)
                {
                    long at = ((long)p * poses) + q;
                    pitches[at] = asBoxes
                        ? all[p].Shape.LengthMm + kerfMm
                        : Pitch.Of(all[p].Shape, all[q].Shape, kerfMm);
                    if (turns is not null && !asBoxes)
                    {
                        (pitches[at], turned[at]) = turns.Least(p, q, pitches[at], kerfMm);
                    }
                }

                if (asBoxes)
                {
                    Volatile.Write(ref boxes, true);
                }
            }
        );

        (half, beyond) = Halves(all);
    }

    public ImmutableArray<NestItem> Items => items;

    public double KerfMm { get; }

    /// <summary>All pitches are worked out, and no row is longer than it need be.</summary>
    public bool IsWhole => !boxes;

    /// <summary>From the least x of an item in one pose to that of the next.</summary>
    public double PitchMm(int item, int pose, int next, int nextPose) =>
        pitches[((long)(firstPose[item] + pose) * poses) + firstPose[next] + nextPose];

    /// <summary>Which ends are turned in a row; none where all stay as they are.</summary>
    public ImmutableArray<TurnedTo> Turned(ImmutableArray<int> row, ImmutableArray<int> rowPoses) =>
        turns is null
            ? []
            :
            [
                .. row.Select(
                    (_, i) => new TurnedTo(Before(row, rowPoses, i), After(row, rowPoses, i))
                ),
            ];

    /// <summary>A thing in a row in its pose, with its ends as they are turned there.</summary>
    public RowShape Shape(int item, int pose, TurnedTo to) =>
        turns?.In(firstPose[item] + pose, to.Before, to.After) ?? items[item].Poses[pose].Shape;

    /// <summary>The piece of it, as it is sawn there.</summary>
    public LaidPiece Sawn(Row row, int place, LaidPiece laid) =>
        row.Turned.IsEmpty
            ? laid
            : turns!.Of(laid, row.Turned[place].Before, row.Turned[place].After);

    /// <summary>From the least x of one thing in a row to that of a later one, as they are there; least x of what it is with its ends as asked.</summary>
    public double PitchMm(
        ImmutableArray<int> row,
        ImmutableArray<int> rowPoses,
        ImmutableArray<RowShape> shapes,
        int one,
        int next
    )
    {
        bool asked =
            turns is null
            || (
                ReferenceEquals(shapes[one], items[row[one]].Poses[rowPoses[one]].Shape)
                && ReferenceEquals(shapes[next], items[row[next]].Poses[rowPoses[next]].Shape)
                && TurnOf(row, rowPoses, one, next) == RowTurn.None
            );
        return asked
            ? PitchMm(row[one], rowPoses[one], row[next], rowPoses[next])
            : Pitch.Of(shapes[one], shapes[next], KerfMm);
    }

    private RowTurn TurnOf(
        ImmutableArray<int> row,
        ImmutableArray<int> rowPoses,
        int one,
        int next
    ) =>
        turned[
            ((long)(firstPose[row[one]] + rowPoses[one]) * poses)
                + firstPose[row[next]]
                + rowPoses[next]
        ];

    /// <summary>The pose before one in a row that its end is turned to.</summary>
    private int? Before(ImmutableArray<int> row, ImmutableArray<int> rowPoses, int i) =>
        i > 0 && TurnOf(row, rowPoses, i - 1, i) == RowTurn.Second
            ? firstPose[row[i - 1]] + rowPoses[i - 1]
            : null;

    private int? After(ImmutableArray<int> row, ImmutableArray<int> rowPoses, int i) =>
        i + 1 < row.Length && TurnOf(row, rowPoses, i, i + 1) == RowTurn.First
            ? firstPose[row[i + 1]] + rowPoses[i + 1]
            : null;

    /// <summary>What an item asks of a row at the least, its share of kerfs with it, mm.</summary>
    public double SizeMm(int item) => half[2 * item] + half[(2 * item) + 1];

    /// <summary>The share of that which lies on one end's side of the item's middle.</summary>
    public double HalfMm(int item, int end) => half[(2 * item) + end];

    /// <summary>What more it asks, at the least, where an end of it is at the row's end; may be less than nought, since there is no kerf.</summary>
    public double AtRowEndMm(int item, int end) => beyond[(2 * item) + end];

    /// <summary>
    /// The halves h, so that h(E) + h(F) is never more than the distance of two middles where the ends E and F meet. An end that meets its own like, turned, asks for half
    /// of that distance; what any other end asks beyond both halves is divided evenly.
    /// </summary>
    private (double[] Half, double[] Beyond) Halves(ItemPose[] all)
    {
        int ends = 2 * items.Length;
        double[,] meet = new double[ends, ends];
        int[] own = new int[poses];
        for (int i = 0; i < items.Length; i++)
        {
            Array.Fill(own, i, firstPose[i], firstPose[i + 1] - firstPose[i]);
        }

        for (int e = 0; e < ends; e++)
        {
            for (int f = 0; f < ends; f++)
            {
                meet[e, f] = double.PositiveInfinity;
            }
        }

        for (int p = 0; p < poses; p++)
        {
            int e = (2 * own[p]) + all[p].RightEnd;
            for (int q = 0; q < poses; q++)
            {
                int f = (2 * own[q]) + (1 - all[q].RightEnd);
                double between = pitches[((long)p * poses) + q] - all[p].CentreMm + all[q].CentreMm;
                meet[e, f] = Math.Min(meet[e, f], between);
            }
        }

        double[] start = new double[ends];
        for (int e = 0; e < ends; e++)
        {
            // Where turning is not allowed an end never meets its like: its own reach will do.
            start[e] = double.IsFinite(meet[e, e]) ? meet[e, e] / 2 : Reach(all, e);
        }

        double[] half = new double[ends];
        double[] over = new double[ends];
        for (int e = 0; e < ends; e++)
        {
            double spare = double.PositiveInfinity;
            for (int f = 0; f < ends; f++)
            {
                spare = Math.Min(spare, Math.Min(meet[e, f], meet[f, e]) - start[e] - start[f]);
            }

            half[e] = start[e] + (double.IsFinite(spare) ? spare / 2 : 0);
            over[e] = Reach(all, e) - half[e];
        }

        return (half, over);
    }

    /// <summary>From an item's middle to its furthest point at that end, the least of all poses.</summary>
    private double Reach(ItemPose[] all, int end)
    {
        double least = double.PositiveInfinity;
        for (int p = firstPose[end / 2]; p < firstPose[(end / 2) + 1]; p++)
        {
            least = Math.Min(
                least,
                all[p].RightEnd == end % 2
                    ? all[p].Shape.LengthMm - all[p].CentreMm
                    : all[p].CentreMm
            );
        }

        return least;
    }
}
