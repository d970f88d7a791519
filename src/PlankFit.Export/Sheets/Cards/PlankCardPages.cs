using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Export.Sheets;

/// <summary>The plank cards of a whole bottom, two to a sheet, layer by layer and side by side.</summary>
public static class PlankCardPages
{
    private const int PerPage = 2;
    private const double PadMm = 3;

    public static ImmutableArray<Drawing> Of(BottomPlan plan)
    {
        SheetFormat format = SheetFormat.Bench(plan.Job);
        List<SheetPage> pages = [];
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            foreach (Side side in Enum.GetValues<Side>())
            {
                TitleBlock block = new(
                    "Plank cards",
                    SheetWords.Of(side, layer),
                    "scale: at each drawing",
                    null,
                    Cautions.Saw
                );
                pages.AddRange(
                    layer
                        .On(side)
                        .Chunk(PerPage)
                        .Select(two => new SheetPage(
                            format,
                            block,
                            (pad, inside) => Cards(pad, inside, two, layer, plan.Job.Units)
                        ))
                );
            }
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    private static void Cards(
        Pad pad,
        Box inside,
        Plank[] planks,
        PlankLayerPlan layer,
        LengthUnit unit
    )
    {
        for (int i = 0; i < planks.Length; i++)
        {
            Box row = inside.Row(i, PerPage);
            if (i > 0)
            {
                pad.Line(row.Left, row.Top, row.Right, row.Top, Pens.Frame);
            }

            PlankCard.Draw(
                pad,
                new(row.Left + PadMm, row.Bottom + 1, row.Right - PadMm, row.Top - 1),
                planks[i],
                layer,
                unit
            );
        }
    }
}
