using BenchmarkDotNet.Attributes;
using PlankFit.App.Comparing;
using PlankFit.App.Showing;
using PlankFit.Planking.Laying;
using PlankFit.Reading.Text;

namespace PlankFit.Benchmarks;

/// <summary>The 8 m launch with everything, warm: laid and judged once, and beside it with other angles and widths; what one of these takes is a part of the latter.</summary>
[MemoryDiagnoser]
public class CompareBenchmarks
{
    private readonly string job = Demo.File("survey-launch");
    private TextFile text = null!;

    [GlobalSetup]
    public void Setup() => text = TextFile.Read(job, "job.toml");

    [Benchmark(Baseline = true)]
    public int Once() =>
        ShownJob
            .Of(job, text, null, new Progress<PlanProgress>(), CancellationToken.None)
            .Findings.Length;

    /// <summary>The job as it stands and twenty others.</summary>
    [Benchmark(OperationsPerInvoke = 21)]
    public int OneOfMany() =>
        Trying
            .Of(
                job,
                text,
                new() { Angle = "41,43,47,49", Width = "100,110,120,130,140" },
                new Progress<PlanProgress>(),
                CancellationToken.None
            )
            .Comparison!.Layouts.Length;
}
