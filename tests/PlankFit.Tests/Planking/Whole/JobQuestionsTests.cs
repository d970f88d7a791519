using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking.Whole;

/// <summary>What is more often a slip than meant is asked about, and nothing that is usual is.</summary>
public sealed class JobQuestionsTests
{
    private static Job Of(string hull) =>
        JobReader.Read(Path.Combine(DemoTables.Folder(hull), "job.toml")).Job!;

    private static Job With(Job job, Func<PlankLayerSpec, PlankLayerSpec> change) =>
        job with
        {
            Layers = [.. job.Layers.Select(l => l is PlankLayerSpec p ? change(p) : l)],
        };

    [Theory]
    [InlineData("tender")]
    [InlineData("pilot-skiff")]
    [InlineData("survey-launch")]
    [InlineData("day-launch")]
    public void WhatIsUsualIsNotAskedAbout(string hull) => Assert.Empty(JobQuestions.Of(Of(hull)));

    [Fact]
    public void ThreeSkinsOnOneDiagonalAreAskedAbout()
    {
        Finding asked = Assert.Single(
            JobQuestions.Of(With(Of("tender"), p => p with { Heads = Heads.Aft }))
        );
        Assert.Equal((Rank.Know, "layer.heads"), (asked.Rank, asked.About.Key));
        Assert.StartsWith(
            "all 3 skins of the bottom head aft",
            asked.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void TwoSkinsAreBothAndNotAllTwo() =>
        Assert.StartsWith(
            "both skins of the bottom head forward",
            Assert
                .Single(
                    JobQuestions.Of(With(Of("pilot-skiff"), p => p with { Heads = Heads.Forward }))
                )
                .Message,
            StringComparison.Ordinal
        );

    /// <summary>A table in millimetres that is read in inches gives a hull of sixty metres, and one read in millimetres that is in inches one of a hand.</summary>
    [Theory]
    [InlineData("in", "200'-0\"", "longer than 30 m")]
    [InlineData("ft", "2400'-0\"", "longer than 30 m")]
    [InlineData("cm", null, null)]
    [InlineData("mm", null, null)]
    public void AHullOfNoBoatsSizeIsAskedAboutBeforeAllElse(string unit, string? says, string? told)
    {
        if (told is null)
        {
            Assert.Empty(OfSize(unit));
            return;
        }

        Finding asked = Assert.Single(OfSize(unit));
        Assert.Equal((Rank.DoNotSaw, true), (asked.Rank, asked.IsCause));
        Assert.Contains(says!, asked.Message, StringComparison.Ordinal);
        Assert.Contains(told, asked.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AHullOfAHandIsAskedAboutToo() =>
        Assert.Contains(
            "shorter than 1.5 m",
            Assert
                .Single(OfSize("mm", Texts.Offsets.Replace("0,600,1200,2400", "0,300,600,1200")))
                .Message,
            StringComparison.Ordinal
        );

    private static IEnumerable<Finding> OfSize(string unit, string? offsets = null) =>
        JobQuestions
            .Of(Texts.Sound(Texts.Job.Replace("units = \"mm\"", $"units = \"{unit}\""), offsets))
            .Where(f => f.About.Key == "job.units");

    [Fact]
    public void ATopsideThatIsPlankedThickerThanItsCornerIsTold()
    {
        Job job = Of("day-launch");
        double mm = Stack.Of(job.Panels[0]).ThicknessMm;
        Job With(double thicknessMm) =>
            job with
            {
                SettingUp = new SettingUpSpec
                {
                    Topside = new(
                        thicknessMm,
                        ChineLap.BottomLapsTopside,
                        Of("survey-launch").SettingUp!.Topside!.Slope
                    ),
                },
            };
        Assert.Empty(JobQuestions.Of(With(mm)));
        Finding told = Assert.Single(JobQuestions.Of(With(mm + 2)));
        Assert.Equal((Rank.SawAfter, "setting-up.topside"), (told.Rank, told.About.Key));
    }

    [Fact]
    public void AnAngleThatNoOtherSkinHasIsAskedAbout()
    {
        Job job = Of("tender");
        Finding asked = Assert.Single(
            JobQuestions.Of(With(job, p => p.Name == "middle" ? p with { AngleDegrees = 54 } : p))
        );
        Assert.Equal("layer middle", asked.Where);
        Assert.Contains("at 54 degrees", asked.Message, StringComparison.Ordinal);
        Assert.Equal(3, JobQuestions.Of(With(job, p => p with { AngleDegrees = 60 })).Count());
    }

    [Theory]
    [InlineData("0 600 1200 2400", "between 2 and 3")]
    [InlineData("0 600 1800 2400 3000", "between 1 and 2")]
    [InlineData("0 600 1200 1800", null)]
    [InlineData("0 600 1200 2400 3600 4800", null)]
    [InlineData("0 300 650 1050 1550", null)]
    public void AGapInARegularRowOfStationsIsAskedAbout(string positions, string? says)
    {
        OffsetTable table = new(
            [.. positions.Split(' ').Select((p, i) => new Station($"{i}", double.Parse(p, null)))],
            []
        );
        Finding[] asked = [.. JobQuestions.Of(Of("tender") with { Offsets = table })];
        Assert.Equal(says is null ? 0 : 1, asked.Length);
        Assert.All(asked, f => Assert.Contains(says!, f.Message, StringComparison.Ordinal));
    }
}
