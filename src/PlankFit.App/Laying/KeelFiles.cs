using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>The keel held against the planking: tables, chart, patterns of its edges.</summary>
internal static class KeelFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) => plan.Keel is null ? [] : [];
}
