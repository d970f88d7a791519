using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheathing;

/// <summary>Cloth on paper, in the order of the work: what to order, the rolls with their pieces, where to strike them, then layer by layer how it lies and what is drawn first.</summary>
public static class SheathingSheets
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, SheathingPlan sheathing)
    {
        List<SheetPage> pages =
        [
            .. SheathingLists.Order(plan, sheathing).Pages(plan.Job),
            .. RollSheets.Pages(plan, sheathing),
            .. SheathingLists.Strikes(plan, sheathing).Pages(plan.Job),
            .. DartSheets.Pages(plan, sheathing),
        ];
        foreach (SheathedLayer layer in sheathing.Layers)
        {
            foreach (SheathedSide side in layer.Sides)
            {
                pages.Add(ShearMap.Page(plan, layer, side));
                pages.AddRange(SheathingLists.Shear(plan, layer, side).Pages(plan.Job));
                pages.AddRange(SheathingLists.Lines(plan, layer, side).Pages(plan.Job));
            }
        }

        return SheetPage.Numbered(plan.Job, pages);
    }
}
