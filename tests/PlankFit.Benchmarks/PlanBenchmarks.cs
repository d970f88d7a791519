using BenchmarkDotNet.Attributes;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;

namespace PlankFit.Benchmarks;

/// <summary>From offsets to flat planks, no files: the 8 m launch, two layers, both sides; and the same with ten times the planks.</summary>
public class PlanBenchmarks
{
    private Job launch = null!,
        tenfold = null!;

    [GlobalSetup]
    public void Setup()
    {
        launch = Demo.Job("survey-launch");
        tenfold = launch with
        {
            Layers =
            [
                .. launch.Layers.Select(l =>
                    l is PlankLayerSpec p ? p with { WidthMm = p.WidthMm / 10 } : l
                ),
            ],
        };
    }

    [Benchmark(Baseline = true)]
    public int Launch() => Planks(launch);

    [Benchmark]
    public int TenTimesThePlanks() => Planks(tenfold);

    private static int Planks(Job job) =>
        BottomPlanner.Plan(job).Plan!.PlankLayers.Sum(l => l.Starboard.Length + l.Port.Length);
}
