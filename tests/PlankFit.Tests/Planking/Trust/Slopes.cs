using System.Collections.Concurrent;
using PlankFit.Planking.Trust;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Trust;

/// <summary>Of the demo hulls, worked out once a run of the tests.</summary>
internal static class Slopes
{
    private static readonly ConcurrentDictionary<string, Lazy<Sensitivities>> Made = new();

    public static Sensitivities Of(string hull) =>
        Made.GetOrAdd(
            hull,
            h => new Lazy<Sensitivities>(() =>
                Sensitivities.Of(DemoPlans.Of(h).Planked, null, CancellationToken.None)
            )
        ).Value;
}
