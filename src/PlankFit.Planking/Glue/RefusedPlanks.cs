using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Glue;

/// <summary>
/// A skin with planks that are not to be sawn, since they are not trusted with their bend: no glue is mixed for it before that is settled. The planks that go down before
/// them would be there if the layer is then laid at another angle.
/// </summary>
internal static class RefusedPlanks
{
    /// <returns>Null where the layer has none, or all that it has are down.</returns>
    public static (Finding Why, ImmutableArray<string> Not)? Stop(AmountPlanner amounts, int at)
    {
        if (amounts.Planked.Layers[at] is not PlankLayerPlan skin)
        {
            return null;
        }

        PlankId[] refused =
        [
            .. AmountPlanner
                .BothSides.SelectMany(s => skin.On(s))
                .Where(p => p.IsRefused && amounts.Spec.Done.DownAt(p.Id) is null)
                .Select(p => p.Id),
        ];
        if (refused.Length == 0)
        {
            return null;
        }

        ImmutableArray<string> not = StillToLay.From(amounts, at);
        bool one = refused.Length == 1;
        string[] after = [.. not.Where(n => n != skin.Planks.Name)];
        return (
            new(
                Severity.Warning,
                Subject.OfLayer(skin.Planks.Name),
                $"it is not planned, since {PlankRuns.Of(refused)} {(one ? "is" : "are")} refused: not to be sawn, not trusted with {(one ? "its" : "their")} bend, and no glue is mixed for a skin that cannot be laid whole{(after.Length == 0 ? "" : $", nor for what comes after it ({string.Join("; ", after)})")}. Lay the layer at another angle; or make {(one ? "it" : "them")} up of thinner laminations, and once {(one ? "it is" : "they are")} in the record as sawn, plan again. What to order has {(one ? "its" : "their")} glue among it"
            )
            {
                Rank = Rank.SawAfter,
            },
            not
        );
    }
}
