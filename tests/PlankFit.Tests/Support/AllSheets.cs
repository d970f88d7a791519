using PlankFit.Draughting.Tiling;
using PlankFit.Export;
using PlankFit.Export.AsBuilt;
using PlankFit.Export.Cards;
using PlankFit.Export.Checks;
using PlankFit.Export.Fastenings;
using PlankFit.Export.Framing;
using PlankFit.Export.Joints;
using PlankFit.Export.Keel;
using PlankFit.Export.Panels;
using PlankFit.Export.Patterns;
using PlankFit.Export.SettingUp;
using PlankFit.Export.Sheathing;
using PlankFit.Export.Stock;
using PlankFit.Export.Timber;
using PlankFit.Export.Trust;
using PlankFit.Export.Views;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Development;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Panels;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Support;

/// <summary>Every sheet of a plan as it is drawn, before it becomes a file.</summary>
internal static class AllSheets
{
    /// <summary>Each with the name of the file that it goes into.</summary>
    public static IEnumerable<(string File, Drawing Sheet)> Of(BottomPlan plan) =>
        [
            .. Named("plank-cards", PlankCardPages.Of(OnPlanks.Of(plan))),
            .. Named("plank-list", PlankListPages.Of(OnPlanks.Of(plan))),
            .. Named("check-before-sawing", CheckBeforeSawing.Of(plan)),
            .. plan.AllPlankLayers.SelectMany(l =>
                (IEnumerable<(string, Drawing)>)
                    [
                        ("plan-layer", BottomPlanView.Of(l.Panel, l.Layer)),
                        ("shell-expansion", ShellExpansion.Of(l.Panel, l.Layer)),
                        .. Named(
                            "patterns",
                            FullSizePattern.Of(OnPlanks.Of(l.Panel), l.Layer, Side.Starboard)
                        ),
                    ]
            ),
            .. Parts(plan),
        ];

    /// <summary>The bottom and other panels laid flat, which take the longest.</summary>
    public static IEnumerable<(string File, Drawing Sheet)> LaidFlat(BottomPlan plan) =>
        plan.Panels.SelectMany(p =>
            Named(
                "laid-flat",
                PanelSheets.Pages(p, BottomPanel.Develop(p.Planked, PanelOptions.Usual))
            )
        );

    /// <summary>What the plan of cutting has on paper; nothing where there is none.</summary>
    public static IEnumerable<(string File, Drawing Sheet)> Boards(BottomPlan plan) =>
        plan.Nest is { } nest
            ? Named(
                "boards",
                [
                    .. CutSheets.Of(plan, nest),
                    .. ShoppingPages.Of(plan, nest),
                    .. LabelPages.Of(plan, nest),
                ]
            )
            : [];

    /// <summary>Starboard's patterns of every layer, cut into pages of the job's paper.</summary>
    public static IEnumerable<(string File, Drawing Sheet)> Tiled(BottomPlan plan)
    {
        var options = new TilingOptions(
            OutputAsked.Paper(plan.Job.Output),
            Inches: !LengthUnits.IsMetric(plan.Job.Units)
        );
        return plan.AllPlankLayers.SelectMany(l =>
            Named(
                "tiled",
                FullSizePattern
                    .AllBare(OnPlanks.Of(l.Panel), l.Layer, Side.Starboard)
                    .SelectMany(p => Tiler.Pages(p, options))
            )
        );
    }

    private static IEnumerable<(string, Drawing)> Parts(BottomPlan plan)
    {
        IEnumerable<PlankLayerPlan> bottom = plan.PlankLayers;
        return
        [
            .. plan.Keel is { } keel
                ? Named(
                    "keel",
                    [
                        .. KeelPages.Of(plan, keel),
                        .. keel
                            .Layers.Where(l => !l.Between.IsEmpty)
                            .Select(l => KeelEdgePattern.OnPaper(plan, l)),
                    ]
                )
                : [],
            .. plan.SettingUp is { } up
                ? Named(
                    "setting-up",
                    [
                        .. SettingUpPages.Of(plan.Job, up),
                        .. up.Sections.Select(s => SectionDrawing.OnPaper(plan.Job, up, s)),
                    ]
                )
                : [],
            .. plan.Joints is { Layers.IsEmpty: false } joints
                ? Named(
                    "joints",
                    [
                        .. JointPages.Of(plan),
                        .. bottom
                            .Where(l =>
                                joints.Layers.Any(j => j.Layer == l.Number && !j.Planks.IsEmpty)
                            )
                            .Select(l => JointMap.Of(plan, l)),
                    ]
                )
                : [],
            .. plan.Framing is { Things.IsEmpty: false } framing
                ? Named(
                    "what-lies-behind",
                    [.. FramingListPages.Of(plan), .. SnapPages.Of(plan, framing)]
                )
                : [],
            .. plan.Fastenings is { } fastenings
                ? Named(
                    "fastenings",
                    [
                        .. FasteningShopping.Of(plan, fastenings),
                        .. bottom.Select(l => FasteningPlanView.Of(plan, fastenings, l)),
                    ]
                )
                : [],
            .. plan.Sheathing is { Layers.IsEmpty: false } sheathing
                ? Named("cloth", SheathingSheets.Of(plan, sheathing))
                : [],
            .. plan.Trust is { } trust ? Named("how-sure", TrustSheets.Of(plan, trust)) : [],
            .. plan.Timber is { } timber ? Named("timber", TimberSheets.Of(plan, timber)) : [],
            .. plan.AsBuilt is { } standing
                ? Named("standing", AsBuiltPages.Of(plan, standing))
                : [],
            .. Boards(plan),
        ];
    }

    private static IEnumerable<(string, Drawing)> Named(string file, IEnumerable<Drawing> sheets) =>
        sheets.Select(s => (file, s));
}
