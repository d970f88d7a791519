using System.Collections.Immutable;

namespace PlankFit.Planking;

internal static class StandingPlanner
{
    public static StandingPlan? Of(BottomPlan plan, CancellationToken stop)
    {
        Job job = plan.Job;
        if (job.Standing.IsEmpty)
        {
            return null;
        }

        var girths = ImmutableDictionary.CreateBuilder<Side, ImmutableArray<GirthRow>>();
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            stop.ThrowIfCancellationRequested();
            if (job.Standing.Girths.Any(g => g.Side == side))
            {
                girths[side] = HullAsItStands.Corrected(job, side).Rows;
            }
        }

        var standing = new StandingPlan(girths.ToImmutable(), plan.Drifts, []);
        return standing with { Findings = [.. StandingFindings.Of(job, standing)] };
    }
}
