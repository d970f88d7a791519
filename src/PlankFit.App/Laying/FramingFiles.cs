using PlankFit.App.Running;
using PlankFit.Export.Framing;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>What lies behind the planks: lists, and lines to snap on the cloth.</summary>
internal static class FramingFiles
{
    public static FeatureFiles Of(BottomPlan plan)
    {
        FramingPlan behind = plan.Framing;
        if (behind.Things.IsEmpty)
        {
            return FeatureFiles.None;
        }

        FeatureFiles lists = new(
            [
                BookSection.Of(
                    InBook.Behind,
                    "what-lies-behind",
                    "What lies behind",
                    () => FramingListPages.Of(plan)
                ),
            ],
            [ListedTable.Of("what-lies-behind", () => FramingTables.Crossings(plan))],
            []
        );
        return behind.Snaps.IsEmpty
            ? lists
            : new(
                lists.Sheets.Add(
                    BookSection.Of(
                        InBook.Behind,
                        "lines-to-snap",
                        "Lines to snap",
                        () => SnapPages.Of(plan, behind)
                    )
                ),
                lists.Tables.Add(
                    ListedTable.Of("lines-to-snap", () => FramingTables.Snaps(plan, behind))
                ),
                []
            );
    }
}
