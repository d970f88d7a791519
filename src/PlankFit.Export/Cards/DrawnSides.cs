using System.Collections.Immutable;
using PlankFit.Export.Shown;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Cards;

/// <summary>The planks of every layer and side of a plan that are drawn, worked out once and handed on to cards, list and patterns.</summary>
public sealed class DrawnSides
{
    private readonly ImmutableDictionary<(string Layer, Side Side), ImmutableArray<DrawnPlank>> of;

    private DrawnSides(
        PlanShown shown,
        ImmutableDictionary<(string, Side), ImmutableArray<DrawnPlank>> of
    ) => (Shown, this.of) = (shown, of);

    public static DrawnSides Of(PlanShown shown) =>
        new(
            shown,
            (
                from l in shown.Plan.AllPlankLayers
                from side in Enum.GetValues<Side>()
                select KeyValuePair.Create(
                    (l.Layer.Code, side),
                    DrawnPlanks.Of(shown.On(l.Panel), l.Layer, side)
                )
            ).ToImmutableDictionary()
        );

    internal PlanShown Shown { get; }

    public bool IsAny(PlankLayerPlan layer, Side side) => !On(layer, side).IsEmpty;

    internal ImmutableArray<DrawnPlank> On(PlankLayerPlan layer, Side side) =>
        of[(layer.Code, side)];
}
