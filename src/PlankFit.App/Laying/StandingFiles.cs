using System.Collections.Immutable;
using PlankFit.Export;
using PlankFit.Export.Sheets;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>The hull as it stands: corrections and drift.</summary>
internal static class StandingFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan) =>
        plan.Standing is not { } standing
            ? []
            :
            [
                MadeFiles.File("standing.json", s => StandingJson.Write(plan.Job, standing, s)),
                MadeFiles.File(
                    "standing.csv",
                    s => Csv.Write(StandingTables.Of(plan.Job, standing), s)
                ),
                MadeFiles.Pdf(
                    "standing.pdf",
                    plan,
                    "the hull as it stands",
                    () => StandingPages.Of(plan, standing)
                ),
            ];
}
