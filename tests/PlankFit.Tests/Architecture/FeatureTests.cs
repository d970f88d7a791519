using System.Text.RegularExpressions;

namespace PlankFit.Tests.Architecture;

/// <summary>
/// A feature is a leaf: beside its own files only those name it that name every feature (the job, the plan, the planners, the readers, the list of files, the list of
/// what is shown on planks, the list of commands), and other features that stand on it by the trade's own logic. Its files deleted and its lines in those, the program
/// builds.
/// </summary>
public sealed partial class FeatureTests
{
    /// <summary>The files that name every feature, or every one that has positions, faults or questions of its own, or a command.</summary>
    private static readonly string[] Hubs =
    [
        "PlankFit.Planking/Whole/Job.cs",
        "PlankFit.Planking/Whole/BottomPlan.cs",
        "PlankFit.Planking/Whole/BottomPlanner.cs",
        "PlankFit.Planking/Whole/PlanParts.cs",
        "PlankFit.Planking/Whole/JobChecks.cs",
        "PlankFit.Planking/Whole/JobQuestions.cs",
        "PlankFit.Reading/Drafts/JobDraft.cs",
        "PlankFit.Reading/Jobs/JobBinder.cs",
        "PlankFit.Reading/Jobs/DraftedJob.cs",
        "PlankFit.Reading/Jobs/JobKeys.cs",
        "PlankFit.Reading/Jobs/FurtherFaults.cs",
        "PlankFit.Reading/Jobs/Positions.cs",
        "PlankFit.Export/Whole/OnPlanks.cs",
        "PlankFit.App/Laying/LayFiles.cs",
        "PlankFit.App/Planning/PlannedJob.cs",
        "PlankFit.App/Planning/Planner.cs",
        "PlankFit.Cli/Commands.cs",
        "PlankFit.Page/Serving/OpenJobs.cs",
        "PlankFit.Page/Serving/PageServer.cs",
    ];

    /// <summary>Its own files, and the features that stand on it; patterns for paths.</summary>
    private static readonly Dictionary<string, (string Own, string StandOnIt)> Leaves = new()
    {
        ["fastenings"] = ("/Fastenings?(/|[A-Z])", "^$"),
        ["structure"] = ("/Structure(/|[A-Z])", "^$"),
        ["setting-up"] = ("/SettingUp(/|[A-Z])", "^$"),
        ["panels laid flat"] = ("(Planking|Export)/Panels/|Laying/PanelFiles", "^$"),
        ["lay-outs side by side"] = ("/Compar(ing/|eCommand)|Page/.*Other", "^$"),
        ["the keel held against the planking"] = (
            "/KeelCheck/|Export/Keel/|/Keels/|/KeelFiles",
            "^$"
        ),
        ["the hull as it stands"] = ("(Planking|Export)/AsBuilt/|/AsBuiltFiles", "^$"),
        ["timber"] = ("(Planking|Export)/Timber/|/TimberFiles", "/Structure/"),
        ["glue"] = (
            "/Glu(e|ing)/|/GlueFiles|Page/.*/Laying|/Sessions/S?(Better|Session)|/Planning/(GluedByNotes|ProgressBeside)",
            "/Structure/"
        ),
        ["sheathing"] = ("/Sheathing(/|[A-Z])", "/(Glue|Structure)/"),
        // What the tape says is judged by it, and read only where it is asked for.
        ["trust"] = (
            "/Trust/|/TrustFiles",
            "/Taping|/TapedReadings|/Planning/Advised|Reading/AsBuilt/"
        ),
    };

    public static TheoryData<string> Features => [.. Leaves.Keys];

    private static readonly Dictionary<(string From, string To), string> Why = Read();

    [Theory]
    [MemberData(nameof(Features))]
    public void NothingButTheListsAndWhatStandsOnItNamesAFeature(string feature) =>
        Assert.DoesNotContain(
            Named(Why, Leaves[feature].Own),
            n => !Regex.IsMatch(n.Split(' ')[0], Leaves[feature].StandOnIt)
        );

    /// <summary>A constant leaves no trace in compiled code: whoever takes one of a feature has the feature's namespace among its usings, since none stands there in vain.</summary>
    [Theory]
    [MemberData(nameof(Features))]
    public void NothingElseUsesItsNamespaces(string feature)
    {
        (string own, string standOnIt) = Leaves[feature];
        (string Path, string Space, string[] Usings)[] files =
        [
            .. HouseRules
                .SourceFiles()
                .Select(f =>
                    (
                        Path.GetRelativePath(Path.Combine(HouseRules.Root(), "src"), f)
                            .Replace('\\', '/'),
                        Text: File.ReadAllText(f)
                    )
                )
                .Select(f =>
                    (
                        f.Item1,
                        Space().Match(f.Text).Groups[1].Value,
                        Using().Matches(f.Text).Select(m => m.Groups[1].Value).ToArray()
                    )
                ),
        ];
        // A folder that has other files as well is nobody's.
        string[] spaces =
        [
            .. files
                .GroupBy(f => f.Space)
                .Where(g => g.All(f => Regex.IsMatch(f.Path, own)))
                .Select(g => g.Key),
        ];
        Assert.NotEmpty(spaces);
        Assert.DoesNotContain(
            files.Where(f =>
                !Regex.IsMatch(f.Path, own)
                && !Regex.IsMatch(f.Path, standOnIt)
                && !Hubs.Contains(f.Path)
            ),
            f => f.Usings.Intersect(spaces).Any()
        );
    }

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
            Named(why, Leaves["fastenings"].Own)
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

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Space();

    [GeneratedRegex(@"^using ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Using();
}
