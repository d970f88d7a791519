using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Trust;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>[trust] as a job writes it.</summary>
public sealed class TrustReadingTests
{
    [Fact]
    public void AloneItAsksWithTheUsualValues()
    {
        Assert.Equal(TrustSpec.Default, Read("mm", "[trust]"));
        Assert.Equal(TrustSpec.Default with { ReadToMm = 25.4 / 16 }, Read("ft-in-8", "[trust]"));
        Assert.Null(Read("mm", ""));
    }

    [Fact]
    public void EveryFigureIsTakenInTheJobsUnit()
    {
        TrustSpec spec = Read(
            "ft-in-8",
            """
            [trust]
            read-to = "1/8 in"
            lofted-within = "1/32 in"
            frames-made-within = "2 mm"
            keel-made-within = "1 mm"
            frames-stand-within = { athwart = "1/4 in", heel = 3 }
            bends-within = { chine = 0, over = 0.3 }
            stock-within = { width = "1 mm" }
            tape-within = "1/16 in"
            saw-when = "1/8 in"
            """
        )!;
        Assert.Equal(3.175, spec.ReadToMm, 1e-12);
        Assert.Equal(0.79375, spec.LoftedWithinMm, 1e-12);
        Assert.Equal((2, 1), (spec.FramesMadeWithinMm, spec.KeelMadeWithinMm));
        Assert.Equal(
            FrameStanding.Default with
            {
                AthwartMm = 6.35,
                HeelMmPerM = 3,
            },
            spec.Standing
        );
        Assert.Equal(LineBends.Default with { ChineMm = 0, Over = 0.3 }, spec.Bends);
        Assert.Equal((1, 0.3), (spec.StockWidthWithinMm, spec.StockThicknessWithinMm));
        Assert.Equal(1.5875, spec.TapeWithinMm, 1e-12);
        Assert.Equal((3, 4), (spec.StringWithinMm, spec.LevelWithinMm));
        Assert.Equal(3.175, spec.SawWhenMm, 1e-12);
    }

    [Theory]
    [InlineData("frames-made-within = -1", "must be from 0 to")]
    [InlineData("tape-within = 0", "must be more than 0")]
    [InlineData("bends-within = { over = 0 }", "0.02 to 2")]
    [InlineData("stock-within = 0.2", "must be a table")]
    [InlineData("frames-stand-within = { hell = 2 }", "heel")]
    public void WhatItCannotBeIsToldByItsLine(string line, string told)
    {
        ImmutableArray<Finding> found = JobBinder
            .Read($"[job]\nname = \"x\"\nunits = \"mm\"\n[trust]\n{line}\n", "job.toml")
            .Findings;
        Assert.Contains(
            found,
            f => f.Where.Contains("5") && f.Message.Contains(told, StringComparison.Ordinal)
        );
    }

    private static TrustSpec? Read(string units, string trust) =>
        JobBinder
            .Read($"[job]\nname = \"x\"\nunits = \"{units}\"\n{trust}\n", "job.toml")
            .Draft.Parts.Trust;
}
