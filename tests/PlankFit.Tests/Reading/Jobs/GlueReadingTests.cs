using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Reading.Names;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>What only the product knows is asked for and refused where it is not there, with its line.</summary>
public sealed class GlueReadingTests
{
    private const string Fillet = "[[fillet]]";

    [Fact]
    public void WhatTheDataSheetSaysIsRead()
    {
        GlueSpec spec = EveryName.Read().Job!.Glue!;
        Assert.Equal(2, spec.Resin!.Ratio.ResinPerHardener);
        Assert.Equal(60, spec.Resin.Clocks.Pot.Minutes(20, 100), 1e-9);
        Assert.Equal(32, spec.Resin.Clocks.Pot.Minutes(30, 100), 1e-9);
        Assert.Equal([(480, 720), (780, 1020)], spec.Clock!.Shifts);
        Assert.Equal(16, spec.Clock.Temperature.Celsius(480));
        Assert.Equal(3, spec.Crew!.Hands);
        Assert.Equal(8000, spec.Fillets[0].LengthMm);
    }

    [Fact]
    public void ATemperatureInFahrenheitIsTheSame()
    {
        GlueSpec spec = Read("at = \"20 C\"", "at = \"68 F\"").Job!.Glue!;
        Assert.Equal(60, spec.Resin!.Clocks.Pot.Minutes(20, 100), 1e-9);
    }

    [Theory]
    [InlineData("density = [1.15, 0.97]", "", "[resin]", "no \"density\"")]
    [InlineData("parts-by-volume = [2, 1]", "", "[resin]", "parts-by-mass")]
    [InlineData(
        "parts-by-volume = [2, 1]",
        "parts-by-volume = [2]",
        "parts-by-volume",
        "two numbers"
    )]
    [InlineData("minutes = 80", "minutes = 280", "[[resin.film]]", "lasts longer the warmer")]
    [InlineData(
        "at = \"30 C\"\nminutes = 80",
        "at = \"20 C\"\nminutes = 80",
        "[[resin.film]]",
        "two temperatures"
    )]
    [InlineData("hands = 3", "", "[crew]", "no \"hands\"")]
    [InlineData("\"08:00-12:00\"", "\"08:00-07:00\"", "\"08:00-07:00\"", "in order")]
    [InlineData("at = \"08:00\"", "at = \"25:00\"", "at = \"25:00\"", "an hour of the day")]
    [InlineData("is = \"16 C\"", "is = \"16\"", "is = \"16\"", "degrees with their scale")]
    public void WhatIsMissingOrWrongIsRefusedAtItsLine(
        string was,
        string now,
        string line,
        string said
    )
    {
        ReadResult read = Read(was, now);
        Assert.Null(read.Job);
        string[] lines = Job(was, now).Split('\n');
        int at = 1 + Array.FindIndex(lines, l => l.Contains(line, StringComparison.Ordinal));
        Finding fault = Assert.Single(
            read.Findings.Where(f =>
                f.Severity == Severity.Error && f.Message.Contains(said, StringComparison.Ordinal)
            )
        );
        Assert.Contains($"line {at}", fault.Where, StringComparison.Ordinal);
    }

    /// <summary>The progress knows a fillet by its name alone: a second of the same, in whatever letters, is refused at its line.</summary>
    [Fact]
    public void ASecondFilletOfANameIsRefused()
    {
        const string second =
            "[[fillet]]\nalong = \"Chine Log\"\nradius = 10\nlength = 500\n[[fillet]]";
        ReadResult read = Read(Fillet, second);
        Assert.Null(read.Job);
        string[] lines = Job(Fillet, second).Split('\n');
        int at =
            1
            + Array.FindLastIndex(lines, l => l.Contains("chine log\"", StringComparison.Ordinal));
        Finding fault = Assert.Single(
            read.Findings,
            f => f.Message.Contains("another [[fillet]]", StringComparison.Ordinal)
        );
        Assert.Equal(Severity.Error, fault.Severity);
        Assert.Contains($"line {at}", fault.Where, StringComparison.Ordinal);
        Assert.NotNull(
            Read(Fillet, second.Replace("Log", "log, aft", StringComparison.Ordinal)).Job
        );
    }

    [Fact]
    public void ACrewWithoutResinIsToldToBeAlone()
    {
        string job = EveryName.Job.ReplaceLineEndings("\n");
        int from = job.IndexOf("[resin]", StringComparison.Ordinal),
            to = job.IndexOf(Fillet, StringComparison.Ordinal);
        ReadResult read = EveryName.Read(job[..from] + job[to..]);
        Assert.Equal(
            4,
            read.Findings.Count(f =>
                f.Message.Contains("neither [resin] nor [glue]", StringComparison.Ordinal)
            )
        );
    }

    [Fact]
    public void AJobWithoutTheseTablesHasNone()
    {
        string job = EveryName.Job.ReplaceLineEndings("\n");
        Assert.Null(
            EveryName.Read(job[..job.IndexOf("[resin]", StringComparison.Ordinal)]).Job!.Glue
        );
    }

    private static string Job(string was, string now)
    {
        string job = EveryName.Job.ReplaceLineEndings("\n");
        Assert.Contains(was, job, StringComparison.Ordinal);
        // The first after the head of its table.
        int at = job.IndexOf(
            was,
            job.IndexOf("[resin]", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
        return job[..at] + now + job[(at + was.Length)..];
    }

    private static ReadResult Read(string was, string now) => EveryName.Read(Job(was, now));
}
