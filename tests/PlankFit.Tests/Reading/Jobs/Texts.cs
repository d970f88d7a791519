using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>A small sound job and table, to be spoiled one thing at a time.</summary>
internal static class Texts
{
    public const string Job = """
        [job]
        name  = "Test punt"
        units = "mm"

        [hull]
        offsets = "offsets.csv"
        offsets-are-to = "outside"
        keel  = "keel edge"
        chine = "chine"

        [[layer]]
        name = "inner"
        thickness = 9
        width = 150
        heads = "aft"
        angle = 45
        """;

    public const string Offsets = """
        # A test punt.
        line,measure,0,1,2,3
        ,position,0,600,1200,2400
        keel edge,height,620,250,95,15
        keel edge,half-breadth,25,32,40,55
        chine,height,900,735,620,470
        chine,half-breadth,120,420,650,960
        """;

    public static ReadResult Read(string? job = null, string? offsets = null) =>
        JobReader.Read(job ?? Job, "job.toml", offsets ?? Offsets, "offsets.csv");

    public static Job Sound(string? job = null, string? offsets = null)
    {
        ReadResult result = Read(job, offsets);
        Assert.True(
            result.Job is not null,
            string.Join('\n', result.Findings.Select(f => f.Where + ": " + f.Message))
        );
        return result.Job!;
    }

    /// <summary>There is a finding of that severity at that place whose message has all the words.</summary>
    public static void Finds(
        ReadResult result,
        Severity severity,
        string where,
        params string[] words
    )
    {
        Assert.True(
            result.Findings.Any(f =>
                f.Severity == severity
                && f.Where == where
                && words.All(w => f.Message.Contains(w, StringComparison.Ordinal))
            ),
            $"no {severity} at '{where}' with {string.Join(" / ", words)}; found:\n"
                + string.Join(
                    '\n',
                    result.Findings.Select(f => $"{f.Severity} | {f.Where} | {f.Message}")
                )
        );
        if (severity == Severity.Error)
        {
            Assert.Null(result.Job);
        }
    }
}
