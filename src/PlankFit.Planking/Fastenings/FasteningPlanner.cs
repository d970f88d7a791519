namespace PlankFit.Planking;

internal static class FasteningPlanner
{
    public static FasteningPlan? Of(BottomPlan plan, CancellationToken stop) => null;
}
