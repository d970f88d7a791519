using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>The hull as it stands: corrections and drift.</summary>
internal static class StandingFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) => plan.Standing is null ? [] : [];
}
