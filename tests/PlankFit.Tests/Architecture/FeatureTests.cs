using System.Text.RegularExpressions;

namespace PlankFit.Tests.Architecture;

/// <summary>
/// A feature is a leaf: beside its own files only those name it that name every feature (the job, the plan, the planner, the readers, the list of files and the list of
/// what is shown on planks), other features that stand on it, and, for features that are not leaves yet, the files that are listed here. None may be added to them.
/// </summary>
public sealed class FeatureTests
{
    /// <summary>The files that name every feature.</summary>
    private static readonly string[] Hubs =
    [
        "PlankFit.Planking/Whole/Job.cs",
        "PlankFit.Planking/Whole/BottomPlan.cs",
        "PlankFit.Planking/Whole/PlanParts.cs",
        "PlankFit.Reading/Drafts/JobDraft.cs",
        "PlankFit.Reading/Jobs/JobBinder.cs",
        "PlankFit.Reading/Jobs/DraftedJob.cs",
        "PlankFit.Reading/Jobs/JobKeys.cs",
        "PlankFit.Export/Whole/OnPlanks.cs",
        "PlankFit.App/Laying/LayFiles.cs",
    ];

    private static readonly Dictionary<(string From, string To), string> Why = Read();

    /// <summary>Fastenings are a leaf altogether.</summary>
    [Fact]
    public void NothingButTheListsNamesFastenings() =>
        Assert.Empty(Named(Why, @"/Fastenings?(/|[A-Z])"));

    /// <summary>A card that asks for fastenings of its own accord is told by name.</summary>
    [Fact]
    public void APlantedMentionIsTold()
    {
        Dictionary<(string From, string To), string> why = new(Why)
        {
            [
                (
                    "PlankFit.Export/Cards/PlankCard.cs",
                    "PlankFit.Planking/Fastenings/FasteningPlan.cs"
                )
            ] = "FasteningPlan",
        };
        Assert.Equal(
            ["PlankFit.Export/Cards/PlankCard.cs needs FasteningPlan"],
            Named(why, @"/Fastenings?(/|[A-Z])")
        );
    }

    /// <summary>Arrows from one project into another are seen, or the law above would hold of anything.</summary>
    [Fact]
    public void ArrowsBetweenProjectsAreSeen()
    {
        Assert.Contains(
            ("PlankFit.App/Laying/LayFiles.cs", "PlankFit.Planking/Whole/BottomPlan.cs"),
            Why.Keys
        );
        Assert.Contains(
            (
                "PlankFit.Export/Fastenings/FasteningsOnPlanks.cs",
                "PlankFit.Planking/Fastenings/FasteningPlan.cs"
            ),
            Why.Keys
        );
    }

    /// <summary>Files outside a feature and the lists that name one of its types.</summary>
    private static string[] Named(
        Dictionary<(string From, string To), string> why,
        string ownFiles
    ) =>
        [
            .. why.Where(w =>
                    Regex.IsMatch(w.Key.To, ownFiles)
                    && !Regex.IsMatch(w.Key.From, ownFiles)
                    && !Hubs.Contains(w.Key.From)
                )
                .Select(w => $"{w.Key.From} needs {w.Value}")
                .Order(StringComparer.Ordinal),
        ];

    private static Dictionary<(string From, string To), string> Read() =>
        Arrows
            .Across(
                new[] { "Planking", "Nesting", "Reading", "Export", "App", "Cli", "Page" }.Select(
                    p =>
                        (
                            Path.GetFullPath(
                                Path.Combine(HouseRules.Root(), "src", $"PlankFit.{p}")
                            ),
                            Path.Combine(AppContext.BaseDirectory, HouseRules.AssemblyOf(p))
                        )
                )
            )
            .Why;
}
