using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>Bend, weight and movement of the timber.</summary>
internal static class TimberFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) => plan.Timber is null ? [] : [];
}
