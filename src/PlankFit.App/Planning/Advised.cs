using PlankFit.Planking.Taping;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Planning;

/// <summary>What is to be taped first on the hull of a plan.</summary>
internal static class Advised
{
    /// <summary>More places than these are not taped in one go.</summary>
    private const int MostWishes = 10;

    /// <summary>Null where the job does not say how far it is trusted.</summary>
    public static TapeAdvice? Of(BottomPlan plan) =>
        plan.Job.Trust is { } trust && plan.Trust is { } sure
            ? TapeAdvisor.Of(
                plan.Planked,
                trust,
                PlankSloper.Of(plan.Planked, trust, sure.Sureness.Slopes),
                plan.Taped,
                MostWishes
            )
            : null;
}
