using PlankFit.Planking.Glue.Sessions;

namespace PlankFit.Tests.Planking.Glue;

/// <summary>What any plan of a crew's work must keep, told from the tasks alone.</summary>
internal static class CrewLaws
{
    private const double Hair = 1e-6;

    public static void Hold(IReadOnlyList<GangTask> tasks, int hands, Timetable table)
    {
        Assert.Equal(tasks.Count, table.Starts.Length);
        for (int i = 0; i < tasks.Count; i++)
        {
            double start = table.Starts[i];
            Assert.True(start >= 0);
            Assert.True(start + tasks[i].Minutes <= table.EndMinutes + Hair);
            foreach (TaskLink link in tasks[i].After)
            {
                double waited = start - table.Starts[link.Task] - tasks[link.Task].Minutes;
                Assert.InRange(
                    waited,
                    link.LeastMinutes - Hair,
                    (link.MostMinutes ?? double.MaxValue) + Hair
                );
            }

            int busy = Enumerable
                .Range(0, tasks.Count)
                .Where(j =>
                    table.Starts[j] <= start + Hair
                    && table.Starts[j] + tasks[j].Minutes > start + Hair
                )
                .Sum(j => tasks[j].Hands);
            Assert.True(busy <= hands, $"{busy} hands at {start}");
        }

        Assert.True(table.EndMinutes >= Chains.BoundMinutes(tasks, hands) - Hair);
    }
}
