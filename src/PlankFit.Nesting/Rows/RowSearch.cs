using System.Collections.Immutable;
using PlankFit.Nesting.Effort;

namespace PlankFit.Nesting.Rows;

/// <summary>
/// The rows worth most in a strip of given length, laid thing by thing with their true pitches: a search in depth that goes on only where the rest of the strip
/// may still be worth enough, by <see cref="RowValues"/>.
/// </summary>
internal sealed class RowSearch(
    RowPoses poses,
    RowValues values,
    RowTails? tails,
    Patience patience,
    IReadOnlyList<int> items
)
{
    // What a pose has no worth for is not searched, whatever is left of it.
    private readonly int[] left = [.. items];
    private readonly List<int> path = [];
    private readonly List<double> begins = [];
    private readonly List<List<Step>> levels = [];
    private readonly List<(double Worth, ImmutableArray<int> Path)> best = [];

    private double limitMm;
    private double price;
    private long steps;
    private int asked;
    private Dictionary<string, Row>? all;
    private int mostOfAll;

    /// <param name="steps">The search ends after looking at so many things in so many places.</param>
    /// <returns>
    /// The dearest row, and others that the search held for the dearest on its way, dearest first, all worth more than the price; what no row is worth more than,
    /// if the search came to its end; and whether it did.
    /// </returns>
    public (List<Row> Rows, double Dearest, bool Whole) Find(
        double limitMm,
        double price,
        long steps
    )
    {
        this.limitMm = limitMm;
        this.price = price;
        this.steps = steps;
        best.Clear();
        Go(-1, 0, 0);
        var rows = new List<Row>();
        for (int i = best.Count - 1; i >= Math.Max(0, best.Count - Kept); i--)
        {
            ImmutableArray<int> found = best[i].Path;
            Row row = RowOrder.Placed(
                poses.Ends,
                [.. found.Select(s => poses.Items[s])],
                [.. found.Select(s => poses.Poses[s])]
            );
            // Over a thing too short to keep them apart its neighbours may meet each other, and then the row is longer than its pitches.
            if (row.LengthMm <= limitMm + FitsMm)
            {
                rows.Add(row);
            }
        }

        return (rows, best.Count == 0 ? price : best[^1].Worth, this.steps > 0);
    }

    /// <summary>The clock is asked once in so many places.</summary>
    private const int AskEvery = 64;

    /// <summary>So many are given.</summary>
    private const int Kept = 6;

    /// <summary>All rows worth more than a price, each set of things once and as short as it was found.</summary>
    /// <param name="most">No more than so many.</param>
    public List<Row> All(double limitMm, double price, int most, long steps)
    {
        this.limitMm = limitMm;
        this.price = price;
        this.steps = steps;
        best.Clear();
        all = [];
        mostOfAll = most;
        Go(-1, 0, 0);
        List<Row> rows = [.. all.Values];
        all = null;
        return rows;
    }

    private void Note(int last, double value)
    {
        int[] found = [.. path, last];
        if (all is null)
        {
            best.Add((value, [.. found]));
            price = value;
            return;
        }

        ImmutableArray<int> items = [.. found.Select(s => poses.Items[s])];
        string key = Row.KeyOf(items);
        double thanMm = all.TryGetValue(key, out Row? before)
            ? before.LengthMm
            : double.PositiveInfinity;
        ImmutableArray<int> lying = [.. found.Select(s => poses.Poses[s])];
        if (RowOrder.Shorter(poses.Ends, items, lying, thanMm) is { } row)
        {
            all[key] = row;
            steps = all.Count > mostOfAll ? 0 : steps;
        }
    }

    /// <summary>These things are not laid in what is searched for from now on.</summary>
    public void LeaveOut(IEnumerable<int> these)
    {
        foreach (int i in these)
        {
            left[i] = 0;
        }
    }

    private void Go(int last, double from, double value)
    {
        if (levels.Count == path.Count)
        {
            levels.Add([]);
        }

        List<Step> open = levels[path.Count];
        open.Clear();
        steps -= poses.Count;
        if (++asked % AskEvery == 0 && patience.IsOver)
        {
            steps = 0;
            return;
        }

        double[]? pitches = last < 0 ? null : poses.PitchesMm(last);
        // Over a short thing its neighbours may be nearer to each other than they may come.
        bool over = path.Count > 1 && poses.IsShort(last);
        // Where any order will do, one order of each set of things is looked at.
        for (int s = poses.AnyOrder ? Math.Max(0, last) : 0; s < poses.Count; s++)
        {
            if (!IsLeft(s))
            {
                continue;
            }

            double near = pitches is null ? 0 : from + pitches[poses.OfAll[s]],
                at = over ? Clear(s, near) : near;
            if (at + poses.LengthMm[s] > limitMm + FitsMm)
            {
                continue;
            }

            double now = value + poses.Worth[s];
            if (now > price)
            {
                Note(s, now);
            }

            double rest = limitMm - at - poses.NextMm[s];
            double most =
                now
                + (
                    poses.AnyOrder
                        ? values.RestAfter(poses.Items[s], Alike(s) + 1, rest)
                        : values.Rest(rest)
                );
            if (most > price && tails is not null)
            {
                most = Math.Min(most, now + tails.Behind(s, at > near ? -1 : last, limitMm - at));
            }

            if (most > price)
            {
                open.Add(new(s, at, now, most));
            }
        }

        // What promises most first: the dearest row is found soon, and cuts off nearly all the rest.
        open.Sort(static (a, b) => a.Most != b.Most ? b.Most.CompareTo(a.Most) : a.Pose - b.Pose);
        foreach (Step step in open)
        {
            if (step.Most <= price || steps <= 0)
            {
                break;
            }

            path.Add(step.Pose);
            begins.Add(step.AtMm);
            Take(step.Pose, 1);
            Go(step.Pose, step.AtMm, step.Worth);
            Take(step.Pose, -1);
            begins.RemoveAt(begins.Count - 1);
            path.RemoveAt(path.Count - 1);
        }
    }

    /// <summary>Where a thing begins that keeps clear of what lies before the short ones that it follows.</summary>
    private double Clear(int pose, double at)
    {
        for (int i = path.Count - 2; i >= 0; i--)
        {
            at = Math.Max(at, begins[i] + poses.ApartMm(path[i], pose));
            if (!poses.IsShort(path[i]))
            {
                break;
            }
        }

        return at;
    }

    /// <summary>How many of it were laid just before.</summary>
    private int Alike(int pose)
    {
        int count = 0;
        while (count < path.Count && path[path.Count - 1 - count] == pose)
        {
            count++;
        }

        return count;
    }

    private bool IsLeft(int pose)
    {
        if (poses.OnlyPart[pose] is >= 0 and var only)
        {
            return left[only] > 0;
        }

        ImmutableArray<int> parts = poses.Parts[pose];
        for (int i = 0; i < parts.Length; i++)
        {
            int same = 1;
            for (int j = 0; j < i; j++)
            {
                same += parts[j] == parts[i] ? 1 : 0;
            }

            if (left[parts[i]] < same)
            {
                return false;
            }
        }

        return true;
    }

    private void Take(int pose, int times)
    {
        foreach (int part in poses.Parts[pose])
        {
            left[part] -= times;
        }
    }

    /// <summary>A thing that may be laid next.</summary>
    /// <param name="Most">Nothing that begins so is worth more.</param>
    private readonly record struct Step(int Pose, double AtMm, double Worth, double Most);

    private const double FitsMm = 1e-7;
}
