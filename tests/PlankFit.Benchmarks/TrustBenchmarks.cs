using BenchmarkDotNet.Attributes;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Whole;

namespace PlankFit.Benchmarks;

/// <summary>How the numbers of a launch of two skins hang on its table of 60 cells: its planks laid again 124 times by the same choices.</summary>
public class TrustBenchmarks
{
    private Planked launch = null!;

    [GlobalSetup]
    public void Setup() => launch = BottomPlanner.Plan(Demo.Job("survey-launch")).Plan!.Planked;

    [Benchmark]
    public int Slopes() => Sensitivities.Of(launch).Numbers.Length;
}
