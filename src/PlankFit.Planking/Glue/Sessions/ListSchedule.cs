using System.Collections.Immutable;

namespace PlankFit.Planking.Glue.Sessions;

/// <summary>When each task begins, minutes from the beginning.</summary>
public sealed record Timetable(ImmutableArray<double> Starts, double EndMinutes);

/// <summary>
/// Lists worked off by hand: whenever something ends, what is ready and stands first in the list is begun, as long as there are hands for it (list scheduling,
/// Graham 1969, from memory). With more hands it can end later; that is why a bound stands beside it.
/// </summary>
public static class ListSchedule
{
    /// <summary>The list that has the longest remaining chain first, ties as the tasks stand.</summary>
    public static ImmutableArray<int> LongestChainFirst(IReadOnlyList<GangTask> tasks)
    {
        ImmutableArray<double> chains = Chains.Remaining(tasks);
        return [.. Enumerable.Range(0, tasks.Count).OrderByDescending(i => chains[i])];
    }

    /// <summary>
    /// A task with followers that may not wait long is begun only where these have hands in time, which are kept for them. Null where something finds no time at all:
    /// more hands wanted than there are, or windows that no order of this kind keeps.
    /// </summary>
    public static Timetable? Of(IReadOnlyList<GangTask> tasks, int hands, ImmutableArray<int> list)
    {
        double?[] starts = new double?[tasks.Count];
        var inUse = new HandsInUse(hands);
        var times = new SortedSet<double> { 0 };
        int left = tasks.Count;
        while (left > 0 && times.Count > 0)
        {
            double now = times.Min;
            times.Remove(now);
            foreach (int i in list)
            {
                if (starts[i] is not null)
                {
                    continue;
                }

                var placed = new List<int>();
                int before = inUse.Count;
                if (Begins(i, now, placed))
                {
                    left -= placed.Count;
                    foreach (int p in placed)
                    {
                        double end = starts[p]!.Value + tasks[p].Minutes;
                        times.Add(end);
                        times.UnionWith(Waits(p).Select(lag => end + lag));
                    }
                }
                else
                {
                    placed.ForEach(p => starts[p] = null);
                    inUse.Undo(before);
                }
            }

            times.RemoveWhere(t => t <= now);
        }

        return left > 0
            ? null
            : new(
                [.. starts.Select(s => s!.Value)],
                tasks.Select((t, i) => starts[i]!.Value + t.Minutes).DefaultIfEmpty(0).Max()
            );

        IEnumerable<double> Waits(int task) =>
            tasks
                .SelectMany(t => t.After)
                .Where(l => l.Task == task && l.LeastMinutes > 0)
                .Select(l => l.LeastMinutes);

        bool Begins(int i, double at, List<int> placed)
        {
            if (!Ready(i, at) || !inUse.Free(at, at + tasks[i].Minutes, tasks[i].Hands))
            {
                return false;
            }

            Place(i, at, placed);
            return Tied(i).All(f => Follows(f, placed));
        }

        bool Follows(int f, List<int> placed)
        {
            if (starts[f] is not null)
            {
                return true;
            }

            if (tasks[f].After.Any(l => starts[l.Task] is null))
            {
                return false;
            }

            double earliest = tasks[f].After.Max(l => Ended(l.Task) + l.LeastMinutes);
            double at = inUse.FirstFree(earliest, tasks[f].Minutes, tasks[f].Hands);
            if (!Ready(f, at) || !inUse.Free(at, at + tasks[f].Minutes, tasks[f].Hands))
            {
                return false;
            }

            Place(f, at, placed);
            return Tied(f).All(next => Follows(next, placed));
        }

        void Place(int i, double at, List<int> placed)
        {
            starts[i] = at;
            inUse.Take(at, at + tasks[i].Minutes, tasks[i].Hands);
            placed.Add(i);
        }

        double Ended(int i) => starts[i]!.Value + tasks[i].Minutes;

        bool Ready(int i, double at) =>
            tasks[i]
                .After.All(l =>
                    starts[l.Task] is not null
                    && at >= Ended(l.Task) + l.LeastMinutes - 1e-9
                    && at <= Ended(l.Task) + (l.MostMinutes ?? double.PositiveInfinity) + 1e-9
                );

        IEnumerable<int> Tied(int task) =>
            Enumerable
                .Range(0, tasks.Count)
                .Where(f => tasks[f].After.Any(l => l.Task == task && l.MostMinutes is not null));
    }
}
