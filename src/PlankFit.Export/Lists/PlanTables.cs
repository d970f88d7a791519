using PlankFit.Export.Joints;
using PlankFit.Export.Planks;
using PlankFit.Export.Summary;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Lists;

/// <summary>The tables about the whole plan: its layers, what was found, and what this list is of.</summary>
public static class PlanTables
{
    /// <summary>One row a layer, from the inside out, cloth among them.</summary>
    public static Table Layers(BottomPlan plan)
    {
        LengthUnit unit = plan.Job.Units;
        return TableOf.Build<LayerPlan>(
            "layers",
            [
                new("layer", 7, l => l is PlankLayerPlan p ? LayerNumber.Of(p) : TableCell.Empty),
                new("kind", 10, l => l is PlankLayerPlan ? "planks" : "cloth"),
                new("name", 18, l => l.Spec.Name),
                new("thickness", 12, l => PlankWords.Small(l.Spec.ThicknessMm, unit)),
                new(
                    "stock width",
                    12,
                    l => Planks(l, p => PlankWords.Small(p.Planks.WidthMm, unit))
                ),
                new("heads", 10, l => Planks(l, p => PlankWords.Of(p.Planks.Heads))),
                new("angle to keel deg", 11, l => (l as PlankLayerPlan)?.Planks.AngleDegrees, 2),
                new(
                    "master",
                    10,
                    l =>
                        Planks(
                            l,
                            p =>
                                p.Starboard.FirstOrDefault(q => q.Number == p.MasterNumber)
                                    ?.Id.ToString()
                        )
                ),
                new("planks a side", 10, l => (l as PlankLayerPlan)?.Starboard.Length),
                new("area a side", 14, l => Planks(l, p => PlanWords.Area(p.AreaMm2, unit))),
                new(
                    "stock, both sides",
                    14,
                    l => Planks(l, p => PlanWords.Stock(StockMm(plan, p), unit))
                ),
                new("thickness mm", 11, l => l.Spec.ThicknessMm, 3),
                new("stock width mm", 11, l => (l as PlankLayerPlan)?.Planks.WidthMm, 3),
                new(
                    "mid-thickness from table mm",
                    14,
                    l => (l as PlankLayerPlan)?.NeutralOffsetMm,
                    3
                ),
                new("area a side mm2", 14, l => (l as PlankLayerPlan)?.AreaMm2, 0),
                new(
                    "stock, both sides mm",
                    14,
                    l => l is PlankLayerPlan p ? StockMm(plan, p) : TableCell.Empty,
                    1
                ),
            ],
            plan.Panels.SelectMany(p => p.Layers)
        );
    }

    /// <summary>One row a finding, those first that cost most.</summary>
    public static Table Findings(BottomPlan plan) =>
        TableOf.Build<Finding>(
            "findings",
            [
                new("severity", 10, f => PlankWords.Of(f.Severity)),
                new("what it costs", 16, f => FindingsText.Of(f.Rank)),
                new("where", 22, f => f.Where),
                new("what", 110, f => f.Message),
            ],
            BeforeYouSaw.All(plan)
        );

    /// <summary>What the list is of, its tolerance and its summary: the first thing that someone who is handed the file should read.</summary>
    public static Table About(BottomPlan plan)
    {
        IEnumerable<(string, string)> head =
        [
            ("job", plan.Job.Name),
            ("revision of the inputs", plan.Job.Revision),
            ("units", LengthUnits.Name(plan.Job.WrittenIn)),
            ("tolerance", LengthText.PaperToleranceText(plan.Job.Units)),
            (
                "sides of a plank",
                "Seen with the outer face up. Ends, bevels and faces are named as it lies so."
            ),
            (
                "before sawing",
                "Check the first plank against the hull with a tape and a batten before the rest are cut."
            ),
        ];
        return TableOf.Build<(string What, string Text)>(
            "about",
            [new("about this list", 24, r => r.What), new("in words", 110, r => r.Text)],
            head.Concat(
                PlanSummary.Of(plan).AllLines(plan.Job.Units).Select(line => ("summary", line))
            )
        );
    }

    /// <summary>Lengths to cut added up, as boards of one plank or piece each would need; a plan of cutting may need less.</summary>
    internal static double StockMm(BottomPlan plan, PlankLayerPlan layer) =>
        layer.Starboard.Concat(layer.Port).Sum(p => JointWords.StockMm(plan.PanelOf(p.Id), p));

    private static TableCell Planks(LayerPlan layer, Func<PlankLayerPlan, string?> read) =>
        layer is PlankLayerPlan planks ? read(planks) : null;
}
