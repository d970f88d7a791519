using PlankFit.App.Running;
using PlankFit.Export.Tables;
using PlankFit.Export.Taping;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>What the tape said of the hull, and the blanks of what to tape next.</summary>
internal static class TapingFiles
{
    public static FeatureFiles Of(BottomPlan plan, Lazy<TapeAdvice?> advice) =>
        plan.Job.Trust is null || plan.Trust is null
            ? FeatureFiles.None
            : new(
                plan.Taped is { } taped
                    ?
                    [
                        BookSection.Of(
                            InBook.AsBuilt,
                            "what-the-tape-says",
                            "What the tape says",
                            () => TapedPages.Of(plan, taped)
                        ),
                    ]
                    : [],
                plan.Taped is { } read
                    ? [ListedTable.Of("taped", () => TapingTables.Readings(plan.Job, read))]
                    : [],
                [
                    MadeFiles.File(
                        "to-tape.csv",
                        s => Csv.Write(TapingTables.Blanks(advice.Value!), s)
                    ),
                ]
            );
}
