using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Taping;
using PlankFit.Export.Views;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Checks;

/// <summary>
/// What to tape on the bare bottom before any plank is sawn, a page a layer and side: the seams of the master plank, the first, the last and every fifth, with
/// blanks for what was measured; then the side's numbered view, to be taped to the hull.
/// </summary>
public static class CheckBeforeSawing
{
    private const int RowsAPage = 11;

    /// <param name="advice">Where the job says how far it is trusted: what to tape first stands ahead, and every reading has a limit of its own.</param>
    public static ImmutableArray<Drawing> Of(BottomPlan plan, TapeAdvice? advice = null)
    {
        List<SheetPage> pages = [.. advice is null ? [] : TapingPages.Pages(plan, advice)];
        foreach ((BottomPlan panel, PlankLayerPlan layer) in plan.AllPlankLayers)
        {
            foreach (Side side in new[] { Side.Starboard, Side.Port })
            {
                SeamCheck[] checks = [.. layer.Checks.Where(c => c.Side == side)];
                SeamCheck[][] parts = [.. checks.Chunk(RowsAPage)];
                for (int i = 0; i < parts.Length; i++)
                {
                    SeamCheck[] part = parts[i];
                    bool last = i == parts.Length - 1;
                    var block = new TitleBlock(
                        "Check before sawing",
                        SheetWords.Of(side, layer),
                        "no drawing",
                        null,
                        Cautions.CheckOf(layer.Panel)
                    );
                    pages.Add(
                        new(
                            SheetFormat.Bench(plan.Job),
                            block with
                            {
                                Forward = new Vec2(side == Side.Starboard ? -1 : 1, 0),
                                Scale = $"by tape, {SheetWords.Unit(plan.Job.Units)}",
                            },
                            (pad, inside) =>
                                CheckTable.Draw(
                                    pad,
                                    inside,
                                    (panel, advice),
                                    layer,
                                    side,
                                    part,
                                    last
                                )
                        )
                    );
                }

                pages.Add(SideView.Page(panel, layer, side));
            }
        }

        return SheetPage.Numbered(plan.Job, pages);
    }
}
