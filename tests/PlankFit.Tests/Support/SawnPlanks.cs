using PlankFit.Planking;

namespace PlankFit.Tests.Support;

/// <summary>Planks of a plan, as the record would have them once they are sawn.</summary>
internal static class SawnPlanks
{
    public static CutPlank Of(BottomPlan plan, string id) => Of(plan, Named.Plank(id));

    public static CutPlank Of(BottomPlan plan, PlankId id)
    {
        Plank plank = plan.Find(id)!;
        return CutPlank.Of(
            plank,
            plan.PlankLayers.First(l => l.Number == plank.Layer).Planks,
            "abc123"
        );
    }
}
