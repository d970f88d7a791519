using System.Diagnostics;
using System.Globalization;

namespace PlankFit.App.Running;

/// <summary>How long each phase of a run took, by the wall clock.</summary>
public sealed class Timings
{
    private readonly List<(string Phase, TimeSpan Took)> phases = [];
    private readonly Lock gate = new();

    public T Time<T>(string phase, Func<T> work)
    {
        long start = Stopwatch.GetTimestamp();
        try
        {
            return work();
        }
        finally
        {
            lock (gate)
            {
                phases.Add((phase, Stopwatch.GetElapsedTime(start)));
            }
        }
    }

    public void Time(string phase, Action work) =>
        Time(
            phase,
            () =>
            {
                work();
                return 0;
            }
        );

    public IEnumerable<string> Lines() =>
        phases.Select(p =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"{p.Took.TotalMilliseconds, 8:0.0} ms  {p.Phase}"
            )
        );
}
