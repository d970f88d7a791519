using System.Collections.Immutable;
using System.Text;
using PlankFit.App.Nesting;
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
using PlankFit.Export.Summary;
using PlankFit.Export.Views;
using PlankFit.Export.Whole;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>Every file that `lay` leaves for the bench, by name; those that take longest first.</summary>
internal static class LayFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan)
    {
        ImmutableArray<FileWork>.Builder work = ImmutableArray.CreateBuilder<FileWork>();
        work.Add(
            MadeFiles.Pdf(
                "plank-cards.pdf",
                plan,
                "plank cards",
                () => PlankCardPages.Of(OnPlanks.Of(plan))
            )
        );
        work.Add(
            MadeFiles.Pdf("plank-list.pdf", plan, "plank list", () => PlankListPages.Of(plan))
        );
        work.AddRange(plan.Panels.Select(PanelFiles.Of));
        work.Add(MadeFiles.File("planking.json", s => PlankingJson.Write(OnPlanks.Of(plan), s)));
        work.Add(MadeFiles.File("plank-list.csv", s => PlankListCsv.Write(plan, s)));
        work.Add(MadeFiles.File("plank-list.xlsx", s => PlankListXlsx.Write(plan, s)));
        work.Add(
            MadeFiles.File("summary.txt", s => s.Write(Encoding.UTF8.GetBytes(SummaryText(plan))))
        );
        work.Add(
            MadeFiles.Pdf(
                "check-before-sawing.pdf",
                plan,
                "check before sawing",
                () => CheckBeforeSawing.Of(plan)
            )
        );
        foreach ((BottomPlan panel, PlankLayerPlan layer) in plan.AllPlankLayers)
        {
            work.Add(
                MadeFiles.Picture(
                    $"drawings/plan-layer-{layer.Code}",
                    () => BottomPlanView.Of(panel, layer)
                )
            );
            work.Add(
                MadeFiles.Picture(
                    $"drawings/shell-expansion-layer-{layer.Code}",
                    () => ShellExpansion.Of(panel, layer)
                )
            );
            foreach (Side side in new[] { Side.Starboard, Side.Port })
            {
                if (plan.Job.Output.CardPictures)
                {
                    work.Add(
                        new(
                            $"cards, layer {layer.Code} {PlankWords.Of(side)}",
                            output => Cards(output, panel, layer, side)
                        )
                    );
                }

                string of = $"layer-{layer.Code}-{PlankWords.Of(side)}";
                work.Add(
                    MadeFiles.Pdf(
                        $"patterns/{of}.pdf",
                        plan,
                        $"full-size patterns, {of}",
                        () => Patterns(panel, layer, side)
                    )
                );
                work.Add(
                    new(
                        $"DXF, layer {layer.Code} {PlankWords.Of(side)}",
                        output => Dxf(output, panel, layer, side)
                    )
                );
            }
        }

        work.AddRange(KeelFiles.Of(plan));
        work.AddRange(SettingUpFiles.Of(plan));
        work.AddRange(JointFiles.Of(plan));
        work.AddRange(FramingFiles.Of(plan));
        work.AddRange(FasteningFiles.Of(plan));
        work.AddRange(TimberFiles.Of(plan));
        work.AddRange(AsBuiltFiles.Of(plan));
        work.AddRange(NestFiles.Of(plan));
        return work.ToImmutable();
    }

    private static void Cards(OutputFolder output, BottomPlan plan, PlankLayerPlan layer, Side side)
    {
        foreach (
            (PieceId id, Drawing card) in layer
                .On(side)
                .SelectMany(p => PlankCardPages.Singles(OnPlanks.Of(plan), layer, p))
        )
        {
            output.Write($"cards/{id}.svg", s => SvgWriter.Write(s, card));
            output.Write($"cards/{id}.png", s => PngWriter.Write(s, card, MadeFiles.PictureDpi));
        }
    }

    private static IReadOnlyList<Drawing> Patterns(BottomPlan plan, PlankLayerPlan layer, Side side)
    {
        if (plan.Job.Output.Patterns == PatternPages.Long)
        {
            return FullSizePattern.Of(OnPlanks.Of(plan), layer, side);
        }

        var options = new TilingOptions(
            OutputAsked.Paper(plan.Job.Output),
            Inches: !LengthUnits.IsMetric(plan.Job.Units)
        );
        return
        [
            .. layer
                .On(side)
                .SelectMany(p =>
                    Tiler.Pages(FullSizePattern.Bare(OnPlanks.Of(plan), layer, p), options)
                ),
        ];
    }

    public static string PlankDxfName(Plank plank, DxfVersion version) =>
        MadeFiles.DxfName(plank.Id.ToString(), version);

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
            MadeFiles.BothDxf(output, plank.Id.ToString(), pattern, plan.Job);
        }

        MadeFiles.BothDxf(
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
                .. NestRun.First(plan),
                $"{plan.Job.Name}, revision {plan.Job.Revision}",
                "",
                .. PlanSummary.Of(plan).Lines(plan.Job.Units),
                "",
                FindingsText.Listing(plan.Findings),
            ]
        ) + "\n";
}
