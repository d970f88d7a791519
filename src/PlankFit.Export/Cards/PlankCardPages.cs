using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Cards;

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
                            (pad, inside) => Cards(pad, inside, two, layer, plan)
                        ))
                );
            }
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    /// <summary>One plank's card on a sheet of its own, half as high as a page of two.</summary>
    public static Drawing Single(BottomPlan plan, PlankLayerPlan layer, Plank plank)
    {
        SheetFormat bench = SheetFormat.Bench(plan.Job);
        SheetFormat half = bench with
        {
            HeightMm = bench.HeightMm - (Frame.Inside(bench).Height / 2),
        };
        var block = new TitleBlock(
            $"Plank card {plank.Id}",
            SheetWords.Of(plank.Side, layer),
            "scale: at each drawing",
            null,
            Cautions.Saw
        );
        return SheetPage.Numbered(
            plan.Job,
            [
                new(
                    half,
                    block,
                    (pad, inside) => PlankCard.Draw(pad, Inner(inside), plank, layer, plan)
                ),
            ]
        )[0];
    }

    private static Box Inner(Box row) =>
        new(row.Left + PadMm, row.Bottom + 1, row.Right - PadMm, row.Top - 1);

    private static void Cards(
        SheetCanvas pad,
        Box inside,
        Plank[] planks,
        PlankLayerPlan layer,
        BottomPlan plan
    )
    {
        for (int i = 0; i < planks.Length; i++)
        {
            Box row = inside.Row(i, PerPage);
            if (i > 0)
            {
                pad.Line(row.Left, row.Top, row.Right, row.Top, Pens.Frame);
            }

            PlankCard.Draw(pad, Inner(row), planks[i], layer, plan);
        }
    }
}
