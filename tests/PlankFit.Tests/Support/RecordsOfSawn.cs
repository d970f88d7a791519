using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Support;

/// <summary>Planks of a plan, as the record would have them once they are sawn.</summary>
internal static class RecordsOfSawn
{
    public static SawnPlank Of(BottomPlan plan, string id) => Of(plan, Named.Plank(id));

    public static SawnPlank Of(BottomPlan plan, PlankId id)
    {
        Plank plank = plan.Find(id)!;
        return SawnPlank.Of(
            plank,
            plan.PlankLayers.First(l => l.Number == plank.Layer).Planks,
            "abc123"
        );
    }
}
