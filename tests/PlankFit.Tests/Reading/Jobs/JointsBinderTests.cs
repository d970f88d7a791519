using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>[joints] and what hangs on it, read, and each thing that can be wrong with it told at its place.</summary>
public sealed class JointsBinderTests
{
    [Fact]
    public void WhatIsLeftOutHasItsUsualFigure()
    {
        Job job = Texts.Sound(Texts.Job + "\n[joints]\nlongest = \"8 ft\"\nkind = \"scarf\"\n");
        JointStock stock = job.Joints!.Of("inner")!;
        Assert.Equal(2438.4, stock.LongestMm, 1e-9);
        Assert.Equal(609.6, stock.ShortestMm, 1e-9);
        // Gougeon Brothers on Boat Construction, ch. 12 (read): 8:1.
        Assert.Equal(8, stock.ScarfRatio);
        Assert.Equal(JointKind.Scarf, stock.Kind);
        Assert.Equal(["stringer", "frame", "floor", "solid"], stock.On);
        Assert.Empty(stock.StockLengthsMm);
    }

    /// <summary>Great Lakes underwriters 1866 (read): 5 ft, 4 ft with a strake between, three strakes between on one timber. Old Lloyd's yacht rules, second hand: scarfs 1.2 m apart.</summary>
    [Fact]
    public void TheRulesThatComeWithTheProgramAreThoseOfTheirSources()
    {
        Job job = Texts.Sound(Texts.Job + "\n[joints]\nlongest = 2400\nkind = \"butt\"\n");
        JointSpec spec = job.Joints!;
        Assert.Equal(1524, Of(JointKind.Butt, JointRuleKind.NextPlank)!.DistanceMm!.Value, 1e-9);
        Assert.Equal(1219.2, Of(JointKind.Butt, JointRuleKind.OneBetween)!.DistanceMm!.Value, 1e-9);
        Assert.Equal(3, Of(JointKind.Butt, JointRuleKind.SameBacking)!.Count);
        Assert.Equal(1200, Of(JointKind.Scarf, JointRuleKind.NextPlank)!.DistanceMm!.Value, 1e-9);
        Assert.Null(Of(JointKind.Scarf, JointRuleKind.OneBetween));
        Assert.Equal(3, Of(JointKind.Scarf, JointRuleKind.SameBacking)!.Count);
        Assert.Contains(
            "1866",
            Of(JointKind.Butt, JointRuleKind.NextPlank)!.Source,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "second hand",
            Of(JointKind.Scarf, JointRuleKind.NextPlank)!.Source,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "no source",
            Of(JointKind.Butt, JointRuleKind.SeamsBelow)!.Source,
            StringComparison.Ordinal
        );

        JointRule? Of(JointKind kind, JointRuleKind what) =>
            spec.RulesFor(
                    spec.Usual! with
                    {
                        Kind = kind,
                    },
                    job.Layers.OfType<PlankLayerSpec>().First(),
                    1
                )
                .SingleOrDefault(r => r.What == what);
    }

    [Fact]
    public void TheJobsOwnRulesStandInPlaceOfThoseAndNoughtAsksForNothing()
    {
        Job job = Texts.Sound(
            Texts.Job
                + """

                [joints]
                kind = "butt"
                on = ["stringer", "keelson"]
                shortest = 400
                [[joints.layer]]
                name = "inner"
                stock-lengths = [3000, "8 ft"]
                [[joints.rule]]
                what = "next plank"
                distance = 300
                source = "two widths"
                [[joints.rule]]
                what = "same backing"
                count = 0
                """
        );
        JointSpec spec = job.Joints!;
        JointStock stock = spec.Of("inner")!;
        Assert.Null(spec.Usual);
        Assert.Equal(3000, stock.LongestMm);
        Assert.Equal(400, stock.ShortestMm);
        Assert.Equal(JointKind.Butt, stock.Kind);
        Assert.Equal(["stringer", "keelson"], stock.On);
        Assert.Equal([2438.4, 3000], stock.StockLengthsMm);
        ImmutableArray<JointRule> rules = spec.RulesFor(
            stock,
            job.Layers.OfType<PlankLayerSpec>().First(),
            1
        );
        JointRule next = rules[0];
        Assert.Equal(
            (JointRuleKind.NextPlank, 300.0, "two widths"),
            (next.What, next.DistanceMm!.Value, next.Source)
        );
        Assert.DoesNotContain(rules, r => r.What == JointRuleKind.SameBacking);
        Assert.Equal([JointRuleKind.SameBacking], spec.SwitchedOff.Select(r => r.What));
    }

    /// <summary>A layer of a topside is one of planks: what is wrong is that joints are the bottom's.</summary>
    [Fact]
    public void ALayerOfAnotherPanelIsToldSo() =>
        Texts.Finds(
            Texts.Read(
                Texts.Job
                    + """

                    [[panel]]
                    name = "topside"
                    lower = "chine"
                    upper = "sheer"
                    [[layer]]
                    panel = "topside"
                    name = "side"
                    thickness = 9
                    width = 150
                    heads = "aft"
                    angle = 45
                    [joints]
                    longest = 2400
                    kind = "butt"
                    [[joints.layer]]
                    name = "side"
                    """
            ),
            Severity.Error,
            "job.toml, line 32, column 8",
            "is a layer of the topside",
            "the bottom alone"
        );

    /// <summary>Two layers are taken to be glued on each other; a job whose layers are not says so.</summary>
    [Theory]
    [InlineData("", null)]
    [InlineData("skin = \"planks on frames\"\n", Skin.OnFrames)]
    [InlineData("skin = \"glued layers\"\n", Skin.GluedLayers)]
    public void WhoseRulesComeWithTheProgramCanBeSaid(string said, Skin? skin) =>
        Assert.Equal(
            skin,
            Texts
                .Sound(Texts.Job + "\n[joints]\nlongest = 2400\nkind = \"butt\"\n" + said)
                .Joints!.Skin
        );

    [Theory]
    [InlineData("kind = \"butt\"", 17, 1, "\"longest\"")]
    [InlineData("longest = 2400", 17, 1, "\"kind\"", "scarf")]
    [InlineData("longest = 0\nkind = \"butt\"", 18, 11, "greater than 0")]
    [InlineData("longest = 2400\nshortest = 1300\nkind = \"butt\"", 19, 12, "half the longest")]
    [InlineData("longest = 2400\nkind = \"but\"", 19, 8, "did you mean \"butt\"")]
    [InlineData("longest = 2400\nkind = \"scarf\"\nratio = 3", 20, 9, "4 to 40")]
    [InlineData("longest = 2400\nkind = \"butt\"\non = [\"block\"]", 20, 6, "no block")]
    [InlineData("longest = 2400\nkind = \"butt\"\nblock = 0", 20, 9, "greater than 0")]
    [InlineData("longest = 2400\nkind = \"butt\"\ngrid = 1", 20, 8, "at least 5")]
    [InlineData("longest = 2400\nkind = \"butt\"\nbearing = -1", 20, 11, "negative")]
    [InlineData("longest = 2400\nkind = \"butt\"\nlongets = 1", 20, 1, "did you mean \"longest\"")]
    [InlineData("longest = 2400\nkind = \"butt\"\nstock-lengths = [1200, \"x\"]", 20, 24, "\"x\"")]
    [InlineData(
        "longest = 2400\nkind = \"butt\"\nstock-lengths = [1200, 0]",
        20,
        24,
        "greater than 0"
    )]
    [InlineData(
        "longest = 2400\nkind = \"butt\"\nstock-lengths = [1200]",
        18,
        11,
        "longer than any"
    )]
    [InlineData("longest = 2400\nkind = \"butt\"\nstock-lengths = 1200", 20, 17, "list of lengths")]
    [InlineData(
        "longest = 2400\nkind = \"butt\"\n[[joints.layer]]\nname = \"iner\"",
        21,
        8,
        "did you mean \"inner\""
    )]
    [InlineData(
        "longest = 2400\nkind = \"butt\"\n[[joints.rule]]\nwhat = \"next\"",
        21,
        8,
        "is not known"
    )]
    [InlineData(
        "longest = 2400\nkind = \"butt\"\n[[joints.rule]]\nwhat = \"next plank\"",
        20,
        1,
        "\"distance\""
    )]
    [InlineData(
        "longest = 2400\nkind = \"butt\"\n[[joints.rule]]\nwhat = \"same backing\"\ncount = 9",
        22,
        9,
        "0 to 7"
    )]
    [InlineData(
        "longest = 2400\nkind = \"butt\"\n[[joints.rule]]\nwhat = \"same backing\"\ncount = 1.5",
        22,
        9,
        "0 to 7"
    )]
    [InlineData(
        "longest = 2400\nkind = \"butt\"\n[[joints.rule]]\nwhat = \"next plank\"\ndistance = -1",
        22,
        12,
        "negative"
    )]
    [InlineData(
        "longest = 2400\nkind = \"butt\"\n[[joints.rule]]\nwhat = \"next plank\"\ndistance = 1\ncount = 1",
        23,
        9,
        "same backing"
    )]
    [InlineData(
        "longest = 2400\nkind = \"butt\"\n[[joints.rule]]\nwhat = \"next plank\"\ndistance = 1\n[[joints.rule]]\nwhat = \"next plank\"\ndistance = 2",
        24,
        8,
        "already"
    )]
    public void WhatIsWrongIsToldAtItsPlace(
        string joints,
        int line,
        int column,
        params string[] words
    ) =>
        Texts.Finds(
            Texts.Read(Texts.Job + "\n[joints]\n" + joints + "\n"),
            Severity.Error,
            $"job.toml, line {line}, column {column}",
            words
        );
}
