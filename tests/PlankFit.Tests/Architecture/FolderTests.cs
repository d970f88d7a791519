using PlankFit.Tests.Support;

namespace PlankFit.Tests.Architecture;

/// <summary>Folders need each other one way only, in every project; and no more than four files go round in a circle.</summary>
public sealed class FolderTests
{
    private const int MostFilesInACircle = 4;

    public static TheoryData<string> Projects =>
        [
            "Geometry",
            "Planking",
            "Nesting",
            "Reading",
            "Draughting",
            "Export",
            "App",
            "Cli",
            "Page",
        ];

    [Theory]
    [MemberData(nameof(Projects))]
    public void NoFolderNeedsOneThatNeedsIt(string project)
    {
        Arrows arrows = Of(project);
        Assert.True(arrows.Why.Count > 3, $"{arrows.Why.Count} arrows");
        Assert.Equal("", Told(arrows.Why));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void NoMoreThanFourFilesGoRound(string project) =>
        Assert.DoesNotContain(
            Circles.Of(Of(project).Why.Keys),
            circle => circle.Length > MostFilesInACircle
        );

    /// <summary>One file low down that needs one on top closes a circle, which is named with all its folders and with the type for whose sake it is there.</summary>
    [Fact]
    public void APlantedArrowUpwardIsTold()
    {
        Dictionary<(string From, string To), string> why = new(Of("Planking").Why)
        {
            [("Units/LengthText.cs", "Whole/Job.cs")] = "Job",
        };
        string told = Told(why);
        Assert.Contains("Units", told, StringComparison.Ordinal);
        Assert.Contains(
            "Units/LengthText.cs needs Whole/Job.cs for Job",
            told,
            StringComparison.Ordinal
        );
    }

    /// <summary>Known arrows are there: a type in a signature, one within a body, one as the argument of another.</summary>
    [Theory]
    [InlineData("Planks/PlankForm.cs", "Findings/PlankId.cs", false)]
    [InlineData("Laying/SidePlanner.cs", "Laying/LayerPlanner.cs", true)]
    [InlineData("Fastenings/FasteningPlanner.cs", "Framing/FramingPlan.cs", true)]
    [InlineData("Framing/FramingPlanner.cs", "Fastenings/FasteningPlan.cs", false)]
    public void WhatIsKnownToNeedWhatIsSeen(string from, string to, bool needs) =>
        Assert.Equal(needs, Of("Planking").Why.ContainsKey((from, to)));

    private static Arrows Of(string project) =>
        Arrows.Of(
            Path.Combine(DemoTables.Folder("tender"), "..", "..", "src", $"PlankFit.{project}"),
            Path.Combine(AppContext.BaseDirectory, HouseRules.AssemblyOf(project))
        );

    private static string Told(Dictionary<(string From, string To), string> why)
    {
        (string From, string To, string Words)[] between =
        [
            .. why.Select(w =>
                    (
                        From: Folder(w.Key.From),
                        To: Folder(w.Key.To),
                        Words: $"{w.Key.From} needs {w.Key.To} for {w.Value}"
                    )
                )
                .Where(a => a.From != a.To),
        ];
        IReadOnlyList<string[]> circles = Circles.Of(between.Select(b => (b.From, b.To)));
        return string.Join(
            "\n",
            circles.SelectMany(c =>
                between
                    .Where(b => c.Contains(b.From) && c.Contains(b.To))
                    .Select(b => b.Words)
                    .Order(StringComparer.Ordinal)
                    .Prepend(string.Join(", ", c) + " need each other:")
            )
        );
    }

    private static string Folder(string file) => Path.GetDirectoryName(file)!.Replace('\\', '/');
}
