using CsCheck;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Jobs;
using PlankFit.Reading.Text;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading;

/// <summary>A place that a hand has moved, written into the job's text and read again, is that place, whichever way positions grow and in every unit.</summary>
public sealed class PositionTextTests
{
    [Theory]
    [InlineData("survey-launch")]
    [InlineData("tender")]
    [InlineData("pilot-skiff")]
    [InlineData("day-launch")]
    public void WhatIsWrittenIsReadAsTheSamePlace(string hull)
    {
        string path = Path.Combine(DemoTables.Demo(hull), "job.toml"),
            text = File.ReadAllText(path);
        Job job = Read(path, text);
        double step = LengthUnits.IsMetric(job.WrittenIn) ? 1 : LengthUnits.MmPerInch / 32;
        Gen.Double[1500, 3000]
            .Sample(
                x =>
                {
                    string changed = JobChange.Of(
                        text,
                        "layer[0].master",
                        PositionText.Of(job, x)!
                    )!;
                    double read = ((PlankLayerSpec)Read(path, changed).Planking.Layers[0])
                        .MasterMm!
                        .Value;
                    return Math.Abs(read - x) <= (step / 2) + 1e-6;
                },
                iter: LongRuns.Of(5, 200)
            );
    }

    [Fact]
    public void NoPlaceIsNoText()
    {
        Job job = PrismaticPlan.Build().Job;
        Assert.Null(PositionText.Of(job, double.NaN));
        Assert.Null(PositionText.Of(job, double.PositiveInfinity));
        Assert.Equal("1235", PositionText.Of(job, 1234.6));
        Assert.Equal("4765", PositionText.Of(job with { PositionsFromMm = 6000 }, 1234.6));
    }

    private static Job Read(string path, string text) =>
        JobReader
            .Read(path, TextFile.Decode(System.Text.Encoding.UTF8.GetBytes(text), "job.toml"))
            .Job!;
}
