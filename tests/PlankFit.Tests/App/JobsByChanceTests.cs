using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.App;

/// <summary>Whole jobs that are no demos, in all units, with whatever a job can ask for: each is laid with all its files, and whatever it lacks is said in words.</summary>
public sealed class JobsByChanceTests(ITestOutputHelper output)
{
    private const int Quick = 1;
    private const int Long = 24;

    [Fact]
    public void AJobThatIsNoDemoIsLaid()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        int jobs = Environment.GetEnvironmentVariable("PLANKFIT_LONG") == "1" ? Long : Quick;
        int laid = 0;
        for (int seed = 0; seed < jobs; seed++)
        {
            using var temp = new TempFolder();
            string job = ChanceJob.Write(seed, temp.File("job"));
            RunReport report = LayRun.Run(
                new(job, temp.File("out"), false),
                new Progress<PlanProgress>(),
                new(),
                TestContext.Current.CancellationToken
            );
            string words = string.Join("\n", report.Findings.Select(f => f.ToString()));
            output.WriteLine($"{seed}: {report.Exit}\n{words}");
            Assert.DoesNotContain("fault of the program", words, StringComparison.Ordinal);
            if (report.Exit is ExitCode.Done or ExitCode.StockIsShort)
            {
                laid++;
                Assert.True(File.Exists(Path.Combine(temp.File("out"), "planking.json")));
            }
            else
            {
                Assert.Contains(report.Findings, f => f.Severity == Severity.Error);
            }
        }

        Assert.True(laid > jobs / 2, $"{laid} of {jobs}");
    }
}
