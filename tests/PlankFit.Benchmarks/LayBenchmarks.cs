using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using PlankFit.App.Laying;
using PlankFit.App.Running;
using PlankFit.Planking.Laying;

namespace PlankFit.Benchmarks;

/// <summary>The whole job with all its files, cold: one run a process, as at the bench.</summary>
[SimpleJob(RunStrategy.ColdStart, launchCount: 5, warmupCount: 0, iterationCount: 1)]
public class LayBenchmarks
{
    private string folder = null!;

    [GlobalSetup]
    public void Setup() => folder = Directory.CreateTempSubdirectory("plankfit-").FullName;

    [GlobalCleanup]
    public void Cleanup() => Directory.Delete(folder, true);

    [Benchmark]
    public ExitCode LayTheLaunch() =>
        LayRun
            .Run(
                new(Demo.File("survey-launch"), folder, false),
                new Progress<PlanProgress>(),
                new(),
                default
            )
            .Exit;
}
