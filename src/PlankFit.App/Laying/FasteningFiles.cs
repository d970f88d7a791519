using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>Fastenings: positions and what to buy.</summary>
internal static class FasteningFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) => plan.Fastenings is null ? [] : [];
}
