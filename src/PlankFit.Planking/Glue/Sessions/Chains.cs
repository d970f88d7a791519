using System.Collections.Immutable;

namespace PlankFit.Planking.Glue.Sessions;

/// <summary>What of a list of tasks hangs on what.</summary>
public static class Chains
{
    /// <summary>From the beginning of each task to the end of the longest chain that follows it, minutes, itself among it.</summary>
    /// <exception cref="ArgumentException">Tasks wait for each other in a ring.</exception>
    public static ImmutableArray<double> Remaining(IReadOnlyList<GangTask> tasks)
    {
        double[] remaining = new double[tasks.Count];
        var followers = new List<(int Task, double Lag)>[tasks.Count];
        int[] waiting = new int[tasks.Count];
        for (int i = 0; i < tasks.Count; i++)
        {
            followers[i] = [];
        }

        for (int i = 0; i < tasks.Count; i++)
        {
            foreach (TaskLink link in tasks[i].After)
            {
                followers[link.Task].Add((i, link.LeastMinutes));
                waiting[link.Task]++;
            }
        }

        var ready = new Queue<int>(Enumerable.Range(0, tasks.Count).Where(i => waiting[i] == 0));
        int done = 0;
        while (ready.TryDequeue(out int i))
        {
            done++;
            remaining[i] =
                tasks[i].Minutes
                + followers[i].Select(f => f.Lag + remaining[f.Task]).DefaultIfEmpty(0).Max();
            foreach (TaskLink link in tasks[i].After)
            {
                if (--waiting[link.Task] == 0)
                {
                    ready.Enqueue(link.Task);
                }
            }
        }

        return done == tasks.Count
            ? [.. remaining]
            : throw new ArgumentException("tasks wait for each other in a ring", nameof(tasks));
    }

    /// <summary>No plan ends before this: all work shared among the hands, or the longest chain.</summary>
    public static double BoundMinutes(IReadOnlyList<GangTask> tasks, int hands) =>
        Math.Max(
            tasks.Sum(t => t.Minutes * t.Hands) / hands,
            Remaining(tasks).DefaultIfEmpty(0).Max()
        );
}
