using System.Collections.Immutable;
using PlankFit.App.Running;
using PlankFit.Export.Framing;
using PlankFit.Export.Tables;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Laying;

/// <summary>What lies behind the planks: lists, and lines to snap on the cloth.</summary>
internal static class FramingFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan)
    {
        if (plan.Framing is not { } behind)
        {
            return [];
        }

        ImmutableArray<FileWork> lists =
        [
            MadeFiles.Pdf(
                "what-lies-behind.pdf",
                plan,
                "what lies behind",
                () => FramingListPages.Of(plan)
            ),
            MadeFiles.File(
                "what-lies-behind.csv",
                s => Csv.Write(FramingTables.Crossings(plan), s)
            ),
        ];
        return behind.Snaps.IsEmpty
            ? lists
            :
            [
                .. lists,
                MadeFiles.Pdf(
                    "lines-to-snap.pdf",
                    plan,
                    "lines to snap",
                    () => SnapPages.Of(plan, behind)
                ),
                MadeFiles.File(
                    "lines-to-snap.csv",
                    s => Csv.Write(FramingTables.Snaps(plan, behind), s)
                ),
            ];
    }
}
