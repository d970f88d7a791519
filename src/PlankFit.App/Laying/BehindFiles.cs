using System.Collections.Immutable;
using PlankFit.Export;
using PlankFit.Export.Sheets;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>What lies behind the planks: lists, and lines to snap on the cloth.</summary>
internal static class BehindFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan)
    {
        if (plan.Behind is not { } behind)
        {
            return [];
        }

        ImmutableArray<FileWork> lists =
        [
            MadeFiles.Pdf(
                "what-lies-behind.pdf",
                plan,
                "what lies behind",
                () => BehindListPages.Of(plan)
            ),
            MadeFiles.File("what-lies-behind.csv", s => Csv.Write(BehindTables.Crossings(plan), s)),
        ];
        return behind.Snaps.IsEmpty
            ? lists
            :
            [
                .. lists,
                MadeFiles.Pdf("lines-to-snap.pdf", plan, "lines to snap", () => SnapPages.Of(plan)),
                MadeFiles.File("lines-to-snap.csv", s => Csv.Write(BehindTables.Snaps(plan), s)),
            ];
    }
}
