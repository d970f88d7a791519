using System.Collections.Immutable;
using PlankFit.Export.Summary;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Export.Words;

/// <summary>All sheets, lists and messages of a job in feet and inches write lengths in one way, whatever the job asks for.</summary>
public sealed class OneNotationTests
{
    private const int Few = 3;
    private const int Many = 60;

    /// <summary>The square that proves the printer is 100 mm and 4 inches on every paper, and the places along a section are parts of it.</summary>
    private static readonly string[] NoLengths =
    [
        "100 mm",
        "100 mm both ways",
        "1/4",
        "1/2",
        "3/4",
    ];

    /// <summary>What is no length of the job within longer words: a place along a section, and what a source has.</summary>
    private static readonly string[] Quoted = ["1/2, half way", "1.2 m apart", "1.2 m"];

    [Fact]
    public void EveryTextOfAJobByChanceIsInItsNotation()
    {
        int jobs = 0,
            texts = 0;
        var faults = new List<string>();
        for (int seed = 0; jobs < LongRuns.Of(Few, Many); seed++)
        {
            using var temp = new TempFolder();
            string path = ChanceJob.Write(seed, temp.File("job"));
            bool alone = seed % 4 == 1;
            if (alone)
            {
                File.WriteAllText(
                    path,
                    File.ReadAllText(path)
                        .Replace(
                            "[output]\n",
                            "[output]\nlengths = \"inches\"\n",
                            StringComparison.Ordinal
                        )
                );
            }

            if (
                JobReader.Read(path) is not { Job: { } job } read
                || LengthUnits.IsMetric(job.Units)
            )
            {
                continue;
            }

            Assert.Equal(alone ? LengthUnit.Inch : LengthUnit.Foot, job.Units);
            if (
                BottomPlanner.Plan(job with { Nest = null }, null, CancellationToken.None).Plan
                is not { } plan
            )
            {
                continue;
            }

            jobs++;
            foreach ((string where, string text) in Texts(plan, read.Findings))
            {
                texts++;
                faults.AddRange(
                    LengthsTold
                        .Faults(text, job.Units)
                        .Concat(where is "summary" or "finding" ? [] : LengthsTold.Angles(text))
                        .Select(f => $"{seed}, {where}: {f}")
                );
            }
        }

        Assert.True(texts > 1000 * jobs, $"{texts} texts of {jobs} jobs");
        Assert.True(
            faults.Count == 0,
            $"{faults.Count} faults:\n" + string.Join("\n", faults.DistinctBy(Kind).Take(60))
        );
    }

    /// <summary>The same fault with other figures is not told again.</summary>
    private static string Kind(string fault) =>
        string.Concat(fault.Where(c => !char.IsDigit(c) && c is not (' ' or '/')));

    private static IEnumerable<(string Where, string Text)> Texts(
        BottomPlan plan,
        ImmutableArray<Finding> ofReading
    ) =>
        [
            .. AllSheets
                .Of(plan)
                .SelectMany(s =>
                    s.Sheet.Shapes.OfType<Lettering>()
                        .Select(l => (s.File, Text: WithoutQuotes(l.Text)))
                )
                .Where(t => !NoLengths.Contains(t.Text)),
            .. PlanSummary
                .Of(plan)
                .Lines(plan.Job.Units)
                .Select(l => ("summary", WithoutQuotes(l))),
            .. plan.Findings.Concat(ofReading).Select(f => ("finding", WithoutQuotes(f.Message))),
        ];

    private static string WithoutQuotes(string told) =>
        Quoted.Aggregate(told, (text, quote) => text.Replace(quote, "", StringComparison.Ordinal));
}
