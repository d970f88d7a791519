using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>The pieces of long planks.</summary>
internal static class JointFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) => plan.Joints is null ? [] : [];
}
