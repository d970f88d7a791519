using System.Collections.Immutable;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Shapes;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Rows;

/// <summary>
/// Pitches between things in rows, and for every end of every thing the least that it ever asks of a row: no row is shorter than the sum of these. Until all pitches are
/// worked out each is worked when it is asked for, and what a thing asks at the least is told from its shape alone.
/// </summary>
internal sealed class EndTable
{
    /// <summary>Of more poses all pitches take longer than a moment: some seconds, or minutes (our own, as measured on two slow cores).</summary>
    private const int ManyPoses = 1200;

    /// <summary>Of more poses all pitches would take more memory than a computer in a yard can be asked for, a gigabyte and more (our own, no source).</summary>
    private const int MostPoses = 12_000;

    private readonly ImmutableArray<NestItem> items;
    private readonly ItemPose[] all;
    private readonly int[] firstPose;
    private readonly int[] itemOf;
    private readonly RowTurns? turns;
    private readonly int poses;

    /// <summary>By pose and by the one after it; none before all are worked out, and no turns where no end may be turned.</summary>
    private (double[][] Pitches, RowTurn[][] Turned)? worked;

    private (double[] Half, double[] Beyond) least;

    /// <param name="turns">How ends left long may be turned in rows; null where all stay as they are.</param>
    public EndTable(ImmutableArray<NestItem> items, double kerfMm, RowTurns? turns = null)
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
        all = [.. items.SelectMany(i => i.Poses)];
        itemOf = [.. items.SelectMany((item, i) => item.Poses.Select(_ => i))];
        least = EndLeast.OfShapes(items, kerfMm);
    }

    /// <summary>Works all pitches between poses, which takes about a microsecond a pair, if there is time enough for it and room.</summary>
    /// <returns>Whether all are there.</returns>
    public bool WorkOut(Patience patience)
    {
        if (IsWhole)
        {
            return true;
        }

        if (poses > MostPoses || patience.IsOver)
        {
            return false;
        }

        double[][] pitches = new double[poses][];
        var turned = new RowTurn[turns is null ? 0 : poses][];
        bool over = false;
        Parallel.For(
            0,
            poses,
            (p, loop) =>
            {
                if (patience.IsOver)
                {
                    Volatile.Write(ref over, true);
                    loop.Stop();
                    return;
                }

                double[] row = pitches[p] = new double[poses];
                RowTurn[]? its = turns is null ? null : turned[p] = new RowTurn[poses];
                for (int q = 0; q < poses; q++)
                {
                    (row[q], RowTurn turn) = Worked(p, q);
                    its?[q] = turn;
                }
            }
        );
        if (over)
        {
            return false;
        }

        least = EndLeast.OfPitches(items, pitches);
        worked = (pitches, turned);
        Short = ShortPoses.Of(
            pitches,
            all,
            [.. all.Select((p, i) => HalfMm(itemOf[i], 1 - p.RightEnd))],
            [.. all.Select((p, i) => HalfMm(itemOf[i], p.RightEnd))],
            [
                .. all.Select(
                    (_, i) =>
                        (
                            turns?.IsTurnable(i, far: false) != true,
                            turns?.IsTurnable(i, far: true) != true
                        )
                ),
            ]
        );
        return true;
    }

    /// <summary>What neighbours come too near to each other over; null before all pitches are worked out.</summary>
    public ShortPoses? Short { get; private set; }

    /// <summary>Which of all poses of all things one is.</summary>
    public int PoseOf(int item, int pose) => firstPose[item] + pose;

    /// <summary>From the least x of one of all poses to that of each after it, once all are worked out.</summary>
    public double[] PitchesMm(int pose) => worked!.Value.Pitches[pose];

    private (double PitchMm, RowTurn Turn) Worked(int p, int q)
    {
        double pitch = Pitch.Of(all[p].Shape, all[q].Shape, KerfMm);
        return turns is null ? (pitch, RowTurn.None) : turns.Least(p, q, pitch, KerfMm);
    }

    /// <summary>So many things that all their pitches take longer than a moment.</summary>
    public bool IsOfMany => poses > ManyPoses;

    public ImmutableArray<NestItem> Items => items;

    public double KerfMm { get; }

    /// <summary>All pitches are worked out.</summary>
    public bool IsWhole => worked is not null;

    /// <summary>From the least x of an item in one pose to that of the next.</summary>
    public double PitchMm(int item, int pose, int next, int nextPose) =>
        PitchMm(firstPose[item] + pose, firstPose[next] + nextPose);

    private double PitchMm(int p, int q) =>
        worked is { } its ? its.Pitches[p][q] : Worked(p, q).PitchMm;

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

    private RowTurn TurnOf(ImmutableArray<int> row, ImmutableArray<int> rowPoses, int one, int next)
    {
        int p = firstPose[row[one]] + rowPoses[one],
            q = firstPose[row[next]] + rowPoses[next];
        return worked is { } its ? its.Turned[p][q] : Worked(p, q).Turn;
    }

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
    public double SizeMm(int item) => least.Half[2 * item] + least.Half[(2 * item) + 1];

    /// <summary>The share of that which lies on one end's side of the item's middle.</summary>
    public double HalfMm(int item, int end) => least.Half[(2 * item) + end];

    /// <summary>What more it asks, at the least, where an end of it is at the row's end; may be less than nought, since there is no kerf.</summary>
    public double AtRowEndMm(int item, int end) => least.Beyond[(2 * item) + end];
}
