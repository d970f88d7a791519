using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>[[panel]], the layers and ends of a panel, and what is said where they are wrong.</summary>
public sealed class PanelReadingTests
{
    private const string Head = """
        [job]
        name = "panels"
        units = "mm"
        [hull]
        offsets = "offsets.csv"
        offsets-are-to = "outside"
        keel = "keel edge"
        chine = "chine"

        """;

    private const string Bottom = """
        [[layer]]
        name = "skin"
        thickness = 9
        width = 150
        heads = "aft"
        angle = 45

        """;

    private const string Topside = """
        [[panel]]
        name = "topside"
        lower = "chine"
        upper = "sheer"

        """;

    private const string Side = """
        [[layer]]
        panel = "topside"
        name = "side"
        thickness = 6
        width = 120
        heads = "forward"
        angle = 50
        master = 1500

        """;

    private const string Offsets = """
        line,measure,0,1,2,3,4
        ,position,0,800,1600,3000,4400
        keel edge,height,400,210,95,35,20
        keel edge,half-breadth,25,32,40,55,55
        chine,height,700,545,470,410,390
        chine,half-breadth,100,240,360,440,450
        rubber,height,950,850,785,730,710
        rubber,half-breadth,180,380,570,710,730
        sheer,height,1200,1150,1100,1050,1030
        sheer,half-breadth,260,520,780,980,1010
        """;

    private static ReadResult Read(string job, string? offsets = null) =>
        JobReader.Read(job, "job.toml", offsets ?? Offsets, "offsets.csv");

    private static void Told(string job, string told, string? offsets = null)
    {
        ReadResult read = Read(job, offsets);
        Assert.Null(read.Job);
        Assert.Contains(
            read.Findings,
            f =>
                f.Severity == Severity.Error
                && f.Message.Contains(told, StringComparison.Ordinal)
                && f.Where.Contains("line ", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void APanelIsReadWithItsLayersAndEnds()
    {
        ReadResult read = Read(
            Head
                + Bottom
                + Topside.Replace(
                    "upper",
                    "between = [\"rubber\"]\nupper",
                    StringComparison.Ordinal
                )
                + Side
                + """
                [ends.topside]
                lower = { cut = "fit", allowance = 4 }
                upper = { cut = "left long", by = 30 }
                [[ends.topside.zone]]
                from = 0
                to = 900
                lower = { cut = "left long", by = 12 }
                """
        );
        Job job = read.Job!;
        Assert.NotNull(job);
        Assert.Equal(["skin"], job.Layers.Select(l => l.Name));
        PlankingJob side = Assert.Single(job.Panels);
        Panel panel = side.Hull.Panel;
        Assert.Equal(
            ("topside", "T", "chine", "sheer"),
            (panel.Name, panel.Letter, panel.Lower, panel.Upper)
        );
        Assert.Equal(["rubber"], panel.Between);
        Assert.False(panel.HasKeel);
        Assert.Equal(["side"], side.Layers.Select(l => l.Name));
        Assert.Equal(new(EndCut.Fit, 0, 4), side.Ends.Lower);
        Assert.Equal(EndRule.LeftLong(30), side.Ends.Upper);
        Assert.Equal(EndRule.LeftLong(25), side.Ends.Stem);
        Assert.Equal(EndRule.LeftLong(12), side.Ends.For(PanelEdge.Lower, 500));
        Assert.Equal(EndRule.Fit, job.Ends.Lower);
        Assert.Empty(side.Keel.Layers);
    }

    [Fact]
    public void WhereNothingIsSaidATopsideIsLeftLongAllRound()
    {
        Job job = Read(Head + Bottom + Topside + Side).Job!;
        Assert.All(
            Enum.GetValues<PanelEdge>(),
            e => Assert.Equal(EndRule.LeftLong(25), job.Panels[0].Ends.For(e, 0))
        );
    }

    [Fact]
    public void ABottomOfSheetsNeedsNoPlanks()
    {
        Job job = Read(Head + Topside + Side).Job!;
        Assert.Empty(job.Layers);
        BottomPlan plan = BottomPlanner
            .Plan(job, null, TestContext.Current.CancellationToken)
            .Plan!;
        Assert.Empty(plan.PlankLayers);
        Assert.NotNull(plan.Find("st1-07"));
        Assert.Equal(plan.Find("ST1-07")!.Id.Twin, plan.Find("PT1-07")!.Id);
    }

    [Fact]
    public void PositionsThatGrowForwardTurnWithTheTable()
    {
        string offsets = Offsets.Replace(
            "0,800,1600,3000,4400",
            "4400,3600,2800,1400,0",
            StringComparison.Ordinal
        );
        Job there = Read(Head + Bottom + Topside + Side).Job!,
            turned =
                Read(
                    Head.Replace(
                        "[hull]\n",
                        "[hull]\npositions = \"forward\"\n",
                        StringComparison.Ordinal
                    )
                        + Bottom
                        + Topside
                        + Side.Replace("master = 1500", "master = 2900", StringComparison.Ordinal),
                    offsets
                ).Job!;
        Assert.Equal(
            ((PlankLayerSpec)there.Panels[0].Layers[0]).MasterMm,
            ((PlankLayerSpec)turned.Panels[0].Layers[0]).MasterMm
        );
    }

    [Theory]
    [InlineData("name = \"topside\"", "name = \"bottom\"", "the bottom is what [hull]")]
    [InlineData("name = \"topside\"", "name = \"zone\"", "is the name of an edge")]
    [InlineData("name = \"topside\"", "name = \"7 up\"", "has no \"letter\"")]
    [InlineData("upper = \"sheer\"", "upper = \"sheer\"\nletter = \"t\"", "one capital letter")]
    [InlineData("upper = \"sheer\"", "upper = \"sher\"", "did you mean")]
    [InlineData("upper = \"sheer\"", "upper = \"chine\"", "is named twice")]
    [InlineData("upper = \"sheer\"", "upper = \"keel edge\"", "lies below its lower one")]
    [InlineData(
        "upper = \"sheer\"",
        "upper = \"sheer\"\nbetween = [\"rubber\"]\nknuckles = [\"rubber\"]",
        "make two panels, one from \"chine\" to \"rubber\""
    )]
    [InlineData(
        "upper = \"sheer\"",
        "upper = \"sheer\"\nbetween = [\"a\", \"b\", \"c\"]",
        "a section is drawn through 2 at most"
    )]
    [InlineData("upper = \"sheer\"", "upper = \"sheer\"\ncolour = \"red\"", "is not known in")]
    public void WhatIsWrongWithAPanelIsTold(string was, string now, string told) =>
        Told(
            Head
                + Bottom
                + Topside.Replace(was, now, StringComparison.Ordinal)
                + Side.Replace(
                    "\"topside\"",
                    now.StartsWith("name", StringComparison.Ordinal) ? now[7..] : "\"topside\"",
                    StringComparison.Ordinal
                ),
            told
        );

    [Fact]
    public void ALayerOfNoPanelAndAPanelOfNoLayerAreTold()
    {
        Told(Head + Bottom + Side, "no [[panel]] has this name");
        Told(
            Head
                + Bottom
                + Topside
                + Side.Replace("\"topside\"", "\"topsides\"", StringComparison.Ordinal),
            "did you mean \"topside\"?"
        );
        Told(Head + Bottom + Topside, "has no layer of planks");
        Told(
            Head
                + Bottom
                + Topside
                + Topside.Replace("\"topside\"", "\"transom panel\"", StringComparison.Ordinal)
                + Side,
            "would be named as those of \"topside\""
        );
        Told(
            Head + Bottom + "[ends.topside]\nlower = { cut = \"fit\" }\n",
            "\"topside\" is not known in [ends]"
        );
    }

    [Fact]
    public void TooFewStationsWithBothEdgesAreTold() =>
        Assert.Contains(
            Read(
                Head + Bottom + Topside + Side,
                Offsets
                    .Replace(
                        "1200,1150,1100,1050,1030",
                        ",,1100,1050,1030",
                        StringComparison.Ordinal
                    )
                    .Replace("260,520,780,980,1010", ",,780,980,1010", StringComparison.Ordinal)
            ).Findings,
            f =>
                f.Message.Contains(
                    "at which both chine and sheer have values",
                    StringComparison.Ordinal
                )
        );

    /// <summary>What belongs to the bottom alone is said to, where a job with panels asks for it.</summary>
    [Fact]
    public void WhatIsForTheBottomOnlyIsSaid()
    {
        ReadResult read = JobReader.Read(
            Head
                + Bottom
                + Topside
                + Side
                + "[setting-up]\n[as-built]\nmeasured = \"measured.csv\"\nfitted = [\"ST1-03\"]\n",
            "job.toml",
            Offsets,
            "offsets.csv",
            "what,where,side,value\ngirth,2,starboard,496\ngirth,2,port,496\n"
        );
        BottomPlan plan = BottomPlanner
            .Plan(read.Job!, null, TestContext.Current.CancellationToken)
            .Plan!;
        Assert.Contains(
            plan.Findings,
            f =>
                f.Where == "topside"
                && f.Message == "[setting-up] is worked out for the bottom only"
        );
        Assert.Contains(
            plan.Findings,
            f =>
                f.Message.StartsWith("girths were measured on the bottom", StringComparison.Ordinal)
        );
        Assert.True(plan.Find("ST1-03")!.IsFitted);
        Assert.False(plan.Find("PT1-03")!.IsFitted);
        Assert.False(plan.Find("S1-03")!.IsFitted);
    }

    [Fact]
    public void MeasuredSeamsOfOtherPanelsAndPlanksOfNoneAreRefused()
    {
        ReadResult seam = JobReader.Read(
            Head + Bottom + Topside + Side + "[as-built]\nmeasured = \"measured.csv\"\n",
            "job.toml",
            Offsets,
            "offsets.csv",
            "what,where,side,value\nseam at keel,ST1-03,starboard,900\n"
        );
        Assert.Null(seam.Job);
        Assert.Contains(
            seam.Findings,
            f => f.Message.Contains("is no plank of the bottom", StringComparison.Ordinal)
        );
        Told(
            Head + Bottom + "[as-built]\nfitted = [\"ST1-03\"]\n",
            "the job has no panel with the letter T"
        );
    }
}
