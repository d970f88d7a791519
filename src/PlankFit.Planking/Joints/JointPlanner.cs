namespace PlankFit.Planking;

internal static class JointPlanner
{
    public static JointPlan? Of(BottomPlan plan, CancellationToken stop) => null;
}
