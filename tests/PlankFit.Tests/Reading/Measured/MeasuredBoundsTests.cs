using PlankFit.Planking.Findings;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Reading.Jobs;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading.Measured;

/// <summary>A reading that no tape gives on this hull is named with its line, and nothing is bent to it.</summary>
public sealed class MeasuredBoundsTests
{
    private static ReadResult Read(string right, string wrong, string hull = "tender")
    {
        string folder = DemoTables.Folder($"{hull}-as-she-stands");
        string job = File.ReadAllText(Path.Combine(folder, "job.toml")),
            measured = File.ReadAllText(Path.Combine(folder, "measured.csv"));
        Assert.Contains(right, measured, StringComparison.Ordinal);
        return JobReader.Read(
            job,
            "job.toml",
            File.ReadAllText(Path.Combine(DemoTables.Folder(hull), "offsets.csv")),
            "offsets.csv",
            measured.Replace(right, wrong, StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("girth,5,starboard,470", "girth,5,starboard,4700", 4, "4700", "about 4")]
    [InlineData("girth,5,starboard,470", "girth,5,starboard,47", 4, "47", "about 4")]
    [InlineData("S1-16,starboard,534.5", "S1-16,starboard,53450", 12, "53450", "the whole hull")]
    public void AReadingOutOfAllBoundsIsNamedWithItsLine(
        string right,
        string wrong,
        int line,
        string written,
        string says
    )
    {
        ReadResult result = Read(right, wrong);
        Assert.Null(result.Job);
        Finding fault = Assert.Single(result.Findings, f => f.Severity == Severity.Error);
        Assert.Equal($"measured.csv, line {line}, column 4 (value)", fault.Where);
        Assert.StartsWith($"\"{written}\": ", fault.Message, StringComparison.Ordinal);
        Assert.Contains(says, fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("girth,5,starboard,470", "girth,5,starboard,470")]
    [InlineData("girth,5,starboard,470", "girth,5,starboard,520")]
    [InlineData("girth,5,starboard,470", "girth,5,starboard,415")]
    public void AFrameThatIsFarOutIsTakenAsItIs(string right, string wrong) =>
        Assert.NotNull(Read(right, wrong).Job);

    /// <summary>At station 2 the keel's half-breadth is 40 and the chine's 650: half way is 345 mm.</summary>
    [Theory]
    [InlineData("345", null)]
    [InlineData("345.5", "half way to the chine is 345 mm there")]
    public void NoKeelReachesHalfWayToTheChine(string value, string? says)
    {
        ReadResult result = JobReader.Read(
            Texts.Job
                + "\n[[keel-layer]]\nname = \"first\"\nmeets = \"inner\"\nthickness = 9\nhalf-width = \"mitre\"\n[as-built]\nmeasured = \"measured.csv\"\n",
            "job.toml",
            Texts.Offsets,
            "offsets.csv",
            $"what,where,side,value\nkeel half-width,first/2,starboard,{value}\n"
        );
        Finding[] errors = [.. result.Findings.Where(f => f.Severity == Severity.Error)];
        if (says is null)
        {
            Assert.Empty(errors);
            return;
        }

        Finding fault = Assert.Single(errors);
        Assert.Equal("measured.csv, line 2, column 4 (value)", fault.Where);
        Assert.Contains(says, fault.Message, StringComparison.Ordinal);
    }
}
