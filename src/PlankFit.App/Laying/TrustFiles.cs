using PlankFit.App.Running;
using PlankFit.Export.Trust;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>How sure every plank is.</summary>
internal static class TrustFiles
{
    public static FeatureFiles Of(BottomPlan plan) =>
        plan.Trust is not { } trust
            ? FeatureFiles.None
            : new(
                [
                    BookSection.Of(
                        InBook.HowSure,
                        "how-sure",
                        "How sure each plank is",
                        () => TrustSheets.Of(plan, trust)
                    ),
                ],
                [
                    ListedTable.Of("how-sure", () => TrustTables.Planks(plan, trust)),
                    .. plan.Job.Keel.Layers.IsEmpty
                        ? []
                        : new[]
                        {
                            ListedTable.Of(
                                "how-sure-keel",
                                () => TrustTables.Keel(plan.Job, trust),
                                2
                            ),
                        },
                ],
                []
            );
}
