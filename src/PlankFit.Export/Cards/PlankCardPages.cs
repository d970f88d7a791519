using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Shown;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Cards;

/// <summary>The plank cards of a whole bottom, two to a sheet, layer by layer and side by side.</summary>
public static class PlankCardPages
{
    private const int PerPage = 2;
    private const double PadMm = 3;

    public static ImmutableArray<Drawing> Of(PlanShown shown)
    {
        BottomPlan plan = shown.Plan;
        var format = SheetFormat.Bench(plan.Job);
        List<SheetPage> pages = [];
        foreach ((BottomPlan panel, PlankLayerPlan layer) in plan.AllPlankLayers)
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
                            (pad, inside) => Cards(pad, inside, two, layer, shown.On(panel))
                        )
                        {
                            FoundBy =
                            [
                                $"{PlankWords.Of(side)}, {SheetWords.Of(layer)}",
                                string.Join(", ", two.Select(p => p.Id)),
                            ],
                        })
                );
            }
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    /// <summary>One plank's card on a sheet of its own, half as high as a page of two.</summary>
    public static Drawing Single(PlanShown shown, PlankLayerPlan layer, Plank plank)
    {
        BottomPlan plan = shown.Plan;
        var bench = SheetFormat.Bench(plan.Job);
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
                    (pad, inside) => PlankCard.Draw(pad, Inner(inside), plank, layer, shown)
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
        PlanShown shown
    )
    {
        for (int i = 0; i < planks.Length; i++)
        {
            Box row = inside.Row(i, PerPage);
            if (i > 0)
            {
                pad.Line(row.Left, row.Top, row.Right, row.Top, Pens.Frame);
            }

            PlankCard.Draw(pad, Inner(row), planks[i], layer, shown);
        }
    }
}
