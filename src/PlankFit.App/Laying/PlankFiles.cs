using System.Text;
using PlankFit.App.Running;
using PlankFit.Draughting.Dxf;
using PlankFit.Draughting.Files;
using PlankFit.Draughting.Skia;
using PlankFit.Draughting.Svg;
using PlankFit.Draughting.Tiling;
using PlankFit.Export;
using PlankFit.Export.Cards;
using PlankFit.Export.Checks;
using PlankFit.Export.Lists;
using PlankFit.Export.Patterns;
using PlankFit.Export.Solids;
using PlankFit.Export.Summary;
using PlankFit.Export.Views;
using PlankFit.Export.Whole;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>The planks of every panel: sheets, lists, patterns and DXF, and the plan as numbers.</summary>
internal static class PlankFiles
{
    public static FeatureFiles Of(BottomPlan plan, Lazy<TapeAdvice?> advice)
    {
        (string Name, Lazy<Drawing> Drawing)[] views = [.. Views(plan)];
        var drawn = DrawnSides.Of(OnPlanks.Of(plan));
        return new(
            [
                BookSection.Of(
                    InBook.BeforeYouSaw,
                    "before-you-saw",
                    "Before you saw",
                    () => BeforeYouSawPages.Of(plan)
                ),
                BookSection.Of(
                    InBook.Check,
                    "check-before-sawing",
                    "Check before sawing",
                    () => CheckBeforeSawing.Of(plan, advice.Value)
                ),
                BookSection.Of(
                    InBook.Views,
                    "views",
                    "Plans and shell expansions",
                    () => [.. views.Select(v => v.Drawing.Value)]
                ),
                BookSection.Of(
                    InBook.PlankList,
                    "plank-list",
                    "Plank list",
                    () => PlankListPages.Of(drawn)
                ),
                BookSection.Of(
                    InBook.Cards,
                    "plank-cards",
                    "Plank cards",
                    () => PlankCardPages.Of(drawn)
                ),
            ],
            [
                ListedTable.Of("plank-list", () => PlankTables.Planks(plan)),
                ListedTable.Of("plank-ends", () => PlankTables.Ends(plan)),
                ListedTable.Of("layers", () => PlanTables.Layers(plan), 0),
                ListedTable.Of("findings", () => PlanTables.Findings(plan), 0),
                ListedTable.Of("about", () => PlanTables.About(plan), 0),
            ],
            [
                .. plan.AllPlankLayers.SelectMany(l => OfLayer(drawn, l.Panel, l.Layer)),
                MadeFiles.File("planking.json", s => PlankingJson.Write(OnPlanks.Of(plan), s)),
                .. plan.Job.Output.ShapeAsGlb
                    ? [MadeFiles.File(ShapeFile.Name, s => ShapeFile.Write(plan, s))]
                    : Array.Empty<FileWork>(),
                .. views.Select(v => MadeFiles.Picture(v.Name, plan.Job, () => v.Drawing.Value)),
                MadeFiles.File(
                    "summary.txt",
                    s => s.Write(Encoding.UTF8.GetBytes(SummaryText(plan)))
                ),
            ]
        );
    }

    private static IEnumerable<(string Name, Lazy<Drawing> Drawing)> Views(BottomPlan plan) =>
        plan.AllPlankLayers.SelectMany(l =>
            new (string, Lazy<Drawing>)[]
            {
                ($"plan-layer-{l.Layer.Code}", new(() => BottomPlanView.Of(l.Panel, l.Layer))),
                (
                    $"shell-expansion-layer-{l.Layer.Code}",
                    new(() => ShellExpansion.Of(l.Panel, l.Layer))
                ),
            }
        );

    private static IEnumerable<FileWork> OfLayer(
        DrawnSides drawn,
        BottomPlan panel,
        PlankLayerPlan layer
    )
    {
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            string of = $"layer-{layer.Code}-{PlankWords.Of(side)}",
                named = $"layer {layer.Code} {PlankWords.Of(side)}";
            if (drawn.IsAny(layer, side))
            {
                yield return MadeFiles.FullSize(
                    of,
                    panel.Job,
                    $"full-size patterns, {of}",
                    () => Patterns(drawn, panel, layer, side)
                );
            }

            yield return new($"DXF, {named}", output => Dxf(output, panel, layer, side));
            if (panel.Job.Output.CardPictures)
            {
                yield return new(
                    $"cards, {named}",
                    output => Cards(output, drawn, panel, layer, side)
                );
            }
        }
    }

    private static void Cards(
        OutputFolder output,
        DrawnSides drawn,
        BottomPlan plan,
        PlankLayerPlan layer,
        Side side
    )
    {
        foreach ((PieceId id, Drawing card) in PlankCardPages.Singles(drawn, plan, layer, side))
        {
            output.Write($"cards/{id}.svg", s => SvgWriter.Write(s, card));
            output.Write($"cards/{id}.png", s => PngWriter.Write(s, card, MadeFiles.PictureDpi));
        }
    }

    internal static IReadOnlyList<Drawing> Patterns(
        DrawnSides drawn,
        BottomPlan plan,
        PlankLayerPlan layer,
        Side side
    )
    {
        if (plan.Job.Output.Patterns == PatternPages.Long)
        {
            return
            [
                .. FullSizePattern
                    .Of(drawn, plan, layer, side)
                    .Zip(FullSizePattern.AllBare(drawn, plan, layer, side))
                    .SelectMany(p =>
                        LongPages.IsTaken(p.First) ? [p.First] : LongPages.Of(plan.Job, p.Second)
                    ),
            ];
        }

        var options = new TilingOptions(
            OutputAsked.Paper(plan.Job.Output),
            Inches: !LengthUnits.IsMetric(plan.Job.Units)
        );
        return
        [
            .. FullSizePattern
                .AllBare(drawn, plan, layer, side)
                .SelectMany(p => Tiler.Pages(p, options)),
        ];
    }

    public static string DxfName(Plank plank, DxfVersion version, OutputSpec asked) =>
        MadeFiles.DxfName(plank.Id.ToString(), version, asked);

    public static void WritePlankDxf(
        BottomPlan plan,
        Plank plank,
        DxfVersion version,
        Stream stream
    ) =>
        DxfWriter.Write(
            stream,
            CuttingPattern.Of(OnPlanks.Of(plan), plank),
            OutputAsked.Dxf(plan.Job.Output, version)
        );

    private static void Dxf(OutputFolder output, BottomPlan plan, PlankLayerPlan layer, Side side)
    {
        Drawing[] patterns =
        [
            .. layer.On(side).Select(p => CuttingPattern.Of(OnPlanks.Of(plan), p)),
        ];
        foreach ((Plank plank, Drawing pattern) in layer.On(side).Zip(patterns))
        {
            MadeFiles.Dxf(output, plank.Id.ToString(), pattern, plan.Job);
        }

        MadeFiles.Dxf(
            output,
            $"layer-{layer.Code}-{PlankWords.Of(side)}",
            CuttingPattern.Layer(plan, layer, side, patterns),
            plan.Job
        );
    }

    private static string SummaryText(BottomPlan plan) =>
        string.Join(
            "\n",
            [
                .. NestTold.First(plan),
                $"{plan.Job.Name}, revision {plan.Job.Revision}",
                "",
                .. FindingsText.Ranked(BeforeYouSaw.All(plan)),
                "",
                .. PlanSummary.Of(plan).Lines(plan.Job.Units),
            ]
        ) + "\n";
}
