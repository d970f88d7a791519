using System.Collections.Immutable;
using PlankFit.Nesting.Effort;
using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Search;

/// <summary>
/// Does without one board of a plan where things lie in any order alike: what lay in it is put into other strips, more than they hold, and then what lies in two strips is
/// shared out between them anew, again and again by chance, in the way that is the least too much, until nothing is (after the redistribution of loads of Alvim, Ribeiro,
/// Glover and Aloise 2004, from memory).
/// </summary>
internal sealed class Repacking
{
    /// <summary>So many times two strips are shared out anew in one attempt.</summary>
    private const int Tries = 300_000;
    private const int AskEvery = 4096;

    /// <summary>So many things of two strips are shared out at once: all ways are looked at.</summary>
    private const int AtOnce = 10;
    private const double FitsMm = 1e-7;

    private readonly NestProblem problem;
    private readonly Random chance;
    private readonly double[] roomMm;
    private readonly double gapMm;
    private readonly List<Strip> strips = [];

    private Repacking(NestProblem problem, Random chance)
    {
        (this.problem, this.chance) = (problem, chance);
        gapMm = problem.Ends.PitchMm(0, 0, 0, 0) - problem.Items[0].Poses[0].Shape.LengthMm;
        roomMm = [.. problem.Items.Select(i => i.Poses[0].Shape.LengthMm + gapMm)];
    }

    /// <param name="leastCost">No plan costs less: boards are left where the plan would.</param>
    /// <returns>Null where no board was found that it can do without.</returns>
    public static CuttingPlan? Once(
        NestProblem problem,
        CuttingPlan plan,
        double leastCost,
        RowBook book,
        Random chance,
        Patience patience
    )
    {
        double cost = plan.Cost(problem);
        int[] droppable =
        [
            .. Enumerable
                .Range(0, plan.Boards.Length)
                .Where(b =>
                    cost - problem.Boards[plan.Boards[b].Board].Cost >= leastCost * (1 - 1e-9)
                )
                .OrderBy(b => plan.Boards[b].Filled(problem)),
        ];
        if (droppable.Length == 0 || plan.Boards.Length < 2)
        {
            return null;
        }

        // The emptiest mostly; any of the others once in a while.
        int drop = droppable[chance.Next(1 + chance.Next(droppable.Length))];
        return new Repacking(problem, chance).Without(plan, drop, book, patience);
    }

    private CuttingPlan? Without(CuttingPlan plan, int drop, RowBook book, Patience patience)
    {
        for (int b = 0; b < plan.Boards.Length; b++)
        {
            if (b != drop)
            {
                AddStrips(plan.Boards[b], b);
            }
        }

        int[] homeless = [.. plan.Boards[drop].Rows.SelectMany(r => r.Row.Items)];
        if (
            strips.Sum(s => s.FreeMm) < homeless.Sum(i => roomMm[i])
            || !homeless.OrderByDescending(i => roomMm[i]).All(Lodge)
        )
        {
            return null;
        }

        for (int t = 0; t < Tries && strips.Exists(s => s.OverMm > FitsMm); t++)
        {
            if (t % AskEvery == 0 && patience.IsOver)
            {
                return null;
            }

            Share(t % 2 == 0 ? Overfull() : strips[chance.Next(strips.Count)]);
        }

        return strips.Exists(s => s.OverMm > FitsMm) ? null : Laid(plan, book);
    }

    private void AddStrips(CuttingPlanBoard board, int index)
    {
        for (int l = 0; l < board.Ripping.Lanes.Length; l++)
        {
            RippedLane lane = board.Ripping.Lanes[l];
            int kind = problem.Kind(lane.Class, problem.Boards[board.Board].Sort);
            for (int s = 0; s < lane.Stretches.Length; s++)
            {
                LaneRow? row = board.Rows.FirstOrDefault(r => r.Lane == l && r.Stretch == s);
                int[] items = [.. row?.Row.Items ?? []];
                strips.Add(
                    new(index, l, s, kind, lane.Stretches[s].LengthMm + gapMm)
                    {
                        Items = items,
                        LoadMm = items.Sum(i => roomMm[i]),
                    }
                );
            }
        }
    }

    /// <summary>Into the strip that has most room for it, or least too little.</summary>
    private bool Lodge(int item)
    {
        Strip? into = strips
            .Where(s => problem.Serves(s.Kind, item) && s.RoomMm >= roomMm[item])
            .MaxBy(s => s.FreeMm);
        if (into is null)
        {
            return false;
        }

        into.Items = [.. into.Items, item];
        into.LoadMm += roomMm[item];
        return true;
    }

    private Strip Overfull()
    {
        // From a place by chance on, the first.
        int from = chance.Next(strips.Count);
        for (int i = 0; i < strips.Count; i++)
        {
            Strip strip = strips[(from + i) % strips.Count];
            if (strip.OverMm > FitsMm)
            {
                return strip;
            }
        }

        return strips[from];
    }

    /// <summary>What lies in a strip and in another by chance, shared out anew: of all ways one of those that are the least too much.</summary>
    private void Share(Strip one)
    {
        Strip other = strips[chance.Next(strips.Count)];
        if (ReferenceEquals(one, other))
        {
            return;
        }

        Span<int> moving = stackalloc int[AtOnce];
        int count = Moving(one, other, moving);
        double fixedOne = one.LoadMm,
            both = one.LoadMm + other.LoadMm;
        for (int i = 0; i < Math.Min(count, AtOnce); i++)
        {
            fixedOne -= IsOf(one, moving[i]) ? roomMm[ItemOf(one, other, moving[i])] : 0;
        }

        count = Math.Min(count, AtOnce);
        int best = 0,
            alike = 0,
            set = 0;
        double least = double.PositiveInfinity,
            load = fixedOne;
        // Each set differs from the one before it by one thing.
        for (int step = 1; ; step++)
        {
            double over = Math.Max(0, load - one.RoomMm) + Math.Max(0, both - load - other.RoomMm);
            if (over < least - FitsMm)
            {
                (least, best, alike) = (over, set, 1);
            }
            else if (over <= least + FitsMm && chance.Next(++alike) == 0)
            {
                best = set;
            }

            if (step == 1 << count)
            {
                break;
            }

            int bit = System.Numerics.BitOperations.TrailingZeroCount(step);
            set ^= 1 << bit;
            double room = roomMm[ItemOf(one, other, moving[bit])];
            load += (set & (1 << bit)) != 0 ? room : -room;
        }

        Move(one, other, moving[..count], best);
    }

    private static bool IsOf(Strip one, int place) => place < one.Items.Length;

    private static int ItemOf(Strip one, Strip other, int place) =>
        IsOf(one, place) ? one.Items[place] : other.Items[place - one.Items.Length];

    /// <summary>Places of things that either strip may take, those of the one first; where they are too many, some by chance.</summary>
    private int Moving(Strip one, Strip other, Span<int> moving)
    {
        int count = 0,
            all = one.Items.Length + other.Items.Length;
        for (int place = 0; place < all; place++)
        {
            int item = ItemOf(one, other, place);
            if (!problem.Serves(one.Kind, item) || !problem.Serves(other.Kind, item))
            {
                continue;
            }

            int at = count < AtOnce ? count : chance.Next(count + 1);
            if (at < AtOnce)
            {
                moving[at] = place;
            }

            count++;
        }

        return count;
    }

    private void Move(Strip one, Strip other, ReadOnlySpan<int> moving, int toOne)
    {
        var first = new List<int>();
        var second = new List<int>();
        int all = one.Items.Length + other.Items.Length;
        for (int place = 0; place < all; place++)
        {
            int at = moving.IndexOf(place);
            bool isFirst = at < 0 ? IsOf(one, place) : (toOne & (1 << at)) != 0;
            (isFirst ? first : second).Add(ItemOf(one, other, place));
        }

        (one.Items, other.Items) = ([.. first], [.. second]);
        one.LoadMm = first.Sum(i => roomMm[i]);
        other.LoadMm = second.Sum(i => roomMm[i]);
    }

    private CuttingPlan? Laid(CuttingPlan plan, RowBook book)
    {
        ImmutableArray<CuttingPlanBoard>.Builder boards =
            ImmutableArray.CreateBuilder<CuttingPlanBoard>();
        foreach (IGrouping<int, Strip> board in strips.GroupBy(s => s.Board))
        {
            ImmutableArray<LaneRow>.Builder rows = ImmutableArray.CreateBuilder<LaneRow>();
            foreach (Strip strip in board.Where(s => s.Items.Length > 0))
            {
                Row row = book.Of(strip.Items);
                if (row.LengthMm > strip.RoomMm - gapMm + FitsMm)
                {
                    return null;
                }

                rows.Add(new(strip.Lane, strip.Stretch, row));
            }

            if (rows.Count > 0)
            {
                boards.Add(plan.Boards[board.Key] with { Rows = rows.ToImmutable() });
            }
        }

        return new(boards.ToImmutable());
    }

    /// <summary>A clear stretch of a lane, as long as it is and a gap more; each thing in it takes its length and a gap.</summary>
    private sealed class Strip(int board, int lane, int stretch, int kind, double roomMm)
    {
        public int Board => board;

        public int Lane => lane;

        public int Stretch => stretch;

        public int Kind => kind;

        public double RoomMm => roomMm;

        public int[] Items { get; set; } = [];

        public double LoadMm { get; set; }

        public double FreeMm => roomMm - LoadMm;

        public double OverMm => Math.Max(0, LoadMm - roomMm);
    }
}
