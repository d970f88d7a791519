namespace PlankFit.Planking;

internal static class SettingUpPlanner
{
    public static SettingUpPlan? Of(BottomPlan plan, CancellationToken stop) => null;
}
