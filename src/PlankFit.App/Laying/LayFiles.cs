using System.Collections.Immutable;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>Every file that `lay` leaves for the bench.</summary>
internal static class LayFiles
{
    /// <summary>Those that take longest first.</summary>
    public static ImmutableArray<FileWork> Of(BottomPlan plan)
    {
        FeatureFiles all = All(plan);
        return
        [
            MadeFiles.BenchBook(plan.Job, all.Sheets),
            MadeFiles.BeforeYouSaw(plan.Job, all.Sheets),
            .. all.Files,
            MadeFiles.AllTables(all.Tables),
            .. MadeFiles.SingleSheets(plan.Job, all.Sheets),
            .. MadeFiles.Csvs(all.Tables),
        ];
    }

    /// <summary>What the plan and each of its features leaves.</summary>
    public static FeatureFiles All(BottomPlan plan)
    {
        Lazy<TapeAdvice?> advice = new(() => Advised.Of(plan));
        return FeatureFiles.All([
            PlankFiles.Of(plan, advice),
            TapingFiles.Of(plan, advice),
            .. plan.Panels.Select(PanelFiles.Of),
            KeelFiles.Of(plan),
            SettingUpFiles.Of(plan),
            JointFiles.Of(plan),
            FramingFiles.Of(plan),
            FasteningFiles.Of(plan),
            SheathingFiles.Of(plan),
            TimberFiles.Of(plan),
            GlueFiles.Of(plan),
            StructureFiles.Of(plan),
            AsBuiltFiles.Of(plan),
            TrustFiles.Of(plan),
            NestFiles.Of(plan),
        ]);
    }
}
