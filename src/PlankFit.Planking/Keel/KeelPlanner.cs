namespace PlankFit.Planking;

internal static class KeelPlanner
{
    public static KeelPlan? Of(BottomPlan plan, CancellationToken stop) => null;
}
