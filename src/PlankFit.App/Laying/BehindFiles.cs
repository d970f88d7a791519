using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>What lies behind the planks: lists, and lines to snap on the cloth.</summary>
internal static class BehindFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) => plan.Behind is null ? [] : [];
}
