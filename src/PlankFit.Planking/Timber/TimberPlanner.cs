namespace PlankFit.Planking;

internal static class TimberPlanner
{
    public static TimberPlan? Of(BottomPlan plan, CancellationToken stop) => null;
}
