using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading.Measured;

/// <summary>The table [as-built] of a job, right and wrong.</summary>
public sealed class AsBuiltTableTests
{
    private static readonly string Folder = DemoTables.Folder("tender");
    private static readonly string Job = File.ReadAllText(Path.Combine(Folder, "job.toml"));
    private static readonly string Table = File.ReadAllText(Path.Combine(Folder, "offsets.csv"));

    [Fact]
    public void FittedPlanksAreNamedOneByOneAndInRuns()
    {
        ReadResult read = Read("fitted = [\"S1-09..S1-11\", \"P2-07\", \"S1-10\"]\nfrom = \"5\"");
        Assert.Empty(read.Findings);
        Assert.Equal(
            ["S1-09", "S1-10", "S1-11", "P2-07"],
            read.Job!.AsBuilt.Fitted.Select(id => id.ToString())
        );
        Assert.Equal("5", read.Job.AsBuilt.From);
        Assert.False(read.Job.AsBuilt.IsEmpty);
        Assert.True(read.Job.AsBuilt.NothingMeasured);
    }

    [Theory]
    [InlineData("fitted = [\"10\"]", "\"10\"", "looks like S1-10")]
    [InlineData("fitted = [\"S1-10..P1-12\"]", "S1-10..P1-12", "one side and layer")]
    [InlineData("fitted = [\"S1-12..S1-10\"]", "S1-12..S1-10", "from the forward plank")]
    [InlineData("fitted = [\"S1-01..S1-02..S1-03\"]", "S1-01", "a run of them")]
    [InlineData("fitted = [\"S7-10\"]", "S7-10", "3 layers")]
    [InlineData("from = \"12\"", "12", "no station")]
    [InlineData("fited = [\"S1-10\"]", "fited", "fitted")]
    public void WhatIsWrongIsNamedWithItsPlace(string line, string written, string message)
    {
        ReadResult read = Read(line);
        Finding fault = Assert.Single(read.Findings);
        Assert.Null(read.Job);
        Assert.StartsWith("job.toml, line ", fault.Where, StringComparison.Ordinal);
        Assert.Contains(written, fault.Message, StringComparison.Ordinal);
        Assert.Contains(message, fault.Message, StringComparison.Ordinal);
    }

    /// <summary>A job that says nothing of how the hull stands, and one that says only where a tape would be hooked, are the same job.</summary>
    [Fact]
    public void NothingSaidIsNothingDone()
    {
        AsBuiltSpec standing = Read("from = \"3\"").Job!.AsBuilt;
        Assert.True(standing.IsEmpty);
        Assert.True(JobReader.Read(Job, "job.toml", Table, "offsets.csv").Job!.AsBuilt.IsEmpty);
    }

    private static ReadResult Read(string lines) =>
        JobReader.Read($"{Job}\n[as-built]\n{lines}\n", "job.toml", Table, "offsets.csv");
}
