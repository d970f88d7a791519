using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.AsBuilt;

/// <summary>What each sawn plank of a panel has come to lack or to have too much.</summary>
internal static class SawnList
{
    /// <param name="plan">Of the panel that the planks belong to.</param>
    /// <param name="cut">At least one.</param>
    public static ListSheet Of(BottomPlan plan, IReadOnlyList<SawnRow> cut)
    {
        LengthUnit unit = plan.Job.Units;
        Panel panel = plan.Job.Hull.Panel;
        string inner = Panel.InnerWordOf(cut[0].Id),
            outer = Panel.OuterWordOf(cut[0].Id);
        string Off(double? mm) => mm is { } v ? AsBuiltLists.Signed(v, unit) : "none";
        return new(
            AsBuiltLists.Block(
                panel.HasKeel ? "planks that are sawn" : $"planks that are sawn, {panel.Name}",
                panel
            ),
            [
                $"The place of each sawn plank as the hull now stands, less the plank as it was sawn, {SheetWords.Unit(unit)}: along its forward and after seam, and across it at its {inner} and {outer} end. With + the plank is short, or a seam opens; with - it is long, or does not go in. To spare is what was left long or allowed at its ends.",
            ],
            [
                new("plank", 10, false),
                new("sawn from", 11, false),
                new("along forward", 12),
                new("along after", 12),
                new("to spare", 11),
                new($"across {inner}", 12),
                new($"across {outer}", 12),
                new("verdict", 22, false),
            ],
            [
                .. cut.Select(r =>
                    ImmutableArray.Create(
                        r.Id.ToString(),
                        r.Fit.Revision,
                        Off(r.Fit.ForwardMm),
                        Off(r.Fit.AfterMm),
                        LengthText.PaperNumber(r.Fit.SpareMm, unit),
                        Off(r.Fit.AtKeelMm),
                        Off(r.Fit.AtChineMm),
                        SawnWords.Of(r.Fit, GapOf(plan, r.Id))
                    )
                ),
            ]
        );
    }

    private static double GapOf(BottomPlan plan, PlankId id)
    {
        int layer = plan.Find(id)?.Layer ?? 1;
        return plan.PlankLayers.First(l => l.Number == layer).Planks.GapMm;
    }
}
