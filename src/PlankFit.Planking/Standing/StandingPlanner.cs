namespace PlankFit.Planking;

internal static class StandingPlanner
{
    public static StandingPlan? Of(BottomPlan plan, CancellationToken stop) => null;
}
