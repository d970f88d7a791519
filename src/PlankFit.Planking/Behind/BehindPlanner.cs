namespace PlankFit.Planking;

internal static class BehindPlanner
{
    public static BehindPlan? Of(BottomPlan plan, CancellationToken stop) => null;
}
