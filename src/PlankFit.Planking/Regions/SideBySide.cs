using System.Runtime.ExceptionServices;

namespace PlankFit.Planking.Regions;

/// <summary>Pieces of work that have nothing to do with each other, on as many cores as there are; what comes out is what comes out of one after the other.</summary>
internal static class SideBySide
{
    /// <returns>What each gives, in their order.</returns>
    /// <exception cref="Exception">What the first of those that failed threw, in their order, or that they were stopped.</exception>
    public static T[] All<T>(int count, Func<int, T> work, CancellationToken stop = default)
    {
        var results = new T[count];
        var thrown = new ExceptionDispatchInfo?[count];
        Parallel.For(
            0,
            count,
            i =>
            {
                try
                {
                    stop.ThrowIfCancellationRequested();
                    results[i] = work(i);
                }
                catch (Exception e)
                {
                    thrown[i] = ExceptionDispatchInfo.Capture(e);
                }
            }
        );
        Array.Find(thrown, t => t is not null)?.Throw();
        return results;
    }
}
